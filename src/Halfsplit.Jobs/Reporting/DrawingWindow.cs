using System.Globalization;
using System.Text.RegularExpressions;

namespace Halfsplit.Jobs.Reporting;

/// <summary>The part of a drawing around its fault: a whole circuit on a few centimetres of paper can't be read.</summary>
internal static partial class DrawingWindow
{
    /// <summary>In the drawing's own units; letters are about nine of them high.</summary>
    private const double Width = 560, Height = 200;

    /// <summary>The same drawing seen through a window around the fault; the whole where no fault is marked or all of it fits.</summary>
    public static string AroundFault(string svg)
    {
        if (Page().Match(svg) is not { Success: true } page || Fault().Match(svg) is not { Success: true } fault)
        {
            return svg;
        }

        var (width, height) = (Number(page, 1), Number(page, 2));
        var (seenWidth, seenHeight) = (Math.Min(Width, width), Math.Min(Height, height));
        // The circuit stands below the heading, moved as a whole.
        var (right, down) = Moved().Match(svg) is { Success: true } moved ? (Number(moved, 1), Number(moved, 2)) : (0, 0);
        var left = Math.Clamp(right + Number(fault, 1) + ((Number(fault, 3) - seenWidth) / 2), 0, width - seenWidth);
        var top = Math.Clamp(down + Number(fault, 2) + ((Number(fault, 4) - seenHeight) / 2), 0, height - seenHeight);
        var seen = string.Create(
            CultureInfo.InvariantCulture,
            $"width=\"{seenWidth}\" height=\"{seenHeight}\" viewBox=\"{left} {top} {seenWidth} {seenHeight}\"");
        return svg[..page.Index] + seen + svg[(page.Index + page.Length)..];
    }

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex("width=\"([0-9.]+)\" height=\"([0-9.]+)\" viewBox=\"0 0 [0-9.]+ [0-9.]+\"")]
    private static partial Regex Page();

    [GeneratedRegex("<g transform=\"translate\\(([0-9.]+) ([0-9.]+)\\)\"")]
    private static partial Regex Moved();

    [GeneratedRegex("<rect class=\"hs-fault\" x=\"([0-9.]+)\" y=\"([0-9.]+)\" width=\"([0-9.]+)\" height=\"([0-9.]+)\"")]
    private static partial Regex Fault();
}
