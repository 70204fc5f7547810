using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>Says in sentences what a reading did not clear.</summary>
public static class ClearanceWords
{
    /// <summary>Stretches named one by one; the rest is counted.</summary>
    private const int Named = 2;

    /// <summary>Limits worth a sentence.</summary>
    private const int Sentences = 3;

    internal static ImmutableArray<Message> Reasons(Observation reading, ImmutableArray<ResistanceLimit> notCleared)
    {
        var reasons = ImmutableArray.CreateBuilder<Message>();
        if (Blind(reading) is { } blind)
        {
            reasons.Add(blind);
        }

        reasons.AddRange(notCleared.Take(Sentences).Select(l => Of(reading, l)));
        return reasons.ToImmutable();
    }

    internal static ImmutableArray<Message> Assurances(ImmutableArray<ResistanceLimit> proven) =>
        [.. proven.Take(Sentences).Select(l => new Message("clearance.proven", Amps(l.Amps), Where(l), Ohms(l.HiddenOhms)))];

    /// <summary>Ohms in the unit that suits them, two digits: more is not known.</summary>
    public static Message Ohms(double ohms) => ohms switch
    {
        >= 1e6 => new Message("amount.megohms", Round(ohms / 1e6)),
        >= 1e3 => new Message("amount.kilohms", Round(ohms / 1e3)),
        >= 1 => new Message("amount.ohms", Round(ohms)),
        _ => new Message("amount.milliohms", Round(ohms * 1e3)),
    };

    /// <summary>Amps in the unit that suits them.</summary>
    public static Message Amps(double amps) => amps switch
    {
        < 1e-3 => new Message("amount.no-current"),
        < 0.1 => new Message("amount.milliamps", Round(amps * 1e3)),
        _ => new Message("amount.amps", Round(amps)),
    };

    /// <summary>"F19.2 to C3.4a, and 2 more".</summary>
    public static Message Where(ResistanceLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        var text = One(limit.Stretches[0]);
        foreach (var stretch in limit.Stretches.Skip(1).Take(Named - 1))
        {
            text = new Message("stretch.and", text, One(stretch));
        }

        return limit.Stretches.Length > Named
            ? new Message("stretch.more", text, limit.Stretches.Length - Named)
            : text;
    }

    private static Message One(Stretch stretch) => new("stretch.between", stretch.From, stretch.To);

    private static Message Of(Observation reading, ResistanceLimit limit)
    {
        var probe = reading.Check.Probe.Instrument;
        return (reading.Check.Subject, reading.Value) switch
        {
            (CheckSubject.Buzzer, _) => new Message("clearance.beep", Ohms(limit.Ohms), Where(limit)),
            (CheckSubject.Number, _) when probe == Instrument.Ohms => new Message("clearance.ohms", Ohms(limit.Ohms), Where(limit)),
            (_, ReadingParse.Number) when !limit.IsLoaded => limit.Amps < 1e-3
                ? new Message("clearance.unloaded", Ohms(limit.Ohms), Where(limit))
                : new Message("clearance.little", Ohms(limit.Ohms), Where(limit), Amps(limit.Amps)),
            (_, ReadingParse.Number) => new Message("clearance.loaded", Ohms(limit.Ohms), Where(limit), Amps(limit.Amps)),
            _ => new Message("clearance.word", Ohms(limit.Ohms), Where(limit), Amps(limit.Amps)),
        };
    }

    /// <summary>What an answer in words can't see whatever the car.</summary>
    private static Message? Blind(Observation reading)
    {
        // Only the good answer clears anything.
        if (reading.Value is not ReadingParse.Word { Answer: var word } || reading.Check.GroupOf(word) != 0)
        {
            return null;
        }

        return reading.Check.Subject switch
        {
            CheckSubject.RelayClick => new Message("clearance.click"),
            CheckSubject.FuseLook => new Message("clearance.fuse"),
            CheckSubject.BenchRelay => new Message("clearance.bench", Ohms(Meter.BuzzerHighOhms)),
            CheckSubject.PinFit or CheckSubject.JointHeat or CheckSubject.Wiggle => new Message("clearance.look"),
            CheckSubject.ScanCommand => new Message("clearance.command"),
            _ => null,
        };
    }

    private static Figure Round(double value)
    {
        var step = Math.Pow(10, Math.Floor(Math.Log10(Math.Max(value, 1e-9))) - 1);
        return new Figure(Math.Round(value / step) * step, "G3");
    }
}
