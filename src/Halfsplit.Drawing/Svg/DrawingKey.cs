using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Layers;

namespace Halfsplit.Drawing.Svg;

/// <summary>What stands below the drawing: every mark explained in words, the readings and the leads listed.</summary>
internal sealed class DrawingKey
{
    private const double Size = 10.5, LineHeight = 15, IconRoom = 24;

    private readonly List<(string Icon, string Text)> _lines;

    private DrawingKey(List<(string, string)> lines) => _lines = lines;

    public double Height => _lines.Count * LineHeight;

    public static DrawingKey Of(Circuit circuit, DrawingOptions options, double width)
    {
        var lines = new List<(string, string)>();
        foreach (var (icon, text) in Lines(circuit, options))
        {
            var pieces = TextMeasure.Wrap(text, Size, width - IconRoom);
            lines.AddRange(pieces.Select((piece, i) => (i == 0 ? icon : "", piece)));
        }

        return new DrawingKey(lines);
    }

    /// <summary>The key's lines, each with the name of its icon.</summary>
    public static IEnumerable<(string Icon, string Text)> Lines(Circuit circuit, DrawingOptions options)
    {
        string Say(string code, params object[] arguments) => options.Texts.Say(new Message(code, arguments));
        foreach (var layer in options.Layers)
        {
            switch (layer)
            {
                case PredictionLayer { Point: var point }:
                    yield return ("flow", Say("drawing.key-prediction"));
                    if (point.BlownFuses.ToList() is { Count: > 0 } blown)
                    {
                        yield return ("", Say("drawing.key-blown", string.Join(", ", blown)));
                    }

                    break;
                case SuspectLayer:
                    yield return ("odds", Say("drawing.key-odds"));
                    break;
                case LeadsLayer { Probe: { Red: { } red, Black: { } black } }:
                    yield return ("leads", Say("drawing.key-leads", red, black));
                    break;
                case LeadsLayer { Probe.About: { } about }:
                    yield return ("about", Say("drawing.key-about", about));
                    break;
                case ReadingsLayer { Readings: var readings }:
                    foreach (var reading in readings)
                    {
                        yield return ($"{reading.Number}", reading.Probe is { Red: { } first, Black: { } second }
                            ? Say("drawing.key-reading", first, second, reading.Text)
                            : Say("drawing.key-seen", reading.Probe.About ?? circuit.Title, reading.Text));
                    }

                    break;
                case FaultLayer { Faults: var faults }:
                    foreach (var fault in faults)
                    {
                        yield return ("fault", Say("drawing.key-fault", fault.Part, fault.Mode.Replace('-', ' ')));
                    }

                    break;
                default:
                    break;
            }
        }

        yield return ("", Say("drawing.key-wires"));
        if (circuit.Places.Length > 0)
        {
            yield return ("", Say("drawing.key-places"));
        }
    }

    public string Draw(double x, double y)
    {
        var text = new StringBuilder("<g class=\"hs-key-lines\">\n");
        foreach (var (icon, line) in _lines)
        {
            y += LineHeight;
            text.Append(KeyIcons.Draw(icon, x, y - 4));
            text.Append(CultureInfo.InvariantCulture, $"<text class=\"hs-key\" x=\"{Pen.N(x + IconRoom)}\" y=\"{Pen.N(y)}\">{Pen.Escape(line)}</text>\n");
        }

        return text.Append("</g>\n").ToString();
    }
}
