using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Motors;

/// <summary>
/// Reads a current from a table: one column of amps, or two of seconds and amps; parted by commas, semicolons or tabs, with or without a
/// line of names. Beside a semicolon or a tab a decimal comma is understood.
/// </summary>
public static class TraceText
{
    /// <summary>Steps of time may differ by so much of their mean, or the samples are not even.</summary>
    private static readonly double MostUneven = BenchDefaults.Table["motor.most-uneven"];

    private static readonly double SlowestRate = BenchDefaults.Table.RangeOf("limit.sample-rate").Low, FastestRate = BenchDefaults.Table.RangeOf("limit.sample-rate").High;

    /// <param name="samplesPerSecond">Needed for one column; two tell it themselves.</param>
    public static Outcome<CurrentTrace> Parse(string text, double? samplesPerSecond)
    {
        ArgumentNullException.ThrowIfNull(text);
        var sign = text.Contains(';', StringComparison.Ordinal) ? ';' : text.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        var rows = new List<double[]>();
        var number = 0;
        foreach (var line in text.Split('\n', StringSplitOptions.TrimEntries))
        {
            number++;
            if (line.Length == 0)
            {
                continue;
            }

            if (Row(line, sign) is { } row && (rows.Count == 0 || row.Length == rows[0].Length))
            {
                rows.Add(row);
            }
            else if (rows.Count > 0)
            {
                return Outcome.Wrong<CurrentTrace>(new Message("bench-limit.trace-line", number, line));
            }
        }

        return rows.Count == 0 ? Outcome.Wrong<CurrentTrace>(new Message("bench-limit.trace-empty"))
            : rows[0].Length == 1 ? OneColumn(rows, samplesPerSecond) : TwoColumns(rows);
    }

    private static Outcome<CurrentTrace> OneColumn(List<double[]> rows, double? samplesPerSecond)
    {
        if (samplesPerSecond is not { } rate)
        {
            return Outcome.Wrong<CurrentTrace>(new Message("bench-limit.no-rate", SlowestRate, new Figure(FastestRate, "0")));
        }

        var limits = new InputLimits().Within("sample-rate", rate, "sample-rate", Unit.Hertz);
        return limits.AreKept
            ? Outcome.Of(new CurrentTrace([.. rows.Select(r => r[0])], rate))
            : Outcome.Wrong<CurrentTrace>(limits.Problems);
    }

    private static Outcome<CurrentTrace> TwoColumns(List<double[]> rows)
    {
        var step = rows.Count > 1 ? (rows[^1][0] - rows[0][0]) / (rows.Count - 1) : 0;
        var even = step > 0 && Enumerable.Range(1, rows.Count - 1).All(i => Math.Abs(rows[i][0] - rows[i - 1][0] - step) <= MostUneven * step);
        return even
            ? Outcome.Of(new CurrentTrace([.. rows.Select(r => r[1])], 1 / step))
            : Outcome.Wrong<CurrentTrace>(new Message("bench-limit.uneven"));
    }

    /// <summary>One or two numbers; null where the line has others or none.</summary>
    private static double[]? Row(string line, char sign)
    {
        var cells = line.Split(sign, StringSplitOptions.TrimEntries);
        var numbers = new double[cells.Length];
        for (var i = 0; i < cells.Length; i++)
        {
            var cell = sign == ',' ? cells[i] : cells[i].Replace(',', '.');
            if (!double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[i]) || !double.IsFinite(numbers[i]))
            {
                return null;
            }
        }

        return numbers.Length is 1 or 2 ? numbers : null;
    }
}
