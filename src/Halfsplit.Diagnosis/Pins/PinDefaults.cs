using System.Collections.Frozen;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What the search for pins rests on (<c>data/pins.csv</c>), each with its source or the words that say there is none.</summary>
public static class PinDefaults
{
    private static readonly FrozenDictionary<string, double> ByName = DataFile.Read(typeof(PinDefaults).Assembly, "pins.csv")
        .ToFrozenDictionary(row => row.Text("name"), row => row.Number("value"), StringComparer.Ordinal);

    /// <summary>The value of a row.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such row: the build is broken.</exception>
    public static double Of(string name) => ByName[name];
}
