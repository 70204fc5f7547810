using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Learning;

/// <summary>A job that is learned from, or why it is not.</summary>
/// <param name="Name">What the person knows it by: the file's name.</param>
/// <param name="Case">The case; null where it is not counted.</param>
/// <param name="Problem">Why it is not counted; null where it is, or where it is simply not finished.</param>
public sealed record HistoryEntry(string Name, ProvenCase? Case, Message? Problem);

/// <summary>Finds in jobs what was wrong with their cars. Pure: it reads no files.</summary>
public static class JobHistory
{
    /// <summary>The cases of these jobs. Copies of one job are put together first, and count once.</summary>
    /// <param name="jobs">Documents with their names, in any order.</param>
    public static ImmutableArray<HistoryEntry> Of(IEnumerable<(string Name, JobDocument Document)> jobs)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        var expectations = new Dictionary<(string Sheet, string Load, string Is, string In), CaseExpectation?>();
        var entries = ImmutableArray.CreateBuilder<HistoryEntry>();
        foreach (var copies in jobs
            .GroupBy(j => JobReplay.Replay(j.Document).Opened?.Id)
            .OrderBy(g => g.Min(j => j.Name), StringComparer.Ordinal))
        {
            var named = copies.OrderBy(j => j.Name, StringComparer.Ordinal).ToList();
            if (copies.Key is not { } id)
            {
                entries.AddRange(named.Select(j => new HistoryEntry(j.Name, null, new Message("history.not-opened", j.Name))));
                continue;
            }

            var document = named.Select(j => j.Document).Aggregate((all, next) => all.Merge(next));
            entries.Add(Read(named[0].Name, id.ToString(), JobReplay.Replay(document), expectations));
        }

        return entries.ToImmutable();
    }

    private static HistoryEntry Read(
        string name, string id, JobState state,
        Dictionary<(string Sheet, string Load, string Is, string In), CaseExpectation?> expectations)
    {
        if (state.Closed is not { Outcome: JobOutcome.Proven } || state.Opened is not { } opened)
        {
            return new HistoryEntry(name, null, null);
        }

        if (state.Repairs.LastOrDefault() is not { } cured)
        {
            return new HistoryEntry(name, null, new Message("history.no-repair", name));
        }

        if (Expectation(opened, expectations) is not { } expected)
        {
            return new HistoryEntry(name, null, new Message("history.sheet-broken", name));
        }

        return expected.Proven(id, cured.Suspect, cured.Repair) is { } found
            ? new HistoryEntry(name, found, null)
            : new HistoryEntry(name, null, new Message("history.unknown-repair", name, cured.Repair));
    }

    private static CaseExpectation? Expectation(
        JobOpened opened, Dictionary<(string Sheet, string Load, string Is, string In), CaseExpectation?> known)
    {
        if (SheetReader.Read(opened.SheetText).Circuit is not { } circuit
            || ComplaintChoice.Of(circuit, opened) is not { } complaint
            || circuit.Find(complaint.Load) is not Load
            || circuit.FindCondition(complaint.Condition) is not { } condition)
        {
            return null;
        }

        var key = (opened.SheetText, complaint.Load, complaint.Is.ToString(), condition.Name);
        if (!known.TryGetValue(key, out var expected))
        {
            known[key] = expected = CaseExpectation.Of(circuit, complaint with { Condition = condition.Name });
        }

        return expected;
    }
}
