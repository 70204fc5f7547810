using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Relays;

/// <summary>How long a coil bears a supply; unlike its rating where it overheats on the very volts that it is said to be made for.</summary>
public enum CoilBearing { DoesNotPullIn, ForLong, ForAMinute, Harmful, Unlike }

/// <summary>What a supply does to a relay's coil.</summary>
/// <param name="ColdAmps">The moment it is switched on.</param>
/// <param name="WarmWatts">Once the coil is as warm as it gets.</param>
/// <param name="Celsius">How warm that is.</param>
public sealed record CoilResult(double Ohms, double Volts, double RatedVolts, double ColdAmps, double WarmWatts, double Celsius, CoilBearing Bearing);

/// <summary>Whether a supply pulls a relay in, and whether it burns the coil.</summary>
public static class CoilPower
{
    /// <param name="ohms">Of the cold coil.</param>
    /// <param name="volts">Of the supply.</param>
    /// <param name="ratedVolts">6, 12 or 24.</param>
    public static Outcome<CoilResult> Of(double ohms, double volts, double ratedVolts = 12)
    {
        var limits = new InputLimits()
            .Within("coil-ohms", ohms, "coil-ohms", Unit.Ohm)
            .Within("supply", volts, "coil-supply", Unit.Volt)
            .Unless(ratedVolts is 6 or 12 or 24, "bench-limit.rated-volts");
        return limits.AreKept ? Outcome.Of(Result(ohms, volts, ratedVolts)) : Outcome.Wrong<CoilResult>(limits.Problems);
    }

    public static Answer Answer(CoilResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new Answer(
            new Message("bench-coil.title", new Measure(result.Ohms, Unit.Ohm).Say(), new Measure(result.Volts, Unit.Volt).Say()),
            [Caution],
            [
                new("coil-current", result.ColdAmps, Unit.Amp), new("coil-heat", result.WarmWatts, Unit.Watt), new("coil-celsius", result.Celsius, Unit.Celsius),
            ],
            [
                result.Bearing switch
                {
                    CoilBearing.DoesNotPullIn => new Message(
                        "bench-coil.too-low", Said(result.RatedVolts), Said(ComponentDefaults.For(result.RatedVolts)["relay.pull-in-volts"].Range.High)),
                    CoilBearing.ForLong => new Message("bench-coil.for-long"),
                    CoilBearing.ForAMinute => new Message("bench-coil.for-a-minute"),
                    CoilBearing.Unlike => new Message("bench-coil.unlike", new Measure(result.Ohms, Unit.Ohm).Say(), Said(result.RatedVolts)),
                    _ => new Message("bench-coil.harmful", Said(result.RatedVolts)),
                },
                new Message("bench-coil.click-proves-little"),
            ],
            [
                new Message(
                    "bench-coil.source", BenchDefaults.Table.Say("coil.continuous-volts", Unit.Volt), BenchDefaults.Table.Say("coil.minute-volts", Unit.Volt),
                    BenchDefaults.Table.Say("coil.most-celsius", Unit.Celsius), BenchDefaults.Table["coil.kelvin-per-watt"]),
            ])
        {
            Steps = [new Message("bench-coil.step-lead", LeadFuse, Lamp), new Message("bench-coil.step-pins"), new Message("bench-coil.step-polarity")],
        };
    }

    /// <summary>What whoever powers a coil has to know first.</summary>
    public static Message Caution => new("bench-caution.coil", LeadFuse, Lamp);

    private static Message LeadFuse => BenchDefaults.Table.Say("coil.lead-fuse", Unit.Amp);

    private static Message Lamp => BenchDefaults.Table.Say("coil.lamp-watts", Unit.Watt);

    private static Message Said(double volts) => new Measure(volts, Unit.Volt).Say();

    private static CoilResult Result(double ohms, double volts, double ratedVolts)
    {
        var table = BenchDefaults.Table;
        var room = table["coil.room"];
        // Copper resists more as it warms, which limits the heat: rise = volts² / ohms(rise) × kelvin per watt, a quadratic equation.
        var alpha = WireTable.CopperTemperatureCoefficient;
        var cold = volts * volts / ohms * table["coil.kelvin-per-watt"];
        var rise = (Math.Sqrt(1 + (4 * alpha * cold)) - 1) / (2 * alpha);
        var celsius = room + rise;
        var scale = ratedVolts / 12;
        return new CoilResult(
            ohms, volts, ratedVolts, volts / ohms, rise / table["coil.kelvin-per-watt"], celsius,
            volts < ComponentDefaults.For(ratedVolts).RelayPullInVolts ? CoilBearing.DoesNotPullIn
                : volts <= table["coil.continuous-volts"] * scale && celsius <= table["coil.most-celsius"] ? CoilBearing.ForLong
                : volts <= table["coil.minute-volts"] * scale && celsius <= table["coil.most-celsius"] ? CoilBearing.ForAMinute
                : volts <= table["coil.continuous-volts"] * scale ? CoilBearing.Unlike
                : CoilBearing.Harmful);
    }
}
