using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Drawing.Svg;

namespace Halfsplit.Drawing.Symbols;

/// <summary>A part's symbol with its texts: identity, value, name, place.</summary>
internal abstract class PartBox(Part part) : Box
{
    /// <summary>Strip at the top and the bottom where terminals have their numbers and volts.</summary>
    protected const double Strip = 13;

    /// <summary>Room beside a wire for the round mark of a lead or a reading.</summary>
    protected const double MarkRoom = 11;

    /// <summary>Widest volts beside a terminal.</summary>
    protected const double VoltsRoom = 40;

    private const double NameWidth = 76, LineHeight = 11, IdentityHeight = 13;

    /// <summary>Room for the odds beside the identity.</summary>
    protected const double OddsRoom = 38;

    public Part Part { get; } = part;

    /// <summary>The name of this symbol: the part's, with the cavity where the part has several symbols.</summary>
    public virtual string Identity => Part.Id;

    public override string? Place => Part.Notes.Place;

    /// <summary>What needs no translation beyond its decimal sign: "7.5 A", "85 Ω".</summary>
    protected virtual IEnumerable<FormattableString> Values => PartValues.Of(Part);

    /// <summary>False where the name stands at a sister of this symbol.</summary>
    protected virtual bool HasName => true;

    /// <summary>Left edge of the texts.</summary>
    protected double TextX { get; set; }

    /// <summary>Top edge of the texts.</summary>
    protected double TextY { get; set; }

    protected virtual double WidthOfNames => NameWidth;

    /// <summary>The lines below the identity, each with its class.</summary>
    private List<(FormattableString Text, string Class)> _lines = [];

    /// <summary>Collects the texts; their size is known then.</summary>
    protected (double Width, double Height) ArrangeTexts()
    {
        _lines = [.. Values.Select(v => (v, "hs-value"))];
        if (Part.Notes.Name is { } name && HasName)
        {
            _lines.AddRange(TextMeasure.Wrap(name, TextMeasure.Name, WidthOfNames).Select(l => ((FormattableString)$"{l}", "hs-name")));
        }

        if (Place is { } place && !IsFramed)
        {
            _lines.AddRange(TextMeasure.Wrap(place, TextMeasure.Name, WidthOfNames).Select(l => ((FormattableString)$"{l}", "hs-place")));
        }

        if (Part is Load)
        {
            _lines.Add(($"", "hs-state"));
        }

        var widest = _lines.Select(l => TextMeasure.Width(FormattableString.Invariant(l.Text), TextMeasure.Name)).DefaultIfEmpty(0).Max();
        var identity = TextMeasure.Width(Identity, TextMeasure.Identity, bold: true) + OddsRoom;
        return (Math.Ceiling(Math.Max(widest, Math.Max(identity, Part is Load ? 66 : 0))), IdentityHeight + (_lines.Count * LineHeight));
    }

    /// <summary>Puts the texts to the right of the symbol and makes the box as high as the higher of the two.</summary>
    /// <param name="x">Left edge of the texts.</param>
    /// <param name="textHeight">As <see cref="ArrangeTexts"/> gave it.</param>
    /// <param name="symbolHeight">Without the strips at the top and the bottom.</param>
    /// <param name="overlap">How far the texts may reach into the strips.</param>
    protected void SetBeside(double x, double textHeight, double symbolHeight, double overlap = 0)
    {
        TextX = x;
        Height = Math.Ceiling(Math.Max(textHeight - overlap, symbolHeight) + (2 * Strip));
        TextY = (Height - textHeight) / 2;
    }

    /// <summary>Draws the symbol; the pen's origin is the box's top left corner.</summary>
    public abstract void Draw(Pen pen);

    protected void DrawTexts(Pen pen)
    {
        var y = TextY + IdentityHeight - 3;
        pen.Text("hs-identity", TextX, y, Identity);
        if (pen.Shown.OddsOf(Identity) is { } odds)
        {
            pen.Badge(TextX + TextMeasure.Width(Identity, TextMeasure.Identity, bold: true) + 4, y - 9, odds);
        }

        foreach (var (text, style) in _lines)
        {
            y += LineHeight;
            var shown = style == "hs-state" ? pen.Shown.StateOf(Part) : text.ToString(pen.Shown.Formats);
            if (shown is { Length: > 0 })
            {
                pen.Text(style, TextX, y, shown);
            }
        }
    }

    /// <summary>Number and volts of a terminal, beside its wire in the strip.</summary>
    protected void DrawTerminal(Pen pen, Port port, bool hasNumber = true)
    {
        ArgumentNullException.ThrowIfNull(port.Terminal);
        var name = new TerminalName(Part.Id, port.Terminal);
        var edge = port.Side == Side.Top ? 0 : Height;
        var baseline = port.Side == Side.Top ? 10 : Height - 4;
        pen.Open("hs-terminal", ("id", pen.IdOf("terminal", name.ToString())), ("data-terminal", name.ToString()));
        if (hasNumber)
        {
            pen.Text("hs-number hs-end", port.Offset - MarkRoom, baseline, port.Terminal);
        }

        if (pen.Shown.VoltsOf(name) is { } volts)
        {
            pen.Text("hs-volts", port.Offset + MarkRoom, baseline, volts);
        }

        pen.Circle("hs-touch", port.Offset, edge, 9);
        pen.Close();
        pen.Marks.Add(new TerminalPoint(name, X + port.Offset, Y + (port.Side == Side.Top ? 6 : Height - 6)));
    }

    protected static double NumberRoom(string terminal) => Math.Ceiling(MarkRoom + TextMeasure.Width(terminal, TextMeasure.Small) + 3);
}
