using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Reporting;

/// <summary>One entry of a job with what it says, as a report has it.</summary>
internal static class StepBuilder
{
    /// <summary>Digits of what a healthy car shows, where the reading itself shows no number to go by.</summary>
    private const int UsualDigits = 3;

    public static ReportedStep Of(JobSession session, SessionEntry entry)
    {
        var step = new ReportedStep(
            entry.Number, SortOf(entry), entry.Event.At, entry.Event.By ?? "", entry.Check, WhatOf(session, entry), entry.Minutes);
        if (entry.Check is not { } check || entry.Event is CheckSkipped)
        {
            return step;
        }

        step = step with
        {
            Places = [.. Access.PlacesOf(session.Circuit, check)],
            Read = step.Sort is StepSort.Reading or StepSort.Proof ? entry.Value : null,
            Typed = entry.Event switch
            {
                ReadingTaken reading => reading.Observation.Typed,
                ProofTaken proof => proof.Observation.Typed,
                _ => "",
            },
        };
        if (step.Sort is not (StepSort.Reading or StepSort.Proof))
        {
            return step;
        }

        var clearance = session.Investigation.ClearanceOf(entry.Event.Id.ToString());
        return step with
        {
            SetUp = CheckTitle.SetUp(check.Arrangement),
            Leads = check.Probe is { Red: { } red, Black: { } black }
                ? (FaultInWords.Point(session.Circuit, red), FaultInWords.Point(session.Circuit, black))
                : null,
            Healthy = HealthyOf(session, check, entry.Value),
            IsDoubtful = session.Investigation.Doubts.Any(d => d.Id == entry.Event.Id.ToString()),
            Cleared = clearance is null ? [] : [.. clearance.Cleared.Select(m => SuspectName.Of(session.Circuit, m.Suspect))],
            Carried = clearance?.Assurances ?? [],
            NotCleared = clearance?.Reasons ?? [],
        };
    }

    private static StepSort SortOf(SessionEntry entry) => entry.Event switch
    {
        CheckSkipped => StepSort.Skip,
        RepairDone => StepSort.Repair,
        PutBackDone => StepSort.PutBack,
        ProofTaken => StepSort.Proof,
        _ => StepSort.Reading,
    };

    private static Message WhatOf(JobSession session, SessionEntry entry) => entry.Event switch
    {
        CheckSkipped { Place: { } place } => new Message("report.given-up-place", place),
        CheckSkipped skipped => new Message(
            "report.left-out", entry.Check is { } check ? CheckTitle.Of(session.Circuit, check) : new Message("part.bare", skipped.Check ?? "")),
        _ => entry.Check is { } done ? CheckTitle.What(session.Circuit, done) : new Message("part.bare", ""),
    };

    /// <summary>What a healthy car shows, with as many decimals as the reading beside it, and no more than its meter has there.</summary>
    private static ReadingValue? HealthyOf(JobSession session, Check check, ReadingValue? read)
    {
        var expected = session.Investigation.ExpectedHealthy(check);
        if (expected.Word == "OL")
        {
            return new ReadingParse.OverLimit();
        }

        if (expected.Mean is { } mean && (read is not ReadingParse.Word || expected.Word is null))
        {
            var step = (read as ReadingParse.Number)?.Resolution is { } resolution
                ? Math.Max(resolution, session.Investigation.Options.MeterInUse.Resolution(check.Probe.Instrument, mean))
                : Math.Pow(10, Magnitude(mean) - UsualDigits);
            return new ReadingParse.Number(Math.Round(mean / step) * step + 0.0, QuantityOf(check), step);
        }

        return AnswerWord.Find(expected.Word) is { } word
            ? new ReadingParse.Word(OfferedWords.For(session.Circuit, check, word))
            : null;
    }

    /// <summary>Digits before the decimal sign; of less than a thousandth no more is said.</summary>
    private static int Magnitude(double value) => Math.Max(-UsualDigits + 1, (int)Math.Floor(Math.Log10(Math.Max(Math.Abs(value), 1e-9))) + 1);

    private static Quantity QuantityOf(Check check) => check.Probe.Instrument switch
    {
        Instrument.Ohms or Instrument.Continuity => Quantity.Ohms,
        Instrument.AmpsClamp or Instrument.AmpsInline => Quantity.Amperes,
        Instrument.Duty => Quantity.Duty,
        _ => Quantity.Volts,
    };
}
