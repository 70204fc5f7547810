using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Sessions;

/// <summary>Holds what the bench measured of a part against what the job has read of the same part (<c>data/part-fit.csv</c>).</summary>
/// <param name="network">The circuit of the job.</param>
internal sealed class BenchFit(CircuitNetwork network)
{
    /// <summary>What the battery was asked for when a reading was taken.</summary>
    private enum BatteryUse { Rest, Loaded, Cranking, Charging }

    private readonly CircuitSimulator _simulator = new(network);

    private Circuit Circuit => network.Circuit;

    /// <summary>The first reading that can't be true together with what was measured; null where all fit.</summary>
    public Message? Misfit(IReadOnlyList<SessionEntry> entries, Noticed what, IReadOnlyList<BenchValue> measured)
    {
        var lastRepair = entries.LastOrDefault(e => e.Event is RepairDone)?.Number ?? 0;
        foreach (var entry in entries)
        {
            if (entry is { Check: { } check, Value: { } value } && value is not ReadingParse.Number { Unsteady: true })
            {
                foreach (var one in measured)
                {
                    if ((entry.Number > lastRepair || IsByItself(one.What)) && Against(check, value, what.About!, one, measured) is { } code)
                    {
                        return new Message(code, NoticedText.Of(Circuit, what), entry.Number, CheckTitle.Of(Circuit, check), value, Say(one));
                    }
                }
            }
        }

        return null;
    }

    /// <summary>Of the part off its wires: a repair elsewhere does not change it, as it may the volts and amps of a part in place.</summary>
    private static bool IsByItself(BenchQuantity what) => what is BenchQuantity.WindingOhms or BenchQuantity.FuseOhms;

    private string? Against(Check check, ReadingValue value, string part, BenchValue one, IReadOnlyList<BenchValue> all) => one.What switch
    {
        BenchQuantity.RestVolts or BenchQuantity.CrankingVolts or BenchQuantity.ChargingVolts =>
            value is ReadingParse.Number read && IsAtPosts(check.Probe, part) ? Battery(UseIn(check.Arrangement), read.Value, one) : null,
        BenchQuantity.WindingOhms or BenchQuantity.FuseOhms => IsOhmsOf(check, part) && !AreAlike(value, one.Value) ? Misfits : null,
        // Which of the two tabs was read is not known: one of them must show it.
        BenchQuantity.TabVolts => value is ReadingParse.Number tab && IsTab(check.Probe, part) && CarriesIn(check.Arrangement, part)
            && !all.Any(v => v.What == BenchQuantity.TabVolts && IsNear(v.Value, tab.Value, "tab-volts"))
                ? Misfits : null,
        BenchQuantity.RunningAmps => value is ReadingParse.Number amps && IsFeedOf(check.Probe, part) && CarriesIn(check.Arrangement, part)
            && IsOtherCurrent(amps.Value, one.Value)
                ? Misfits : null,
        _ => null,
    };

    /// <summary>
    /// With everything in place the part has its load here, as on the bench: the fuse's load is on, or the motor turns. Not while the
    /// alternator lifts the supply or the starter pulls it down: which of them was so on the bench is not known.
    /// </summary>
    private bool CarriesIn(Arrangement arrangement, string part)
    {
        if (!IsPlain(arrangement) || UseIn(arrangement) is BatteryUse.Charging or BatteryUse.Cranking)
        {
            return false;
        }

        var healthy = _simulator.Simulate(new Arrangement(arrangement.Condition), []);
        return Circuit.Find(part) is Load ? healthy.Load(part).Condition == LoadCondition.Works
            : Math.Abs(healthy.FuseAmps(part)) >= PartFit.Of("carries-amps");
    }

    private static bool IsPlain(Arrangement arrangement) =>
        arrangement.Unplugged.Count == 0 && arrangement.Removed.Count == 0 && arrangement.Jumpers.Length == 0;

    private const string Misfits = "found.does-not-fit";

    private static string? Battery(BatteryUse use, double read, BenchValue one) => (one.What, use) switch
    {
        (BenchQuantity.RestVolts, BatteryUse.Rest) => IsNear(read, one.Value, "rest-volts") ? null : Misfits,
        // Without its loads a battery shows more than with them, and not much more.
        (BenchQuantity.RestVolts, BatteryUse.Loaded) => one.Value < read - PartFit.Of("rest-volts") || one.Value > read + PartFit.Of("loaded-volts") ? Misfits : null,
        (BenchQuantity.RestVolts, BatteryUse.Cranking) => one.Value < read ? Misfits : null,
        (BenchQuantity.CrankingVolts, BatteryUse.Cranking) => IsNear(read, one.Value, "cranking-volts") ? null : Misfits,
        (BenchQuantity.CrankingVolts, BatteryUse.Rest) => one.Value >= read ? "found.cranking-above-rest" : null,
        (BenchQuantity.ChargingVolts, BatteryUse.Charging) => IsNear(read, one.Value, "charging-volts") ? null : Misfits,
        _ => null,
    };

    private BatteryUse UseIn(Arrangement arrangement) => UseIn(Circuit.FindCondition(arrangement.Condition)!);

    private BatteryUse UseIn(Condition condition) =>
        condition.StarterAmps is not null || (Circuit.Parts.OfType<Starter>().Any() && condition.LastsSeconds is not null && !condition.EngineTurns) ? BatteryUse.Cranking
        : condition.EngineTurns || condition.AlternatorVolts is not null ? BatteryUse.Charging
        : condition.After is null && condition.Settings.Count == 0 ? BatteryUse.Rest
        : BatteryUse.Loaded;

    private static bool IsVolts(Probe probe) => probe.Instrument is Instrument.Volts or Instrument.VoltsLowImpedance;

    private static bool IsAtPosts(Probe probe, string battery) =>
        IsVolts(probe) && probe is { Red: { } red, Black: { } black } && red.Part == battery && red.Name == "pos"
        && ((black.Part == battery && black.Name == "neg") || black.Part == Metal.Body);

    /// <summary>Ohms between two terminals of the part itself, off its wires.</summary>
    private bool IsOhmsOf(Check check, string part) =>
        check.Probe is { Instrument: Instrument.Ohms, Red: { } red, Black: { } black } && red.Part == part && black.Part == part
        && (check.Arrangement.Unplugged.Contains(part) || (IsItsOwn(red) && IsItsOwn(black)));

    /// <summary>A pin of what was pulled, and not of its socket: <c>86p</c>.</summary>
    private bool IsItsOwn(TerminalName terminal) => Circuit.Find(terminal.Part) is Relay or Fuse && terminal.Name.EndsWith('p');

    /// <summary>Volts on one of its tabs against ground, by the body or by the battery.</summary>
    private bool IsTab(Probe probe, string fuse) =>
        IsVolts(probe) && probe is { Red: { } red, Black: { } black } && red.Part == fuse
        && (black.Part == Metal.Body || (black.Name == "neg" && Circuit.Find(black.Part) is Battery));

    private bool IsFeedOf(Probe probe, string motor) =>
        probe is { Instrument: Instrument.AmpsClamp, About: { } about } && Circuit.Wires.FirstOrDefault(w => w.Id == about) is { } wire
        && (wire.From.Part == motor || wire.To.Part == motor);

    private static bool IsNear(double one, double other, string row) => Math.Abs(one - other) <= PartFit.Of(row);

    private static bool AreAlike(ReadingValue read, double ohms) => read switch
    {
        ReadingParse.OverLimit => IsOpen(ohms),
        ReadingParse.Number { Value: var number } when IsOpen(number) || IsOpen(ohms) => IsOpen(number) && IsOpen(ohms),
        ReadingParse.Number { Value: var number } =>
            Math.Max(number, ohms) <= (PartFit.Of("ohms-times") * Math.Min(number, ohms)) + PartFit.Of("ohms-more"),
        _ => true,
    };

    /// <summary>OL, or as good as OL.</summary>
    private static bool IsOpen(double ohms) => ohms > PartFit.Of("ohms-open");

    /// <summary>Both ran, and drew what no two runs of one motor differ by. A motor that stood still in the car may run on the bench.</summary>
    private static bool IsOtherCurrent(double read, double amps) =>
        Math.Abs(read) > PartFit.Of("amps-least") && amps > PartFit.Of("amps-least")
        && Math.Max(Math.Abs(read), amps) > PartFit.Of("amps-times") * Math.Min(Math.Abs(read), amps);

    private static ReadingValue Say(BenchValue one) => double.IsPositiveInfinity(one.Value)
        ? new ReadingParse.OverLimit()
        : new ReadingParse.Number(Math.Round(one.Value, 3), one.What switch
        {
            BenchQuantity.ContactOhms or BenchQuantity.WindingOhms or BenchQuantity.FuseOhms => Quantity.Ohms,
            BenchQuantity.RunningAmps => Quantity.Amperes,
            _ => Quantity.Volts,
        }, null);
}
