using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Loads;

/// <summary>A diode by the meter's diode setting, both ways round; positive infinity for OL.</summary>
public static class DiodeAid
{
    public static Outcome<Answer> Of(double oneWay, double otherWay)
    {
        var limits = new InputLimits()
            .Within("diode-volts", double.IsPositiveInfinity(oneWay) ? null : oneWay, "diode-volts", Unit.Volt)
            .Within("diode-volts", double.IsPositiveInfinity(otherWay) ? null : otherWay, "diode-volts", Unit.Volt);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<Answer>(limits.Problems);
        }

        var (low, high) = (Math.Min(oneWay, otherWay), Math.Max(oneWay, otherWay));
        return Outcome.Of(new Answer(
            new Message("bench-diode.title", new Measure(oneWay, Unit.Volt).Say(), new Measure(otherWay, Unit.Volt).Say()),
            [new Message("bench-caution.ohms-isolated")], [], [new Message($"bench-diode.{State(low, high)}")], [new Message("bench-diode.source")])
        {
            Found = State(low, high) switch
            {
                "open" => "diode-open",
                "shorted" => "diode-shorted",
                "good" => "diode-good",
                _ => null,
            },
        });
    }

    private static string State(double low, double high)
    {
        if (double.IsPositiveInfinity(low))
        {
            return "open";
        }

        if (!double.IsPositiveInfinity(high))
        {
            return high < BenchDefaults.Table.RangeOf("diode.forward").Low ? "shorted" : "both-ways";
        }

        ValueRange silicon = BenchDefaults.Table.RangeOf("diode.forward"), light = BenchDefaults.Table.RangeOf("diode.light-forward");
        return silicon.Contains(low) ? "good" : light.Contains(low) ? "light" : low < silicon.Low ? "low" : "odd";
    }
}
