using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;

namespace Halfsplit.Jobs.Reporting;

/// <summary>Writes HTML. Every text goes through the encoder, and there is no way past it: what a person typed stays text.</summary>
internal sealed class HtmlWriter
{
    // Letters of all scripts stay readable; <, >, &, quotes and control characters never come out as they are.
    private static readonly HtmlEncoder Encoder = HtmlEncoder.Create(UnicodeRanges.All);

    private readonly StringBuilder _html = new();

    public void Element(string tag, string text) => Element(tag, null, () => Text(text));

    public void Element(string tag, string? kind, string text) => Element(tag, kind, () => Text(text));

    /// <param name="kind">The class of the style sheet; null for none.</param>
    public void Element(string tag, string? kind, Action body)
    {
        Start(tag, kind is null ? [] : [("class", kind)]);
        body();
        _html.Append("</").Append(tag).Append('>');
        if (tag is not ("bdi" or "b" or "span"))
        {
            _html.Append('\n');
        }
    }

    /// <summary>A tag without a body, or one that is never closed.</summary>
    public void Start(string tag, params (string Name, string Value)[] attributes)
    {
        _html.Append('<').Append(tag);
        foreach (var (name, value) in attributes)
        {
            _html.Append(' ').Append(name).Append("=\"").Append(Encoder.Encode(value)).Append('"');
        }

        _html.Append('>');
    }

    public void Text(string text) => _html.Append(Encoder.Encode(text));

    /// <summary>Text as somebody typed it: set apart, so that letters that run from right to left turn nothing else around.</summary>
    public void Typed(string text) => Element("bdi", null, text);

    /// <summary>The program's own style sheet, the one thing that is no text.</summary>
    public void Style(string css) => _html.Append("<style>").Append(css).Append("</style>\n");

    public override string ToString() => _html.ToString();
}
