using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Reporting;

/// <summary>What was done and later taken back. It is reported too: a job hides nothing.</summary>
internal static class TakenBackBuilder
{
    public static ImmutableArray<TakenBack> Of(JobSession session)
    {
        var events = session.Document.Events.Select(s => s.Event).ToList();
        var reasons = events.OfType<ReadingWithdrawn>()
            .Where(w => !session.State.Withdrawn.Contains(w.Id))
            .GroupBy(w => w.Withdraws)
            .ToDictionary(g => g.Key, g => g.Last().Reason ?? "");
        return [.. events
            .Where(e => session.State.Withdrawn.Contains(e.Id) && What(session, e) is not null)
            .Select(e => new TakenBack(e.At, What(session, e)!, Typed(e), reasons.GetValueOrDefault(e.Id, "")))];
    }

    private static Message? What(JobSession session, JobEvent happened) => happened switch
    {
        ReadingTaken reading => Title(session, reading.Observation),
        ProofTaken proof => Title(session, proof.Observation),
        RepairDone repair => CheckTitle.Repair(session.Circuit, repair.Repair),
        CheckSkipped { Place: { } place } => new Message("report.given-up-place", place),
        CheckSkipped { Check: { } check } => new Message("report.left-out", new Message("part.bare", check)),
        ThingNoticed noticed => new Message("report.noticed-was", noticed.Name),
        PartFound found => new Message("report.bench-was", found.Found, found.Part),
        _ => null,
    };

    private static Message Title(JobSession session, Observation seen) => StoredChecks.Find(session.Investigation, seen) is { } check
        ? CheckTitle.Of(session.Circuit, check)
        : new Message("part.bare", seen.Check);

    private static string Typed(JobEvent happened) => happened switch
    {
        ReadingTaken reading => reading.Observation.Typed,
        ProofTaken proof => proof.Observation.Typed,
        PartFound found => string.Join(' ', found.Typed),
        _ => "",
    };
}
