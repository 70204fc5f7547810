using System.Globalization;

namespace Halfsplit.Drawing.Svg;

/// <summary>Odds as people read them; never a certainty.</summary>
internal static class OddsText
{
    public static string Of(double odds) => odds switch
    {
        < 0.01 => "<1 %",
        > 0.99 => ">99 %",
        _ => (odds * 100).ToString("0", CultureInfo.InvariantCulture) + " %",
    };
}
