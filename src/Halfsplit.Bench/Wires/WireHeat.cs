using System.Collections.Immutable;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Bench.Wires;

/// <summary>How warm a wire becomes, and what that asks of its insulation (<c>data/bench-wire-heat.csv</c>, <c>data/bench-insulation.csv</c>).</summary>
public static class WireHeat
{
    private sealed record Class(string Name, double MostKelvin);

    private sealed record Insulation(string Name, double MostCelsius);

    private static readonly ImmutableArray<Class> Classes =
        [.. BenchData.Read("bench-wire-heat.csv").Select(r => new Class(r.Text("class"), r.Number("most_kelvin")))];

    private static readonly ImmutableArray<Insulation> Insulations =
        [.. BenchData.Read("bench-insulation.csv").Select(r => new Insulation(r.Text("class"), r.Number("most_celsius")))];

    /// <summary>
    /// Kelvin above the air around it: heat goes with the square of the amps, and the amps of the table bring a wire from 30 °C to 70 °C.
    /// </summary>
    public static double RiseKelvin(double squareMillimetres, double amps)
    {
        var share = amps / WireTable.BearableAmps(squareMillimetres);
        return (BenchDefaults.Table["wire.table-limit"] - BenchDefaults.Table["wire.table-air"]) * share * share;
    }

    /// <summary>Amps that bring the wire to the table's limit in air of this temperature; 0 where the air is as hot already.</summary>
    public static double BearableAmps(double squareMillimetres, double celsius)
    {
        var (limit, air) = (BenchDefaults.Table["wire.table-limit"], BenchDefaults.Table["wire.table-air"]);
        // Colder air is no licence for more: the wire may end in a warm place.
        var share = Math.Clamp((limit - celsius) / (limit - air), 0, 1);
        return WireTable.BearableAmps(squareMillimetres) * Math.Sqrt(share);
    }

    /// <summary>cool, warm, hot or overloaded.</summary>
    public static string ClassOf(double riseKelvin) => Classes.First(c => riseKelvin <= c.MostKelvin).Name;

    /// <summary>The first temperature class of ISO 6722-1 that bears this; null where none does.</summary>
    public static string? InsulationFor(double celsius) => Insulations.FirstOrDefault(i => celsius <= i.MostCelsius)?.Name;
}
