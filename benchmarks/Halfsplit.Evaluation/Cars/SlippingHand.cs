using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Cars;

/// <summary>
/// What goes wrong between the car and the notebook: a neighbouring pin, a lead that touches nothing, volts read as
/// millivolts. Whether and how a reading slips depends on the car and the reading alone, so that every player who takes it
/// meets the same slip.
/// </summary>
public sealed class SlippingHand(CircuitNetwork network, long seed, double share, bool repeats)
{
    private readonly Dictionary<string, int> _taken = new(StringComparer.Ordinal);

    /// <summary>How many readings have slipped so far.</summary>
    public int Slipped { get; private set; }

    /// <summary>The answer that is written down.</summary>
    public ReadingValue Take(Check check, Func<Check, ReadingValue> answer)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(answer);
        if (check.Subject is not (CheckSubject.Number or CheckSubject.LampGlow or CheckSubject.Buzzer) || share <= 0)
        {
            return answer(check);
        }

        var times = _taken[check.Id] = _taken.GetValueOrDefault(check.Id) + 1;
        var chance = new SeededChance(Seeds.Of("slip", seed, check.Id, repeats ? 0 : times));
        // The first draws of neighbouring seeds are the least alike after a few.
        chance.Next();
        if (chance.Next() >= share)
        {
            return answer(check);
        }

        Slipped++;
        var kind = chance.Next();
        if (kind < 0.45 && Neighbour(check, chance) is { } beside)
        {
            return answer(check with { Probe = check.Probe with { Red = beside } });
        }

        return kind < 0.75 || answer(check) is not ReadingParse.Number number
            ? NoContact(check, chance)
            : number with { Value = kind < 0.9 ? number.Value * 1000 : number.Value / 1000 };
    }

    /// <summary>Another terminal of the same part that can be touched as well.</summary>
    private TerminalName? Neighbour(Check check, SeededChance chance)
    {
        if (check.Probe.Red is not { } red)
        {
            return null;
        }

        var node = network.NodeOf(red);
        var side = red.Name.Length > 0 && char.IsAsciiLetterLower(red.Name[^1]) ? red.Name[^1] : ' ';
        var others = network.Circuit.Terminals
            .Where(t => t.Part == red.Part && t != red && network.NodeOf(t) != node
                && (side == ' ' ? t.Name.Length == 0 || !char.IsAsciiLetterLower(t.Name[^1]) : t.Name.EndsWith(side)))
            .ToImmutableArray();
        return others.Length == 0 ? null : others[(int)(chance.Next() * others.Length)];
    }

    private static ReadingValue NoContact(Check check, SeededChance chance) => check.Subject switch
    {
        CheckSubject.Buzzer => new ReadingParse.Word(AnswerWord.NoBeep),
        _ when check.Probe.Instrument == Instrument.Ohms => new ReadingParse.OverLimit(),
        _ when check.Probe.Instrument is Instrument.AmpsClamp or Instrument.AmpsInline =>
            new ReadingParse.Number(0, Quantity.Amperes, 0.01),
        // A lead in the air picks up a few hundredths of a volt.
        _ => new ReadingParse.Number(Math.Round(0.03 * Math.Abs(chance.Bell()), 2), Quantity.Volts, 0.01),
    };
}
