using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Drawing.Svg;

/// <summary>The circuit's title and summary above the drawing.</summary>
internal sealed class Heading
{
    private const double TitleSize = 15, TitleLine = 19, SummarySize = 10.5, SummaryLine = 14;

    private readonly List<string> _title, _summary;

    public Heading(Circuit circuit, double width)
    {
        _title = TextMeasure.Wrap(circuit.Title, TitleSize * 1.12, width);
        _summary = circuit.Summary is { } summary ? TextMeasure.Wrap(summary.ReplaceLineEndings(" "), SummarySize, width) : [];
    }

    public double Height => (_title.Count * TitleLine) + (_summary.Count * SummaryLine) + 10;

    public string Draw(double x, double y)
    {
        var text = new StringBuilder();
        foreach (var line in _title)
        {
            Write("hs-heading", line, TitleLine);
        }

        foreach (var line in _summary)
        {
            Write("hs-summary", line, SummaryLine);
        }

        return text.ToString();

        void Write(string style, string line, double height)
        {
            text.Append(CultureInfo.InvariantCulture, $"<text class=\"{style}\" x=\"{Pen.N(x)}\" y=\"{Pen.N(y)}\">{Pen.Escape(line)}</text>\n");
            y += height;
        }
    }
}
