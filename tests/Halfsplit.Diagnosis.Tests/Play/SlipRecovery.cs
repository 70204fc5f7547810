using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>What goes wrong with one reading.</summary>
public enum SlipKind { WrongPin, MistypedDigit, MillivoltsForVolts, NoContact }

/// <summary>How one car fared.</summary>
/// <param name="WithSlip">Odds of what is wrong with the car, two checks after the slip.</param>
/// <param name="Without">The same with the same checks and no slip.</param>
/// <param name="SlipOdds">The engine's odds, right after it, that the reading was a slip.</param>
/// <param name="AskedAgain">Checks after the slip until the slipped reading was asked for again; null if it was not.</param>
/// <param name="End">How the job ended, played on.</param>
public sealed record Recovery(string Sheet, Fault Fault, SlipKind Kind, string Check, string Shown, double WithSlip, double Without, int? AskedAgain,
    double SlipOdds, Played End)
{
    /// <summary>The odds are at least half of what they would have been.</summary>
    public bool IsRecovered => WithSlip >= 0.5 * Without;

    public override string ToString() => FormattableString.Invariant(
        $"{Sheet} {Fault} {Kind}: {Check} => {Shown}: {WithSlip:0.000} of {Without:0.000}, asked again {AskedAgain}, slip odds {SlipOdds:0.0000}, proven {End.IsProven} after {End.WrongRepairs} wrong repairs");
}

/// <summary>Lets the engine play hidden cars and spoils one reading of each.</summary>
public static class SlipRecovery
{
    private const int Further = 2;

    /// <summary>One car; null where it was found before any number was read that could be spoilt.</summary>
    public static Recovery? Play(string sheet, Investigation begun, Fault fault, SlipKind kind, int seed)
    {
        var investigation = begun.Anew();
        var car = new SimulatedCar(investigation.Circuit, investigation.Complaint.Load, fault);
        var done = new List<(Check Check, ReadingValue True)>();
        Check? spoilt = null;
        var shown = "";
        var after = 0;
        int? asked = null;
        var slipOdds = 0.0;
        for (var move = 0; move < 25 && after <= Further; move++)
        {
            var next = investigation.Next().Check;
            if (next is null || next.Kind == CheckKind.Repair)
            {
                break;
            }

            if (spoilt is not null && next.Id == spoilt.Id)
            {
                asked ??= after;
            }

            var value = car.Answer(next);
            var said = value;
            if (spoilt is null && move >= 2 && next.Subject == CheckSubject.Number && value is ReadingParse.Number number
                && Spoil(investigation, car, next, number, kind, seed) is { } slip)
            {
                spoilt = next;
                said = slip;
                shown = $"{slip} for {value}";
            }

            after += spoilt is null ? 0 : 1;
            done.Add((next, value));
            investigation.Record($"{move}", next, said);
            slipOdds = after == 1 && next.Id == spoilt?.Id ? investigation.SlipOdds($"{move}") : slipOdds;
        }

        if (spoilt is null || (after <= Further && investigation.Next().Check is { Kind: not CheckKind.Repair }))
        {
            return null;
        }

        var clean = begun.Anew();
        for (var i = 0; i < done.Count; i++)
        {
            clean.Record($"{i}", done[i].Check, done[i].True);
        }

        var odds = OddsOf(investigation, fault);
        return new Recovery(sheet, fault, kind, spoilt.Id, shown, odds, OddsOf(clean, fault), asked, slipOdds,
            Game.PlayOn(investigation, car, done.Count));
    }

    private static double OddsOf(Investigation investigation, Fault fault) => investigation.Suspects
        .Where(s => s.Suspect.Modes.Any(m => m.Part == fault.Part && m.Mode == fault.Mode))
        .Sum(s => s.Odds);

    private static ReadingParse.Number? Spoil(
        Investigation investigation, SimulatedCar car, Check check, ReadingParse.Number number, SlipKind kind, int seed)
    {
        var step = number.Resolution ?? 0.01;
        ReadingParse.Number? made = kind switch
        {
            SlipKind.NoContact => number with { Value = 0 },
            SlipKind.MillivoltsForVolts => new ReadingParse.Number(number.Value / 1000, number.Quantity, step / 1000),
            SlipKind.MistypedDigit => number with { Value = Math.Round(number.Value * 10 / step) * step },
            _ => WrongPin(investigation, car, check, seed),
        };
        return made is not null && Math.Abs(made.Value - number.Value) > 20 * step ? made : null;
    }

    /// <summary>The red lead on another terminal of the same part, or of another part of the same kind.</summary>
    private static ReadingParse.Number? WrongPin(Investigation investigation, SimulatedCar car, Check check, int seed)
    {
        if (check.Probe.Red is not { } red)
        {
            return null;
        }

        var others = investigation.Circuit.Terminals
            .Where(t => t != red && t != check.Probe.Black && (red.Name.Length == 0 ? t.Name.Length == 0 : t.Name.EndsWith(red.Name[^1]))
                && investigation.Circuit.Find(t.Part)?.GetType() == investigation.Circuit.Find(red.Part)?.GetType()
                && investigation.Network.HasTerminal(t))
            .OrderBy(t => t.ToString(), StringComparer.Ordinal).ToList();
        return others.Count == 0
            ? null
            : car.Answer(Check.Create(
                check.Kind, check.Subject, check.Arrangement, check.Probe with { Red = others[seed % others.Count] })) as ReadingParse.Number;
    }

    /// <summary>Faults by how likely they are beforehand; the same seed, the same faults.</summary>
    public static IEnumerable<Fault> Draw(Investigation begun, int count, ulong seed)
    {
        var state = seed;
        double Chance()
        {
            unchecked
            {
                state = (state * 6364136223846793005UL) + 1442695040888963407UL;
            }

            return (state >> 11) * (1.0 / (1UL << 53));
        }

        var suspects = begun.Suspects.Where(s => s.Suspect.Modes.Length == 1).ToList();
        var total = suspects.Sum(s => s.Odds);
        for (var i = 0; i < count; i++)
        {
            var left = Chance() * total;
            var chosen = suspects.First(s => (left -= s.Odds) <= 0 || s == suspects[^1]);
            yield return chosen.Faults[0];
        }
    }

    public static Investigation Begin(string sheet, string complaint)
    {
        var circuit = ShippedSheets.Load(sheet);
        return Investigation.Open(circuit, circuit.Complaints.First(c => c.Name == complaint));
    }
}
