using System.Globalization;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Model;

/// <summary>A wire's cross-section as it was given: square millimetres, or an AWG number.</summary>
/// <param name="SquareMillimetres">Copper area in mm².</param>
/// <param name="Awg">The American wire gauge number it was given as, 1/0 to 4/0 as 0 to −3; null for mm².</param>
public sealed record WireGauge(double SquareMillimetres, int? Awg = null)
{
    public static WireGauge OfAwg(int awg) => new(WireTable.SquareMillimetresOfAwg(awg), awg);

    /// <summary>The AWG number as it is written: <c>14</c>, <c>2/0</c>; null for mm².</summary>
    public string? AwgText => Awg switch
    {
        null => null,
        <= 0 => (1 - Awg.Value).ToString(CultureInfo.InvariantCulture) + "/0",
        _ => Awg.Value.ToString(CultureInfo.InvariantCulture),
    };
}
