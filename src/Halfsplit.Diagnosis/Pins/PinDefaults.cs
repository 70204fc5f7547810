using System.Collections.Frozen;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What the search for pins rests on (<c>data/pins.csv</c>), each with its source or the words that say there is none.</summary>
public static class PinDefaults
{
    private static readonly FrozenDictionary<string, double> ByName =
        DataFile.Numbers(typeof(PinDefaults).Assembly, "pins.csv");

    /// <summary>The value of a row.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such row: the build is broken.</exception>
    public static double Of(string name) => ByName[name];
}
