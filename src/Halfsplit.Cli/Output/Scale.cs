using Halfsplit.Drawing.Small;

namespace Halfsplit.Cli.Output;

/// <summary>A ruled axis in text: which column a value falls in, and the ticks under it.</summary>
public sealed class Scale
{
    private const int Steps = 8;

    private readonly RoundAxis _axis;

    private Scale(RoundAxis axis, int columns, string ruled, string labels) =>
        (_axis, Columns, Axis, Labels) = (axis, columns, ruled, labels);

    public int Columns { get; }

    /// <summary>The ruled line, as wide as <see cref="Columns"/>.</summary>
    public string Axis { get; }

    /// <summary>The numbers under the ticks; may reach a little beyond the axis.</summary>
    public string Labels { get; }

    /// <summary>An axis that holds all values with round ends.</summary>
    public static Scale Of(IReadOnlyCollection<double> values, int columns, bool mayUseDecades)
    {
        var axis = RoundAxis.Of(values, Steps, mayUseDecades);
        var ruled = Enumerable.Repeat('-', columns).ToArray();
        var labels = Enumerable.Repeat(' ', columns + 8).ToArray();
        var free = 0;
        foreach (var tick in axis.Ticks)
        {
            var column = Column(axis, tick, columns);
            var label = axis.Label(tick, CliTexts.Formats);
            ruled[column] = '|';
            if (column >= free && column + label.Length < labels.Length)
            {
                label.CopyTo(0, labels, column, label.Length);
                free = column + label.Length + 1;
            }
        }

        return new Scale(axis, columns, new string(ruled), new string(labels).TrimEnd());
    }

    /// <summary>The column of a value; values beyond the ends fall on them.</summary>
    public int ColumnOf(double value) => Column(_axis, value, Columns);

    /// <summary>A value with as many digits as matter on this axis; the unit is left to the caller.</summary>
    public string Text(double value) => _axis.Text(value, CliTexts.Formats);

    private static int Column(RoundAxis axis, double value, int columns) => (int)Math.Round(axis.At(value) * (columns - 1));
}
