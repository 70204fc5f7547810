using System.Collections.Frozen;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Suspects;

/// <summary>How likely each kind of thing fails in each way, before anything is known: relative weights, assumptions all.</summary>
public static class FailureWeights
{
    /// <summary>Identifies the weights a job was judged with.</summary>
    public const string Version = "2026-11";

    /// <summary>Weight of "none of these" relative to all other suspects together; an assumption.</summary>
    public const double NoneOfTheseShare = 0.03;

    /// <summary>Share of pairs of faults relative to single ones; an assumption.</summary>
    public const double PairShare = 0.05;

    /// <summary>Weight of a fault mode that the table does not name.</summary>
    private const double Unnamed = 0.2;

    private static readonly FrozenDictionary<string, (double Weight, double Wet, double Hot)> Table = DataFile
        .Read(typeof(FailureWeights).Assembly, "failure-weights.csv")
        .ToFrozenDictionary(
            row => $"{row.Text("kind")}/{row.Text("mode")}",
            row => (row.Number("weight"), row.Number("wet"), row.Number("hot")),
            StringComparer.Ordinal);

    /// <summary>The weight of a fault mode where it lives; always positive.</summary>
    public static double Of(FaultMode mode, PlaceEnvironment environment)
    {
        ArgumentNullException.ThrowIfNull(mode);
        return Of($"{mode.Kind}/{mode.Mode}", environment);
    }

    /// <summary>The weight of a kind and mode, such as <c>motor/open</c>.</summary>
    public static double Of(string kindAndMode, PlaceEnvironment environment)
    {
        if (!Table.TryGetValue(kindAndMode, out var row))
        {
            return Unnamed;
        }

        return row.Weight * environment switch
        {
            PlaceEnvironment.Wet => row.Wet,
            PlaceEnvironment.Hot => row.Hot,
            _ => 1,
        };
    }
}
