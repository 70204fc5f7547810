using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Small;

/// <summary>Where on the scale some suspects would put the reading.</summary>
/// <param name="Low">In the unit of the scale.</param>
/// <param name="High">In the unit of the scale; not below <paramref name="Low"/>.</param>
/// <param name="Label">The suspects, or the healthy car, in words.</param>
/// <param name="Odds">Of these suspects together; null for the healthy car.</param>
public sealed record ScaleBand(double Low, double High, string Label, double? Odds);

/// <summary>The scale of expected readings: bands lettered A, B, C with the suspects behind them, and the reading as a mark.</summary>
public static class ReadingScale
{
    private const double Width = 460, Margin = 24, AxisY = 74, LineHeight = 16;
    private const int NamesInABand = 3;

    /// <summary>The bands of what suspects and the healthy car would read; neighbours that overlap become one.</summary>
    /// <param name="expected">Those without a number are left out.</param>
    /// <param name="texts">The words; null for English.</param>
    public static ImmutableArray<ScaleBand> BandsOf(IEnumerable<ExpectedReading> expected, TextCatalog? texts = null)
    {
        ArgumentNullException.ThrowIfNull(expected);
        texts ??= DrawingTexts.English;
        var bunches = new List<List<ExpectedReading>>();
        var high = double.NegativeInfinity;
        foreach (var reading in expected.Where(e => e.Mean is not null).OrderBy(e => e.Mean - (e.Spread ?? 0)))
        {
            if (reading.Mean!.Value - (reading.Spread ?? 0) > high)
            {
                bunches.Add([]);
            }

            bunches[^1].Add(reading);
            high = Math.Max(high, reading.Mean.Value + (reading.Spread ?? 0));
        }

        return [.. bunches.Select(b => new ScaleBand(
            b.Min(r => r.Mean!.Value - (r.Spread ?? 0)), b.Max(r => r.Mean!.Value + (r.Spread ?? 0)), LabelOf(b, texts),
            b.All(r => r.Suspect is null) ? null : b.Sum(r => r.Suspect?.Odds ?? 0)))];
    }

    /// <param name="bands">From <see cref="BandsOf"/>, or of the caller's own.</param>
    /// <param name="unit">V, Ω, A or %; the values are in it.</param>
    /// <param name="reading">What was read, in the unit; null before.</param>
    /// <param name="options">Theme, words and ids; layers do not count.</param>
    public static string Svg(ImmutableArray<ScaleBand> bands, string unit, double? reading = null, DrawingOptions? options = null)
    {
        options ??= DrawingOptions.Default;
        var pen = SmallDrawing.Pen(options);
        var values = bands.SelectMany(b => (double[])[b.Low, b.High]).Concat(reading is { } r ? [r] : []).ToList();
        var axis = PlotAxis.Of(values, Margin, Width - Margin, mayUseDecades: unit == "Ω", options.Formats);
        axis.Draw(pen, AxisY, unit);
        var y = AxisY + 46;
        for (var i = 0; i < bands.Length; i++)
        {
            var band = bands[i];
            var letter = i < 26 ? ((char)('A' + i)).ToString() : "*";
            var (from, to) = (axis.At(band.Low), axis.At(band.High));
            var level = AxisY - 26 + (i % 2 == 0 ? 0 : 12);
            pen.Rect(band.Odds is null ? "hs-body" : "hs-odds", from - 1, level, Math.Max(3, to - from + 2), 10, 2);
            pen.Text("hs-identity hs-middle", (from + to) / 2, level - 3 - (i % 2 == 0 ? 0 : 12), letter);
            var odds = band.Odds is { } known ? $"{OddsText.Of(known)}, " : "";
            foreach (var (line, first) in TextMeasure.Wrap($"{axis.Text(band.Low, band.High)} {unit}: {odds}{band.Label}", 10.5, Width - (2 * Margin) - 20).Select((l, n) => (l, n == 0)))
            {
                pen.Text("hs-key", Margin + 20, y, line);
                pen.Text("hs-identity", Margin, y, first ? letter : "");
                y += LineHeight;
            }
        }

        if (reading is { } read)
        {
            var x = axis.At(read);
            pen.Path("hs-solid", $"M{Pen.N(x)} {Pen.N(AxisY)}l-6 12h12z");
            pen.Line("hs-symbol", x, AxisY - 34, x, AxisY);
            pen.Text("hs-identity", Margin, y, options.Texts.Say(new Message("drawing.scale-read", read.ToString("G4", options.Formats), unit)));
            y += LineHeight;
        }

        var title = options.Texts.Say("drawing.scale-title");
        return SmallDrawing.Document(
            options, "scale", title, string.Join("; ", bands.Select(b => $"{axis.Text(b.Low, b.High)} {unit}: {b.Label}")), Width, y, pen);
    }

    private static string LabelOf(List<ExpectedReading> bunch, TextCatalog texts)
    {
        var suspects = bunch.Where(r => r.Suspect is not null).OrderByDescending(r => r.Suspect!.Odds).ToList();
        var names = suspects.Take(NamesInABand).Select(r => r.Suspect!.Suspect.Id).ToList();
        if (suspects.Count > NamesInABand)
        {
            names.Add(texts.Say(new Message("drawing.scale-more", suspects.Count - NamesInABand)));
        }

        if (bunch.Exists(r => r.Suspect is null))
        {
            names.Add(texts.Say("drawing.scale-healthy"));
        }

        return string.Join(", ", names);
    }
}
