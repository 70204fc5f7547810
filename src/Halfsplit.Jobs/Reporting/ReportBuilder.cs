using Halfsplit.Diagnosis;
using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Reporting;

/// <summary>Gathers what a report says from a job as it stands. Reads only; takes as long as explaining every reading takes.</summary>
public static class ReportBuilder
{
    /// <summary>Odds from which on something that is not cleared is said.</summary>
    private const double WorthSaying = 0.005;

    /// <summary>Odds below which a job that goes on blames nothing yet: no part and no price is put into anybody's head.</summary>
    private const double StandsOut = 0.3;

    public static Report Of(JobSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        var opened = session.Opened;
        var steps = session.Entries.Select(e => StepBuilder.Of(session, e)).ToImmutableArray();
        var standing = StandingOf(session);
        var finding = session.Finding ?? session.Investigation.PresentFinding();
        var isActedUpon = steps.Any(s => s.Sort == StepSort.Repair);
        if (standing == ReportStanding.GoingOn && finding?.Odds < StandsOut)
        {
            finding = null;
        }

        var repair = finding is null ? null : StoredChecks.FindRepair(session.Investigation, finding.Repair.Id);
        return new Report
        {
            Job = opened.Id.ToString(),
            Circuit = session.Circuit.Title,
            SheetName = opened.SheetName,
            EngineVersion = opened.EngineVersion,
            DataVersion = opened.DataVersion,
            Vehicle = session.State.Vehicle,
            Owner = session.State.Owner ?? "",
            Worker = session.State.Worker ?? string.Join(", ", session.State.InForce.Select(e => e.By).OfType<string>().Distinct(StringComparer.Ordinal)),
            Complaint = opened.Complaint,
            Noticed = [.. session.Noticed.Select(n => NoticedText.Of(session.Circuit, n.What))],
            Bench = [.. session.BenchResults.Select(n => NoticedText.Of(session.Circuit, n.What))],
            Opened = opened.At,
            Ended = session.State.InForce.Where(e => e is not (NoteWritten or JobDescribed)).Select(e => e.At).Last(),
            Standing = standing,
            Steps = steps,
            Finding = finding is null ? null : FindingOf(session, finding, isActedUpon),
            Cautions = [.. session.Entries.Where(e => e.Check is not null && e.Event is not CheckSkipped)
                .SelectMany(e => Cautions.For(session.Circuit, session.Investigation.Options, e.From, e.Check!))
                .Concat(CautionsOf(session, repair))
                .Distinct()],
            RepairCautions = CautionsOf(session, repair),
            Doubts = DoubtsOf(session),
            TakenBack = TakenBackBuilder.Of(session),
            Notes = [.. session.State.Notes],
            Cost = CostOf(session, finding, isActedUpon),
            Meter = MeterOf(session),
            HandedOver = session.State.HandedOver,
        };
    }

    private static ReportStanding StandingOf(JobSession session) =>
        session.State.HandedOver is not null ? ReportStanding.HandedOver
        : session.IsProven ? ReportStanding.Proven
        : session.IsDone ? ReportStanding.GivenUp
        : session.Entries.Any(e => e.Event is RepairDone) ? ReportStanding.Repaired
        : session.Next.Finding is not null ? ReportStanding.Found
        : ReportStanding.GoingOn;

    private static ReportedFinding FindingOf(JobSession session, Finding finding, bool isActedUpon)
    {
        var circuit = session.Circuit;
        var open = HowToTellApart.StillOpen(session);
        return new ReportedFinding(
            finding,
            isActedUpon,
            [.. finding.Blamed.Select(s => (FaultInWords.Of(circuit, s), s.Odds))],
            CheckTitle.Repair(circuit, finding.Repair.Id),
            [.. finding.NotCleared.Where(s => s.Odds >= WorthSaying).Select(s =>
                (FaultInWords.Of(circuit, s), s.Odds,
                    open.FirstOrDefault(o => o.Rival.Suspect.Id == s.Suspect.Id) is { } rival ? HowToTellApart.Of(session, rival) : null))],
            [.. finding.RestsOn
                .Select(id => session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == id))
                .OfType<SessionEntry>()
                .Select(e => e.Number)]);
    }

    private static ImmutableArray<Message> CautionsOf(JobSession session, Check? repair) =>
        repair is null ? [] : Cautions.For(session.Circuit, session.Investigation.Options, session.Position, repair);

    private static ImmutableArray<Message> DoubtsOf(JobSession session)
    {
        var doubts = ImmutableArray.CreateBuilder<Message>();
        if (session.Investigation.LeadingPair is { } pair)
        {
            doubts.Add(new Message("doubt.pair", FaultInWords.Of(session.Circuit, pair), OddsMessage.Of(pair.Odds)));
        }

        foreach (var doubt in session.Investigation.Doubts)
        {
            if (session.Entries.FirstOrDefault(e => e.Event.Id.ToString() == doubt.Id) is { Check: { } check } entry)
            {
                doubts.Add(new Message(
                    "report.doubtful", entry.Number, CheckTitle.Of(session.Circuit, check), OddsMessage.Of(doubt.Odds)));
            }
        }

        doubts.AddRange(session.Problems);
        return doubts.ToImmutable();
    }

    private static ReportedCost CostOf(JobSession session, Finding? finding, bool isActedUpon)
    {
        var options = session.Opened.Options;
        var repairs = ImmutableArray.CreateBuilder<RepairCost>();
        foreach (var entry in session.Entries)
        {
            if (entry is { Event: RepairDone done, Check: { } check } && session.RepairOf(check) is { } repair)
            {
                repairs.Add(new RepairCost(CheckTitle.Repair(session.Circuit, repair.Id), repair, done.Price, true));
            }
        }

        if (!isActedUpon && finding is not null)
        {
            repairs.Add(new RepairCost(CheckTitle.Repair(session.Circuit, finding.Repair.Id), finding.Repair, null, false));
        }

        var currency = options.Currency ?? session.State.Repairs.Select(r => r.Currency).OfType<string>().FirstOrDefault() ?? "";
        return new ReportedCost(session.MinutesSpent, options.ValueOfAnHour, currency, repairs.ToImmutable());
    }

    private static Message MeterOf(JobSession session)
    {
        var meter = session.Investigation.Options.MeterInUse;
        return new Message(
            "report.meter-is", new Figure(100 * meter.GainAccuracy, "0.###"), new Figure(meter.CountAccuracy, "0.#"),
            new Figure(meter.Counts, "0"), new Figure(meter.InputOhms / 1e6, "0.##"));
    }
}
