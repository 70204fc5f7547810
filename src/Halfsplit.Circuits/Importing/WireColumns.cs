using System.Globalization;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Importing;

/// <summary>Reads gauges and lengths as people write them in tables.</summary>
internal static class WireColumns
{
    /// <summary>Cells that say that two terminals touch without a wire.</summary>
    private static readonly string[] Direct = ["direct", "direkt", "none", "bus bar", "busbar"];

    public static bool IsDirect(string text) => Direct.Contains(PlainText.Of(text));

    /// <summary>
    /// The unit of gauges without one: as the header says; AWG where all numbers are even and from 6 to 24, as those of wires
    /// that harnesses are made of are, or where a 2/0 stands among whole numbers; else mm².
    /// </summary>
    public static string UsualGauge(string header, IEnumerable<string> cells)
    {
        if (PlainText.Of(header) is "awg" or "ga" or "mm2" or "sqmm")
        {
            return PlainText.Of(header) is "awg" or "ga" ? "AWG" : "mm2";
        }

        var written = cells.ToList();
        var bare = written.Select(Number).OfType<double>().ToList();
        return bare.Count > 0 && (bare.TrueForAll(n => n is >= 6 and <= 24 && n % 2 == 0) || (written.Exists(IsThickAwg) && bare.TrueForAll(double.IsInteger)))
            ? "AWG"
            : "mm2";
    }

    /// <summary>As the sheet writes it: <c>2.5mm2</c>, <c>14AWG</c>; null where it is no gauge.</summary>
    /// <param name="usual">Unit of a number alone.</param>
    public static string? Gauge(string text, string usual)
    {
        var plain = text.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        foreach (var sign in (string[])["AWG", "GA", "#"])
        {
            if (plain.StartsWith(sign, StringComparison.Ordinal))
            {
                plain = plain[sign.Length..] + "AWG";
            }
            else if (plain.EndsWith(sign, StringComparison.Ordinal) && sign != "AWG")
            {
                plain = plain[..^sign.Length] + "AWG";
            }
        }

        plain = plain.Replace("MM²", "mm2", StringComparison.Ordinal).Replace("MM2", "mm2", StringComparison.Ordinal)
            .Replace("MM^2", "mm2", StringComparison.Ordinal).Replace("SQMM", "mm2", StringComparison.Ordinal).Replace("QMM", "mm2", StringComparison.Ordinal);
        plain = Number(plain) is not null ? plain + usual : IsThickAwg(plain) ? plain + "AWG" : plain;
        return WireText.TryParse($"wire {plain} 1m", out var wire, out _)
            ? wire!.Gauge.AwgText is { } awg ? awg + "AWG" : wire.Gauge.SquareMillimetres.ToString("R", CultureInfo.InvariantCulture) + "mm2"
            : null;
    }

    /// <summary>The unit of lengths without one: as the header says; millimetres where half of them are 20 and more, else metres.</summary>
    public static string UsualLength(string header, IEnumerable<string> cells)
    {
        if (Unit.Metre.TryFind(header.ToLowerInvariant(), out _))
        {
            return header.ToLowerInvariant();
        }

        const double Millimetres = 20;
        var bare = cells.Select(Number).OfType<double>().Order().ToList();
        return bare.Count > 0 && bare[bare.Count / 2] >= Millimetres ? "mm" : "m";
    }

    /// <summary>As the sheet writes it: <c>1.2m</c>, <c>6ft</c>; null where it is no length.</summary>
    public static string? Length(string text, string usual)
    {
        var plain = EverydayWords.Quantity(text.Replace(" ", "", StringComparison.Ordinal).ToLowerInvariant());
        plain = (Number(plain) is not null ? plain + usual : plain).Replace(',', '.');
        return Quantity.TryParse(plain, Unit.Metre, Limits.Metres, out _, out _) ? plain : null;
    }

    /// <summary>Sizes above 1 AWG, as <c>2/0</c>: no other unit writes them so.</summary>
    private static bool IsThickAwg(string text) => text.EndsWith("/0", StringComparison.Ordinal);

    /// <summary>A number alone, with a decimal point or comma.</summary>
    internal static double? Number(string text) => text.Length is > 0 and < 20 && Quantity.NumberLength(text) == text.Length
        && double.TryParse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
}
