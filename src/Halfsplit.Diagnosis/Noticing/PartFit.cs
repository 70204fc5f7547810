using System.Collections.Frozen;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>How near what the bench measured must come to what else is known of the part (<c>data/part-fit.csv</c>).</summary>
public static class PartFit
{
    private static readonly FrozenDictionary<string, double> ByName =
        DataFile.Numbers(typeof(PartFit).Assembly, "part-fit.csv");

    /// <summary>The value of a row.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such row: the build is broken.</exception>
    public static double Of(string name) => ByName[name];

    /// <summary>From 1 for the same ohms down to 0 for ohms that are many decades away.</summary>
    /// <param name="measured">Ohms; 0 counts as what a meter shows as zero.</param>
    /// <param name="own">Ohms of the fault.</param>
    public static double Likeness(double measured, double own)
    {
        var least = Of("ohms-least");
        var decades = Math.Log10(Math.Max(measured, least) / Math.Max(own, least)) / Of("ohms-decades");
        return Math.Exp(-0.5 * decades * decades);
    }
}
