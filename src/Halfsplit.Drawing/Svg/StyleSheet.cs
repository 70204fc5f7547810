using System.Text;

namespace Halfsplit.Drawing.Svg;

/// <summary>
/// The colours and strokes of all drawings. What differs by colour also differs by shape, dash, thickness or word, so that
/// the print theme, which has no colour, loses nothing.
/// </summary>
internal static class StyleSheet
{
    /// <summary>Variable, light, dark, print.</summary>
    private static readonly (string Name, string Light, string Dark, string Print)[] Colours =
    [
        ("paper", "#ffffff", "#14181d", "#ffffff"),
        ("ink", "#1b1f24", "#e8ecf1", "#000000"),
        ("muted", "#57606a", "#a3adb8", "#333333"),
        ("fill", "#ffffff", "#1f262e", "#ffffff"),
        ("module", "#f3f5f7", "#242c35", "#ffffff"),
        ("wire", "#3d444d", "#c3ccd6", "#000000"),
        ("still", "#9aa4af", "#66717d", "#777777"),
        ("flow", "#0a5fb8", "#6cb4ff", "#000000"),
        ("frame", "#8a939d", "#7d8894", "#777777"),
        ("frame-fill", "#f6f8fa", "#1a2027", "#ffffff"),
        ("odds", "#fff1d6", "#4a3708", "#ffffff"),
        ("odds-ink", "#7a4a00", "#ffd68a", "#000000"),
        ("fault", "#b3161f", "#ff8f88", "#000000"),
        ("red", "#c4121b", "#e5484d", "#ffffff"),
        ("red-ink", "#ffffff", "#ffffff", "#000000"),
        ("black", "#16191d", "#05070a", "#000000"),
        ("black-ink", "#ffffff", "#ffffff", "#ffffff"),
        ("reading", "#0f6b3d", "#62d394", "#ffffff"),
        ("reading-ink", "#ffffff", "#07150d", "#000000"),
        ("chosen", "#7a2fb8", "#d2a8ff", "#000000"),
    ];

    private const string Rules = """
        .hs-paper{fill:$paper}
        text{font-family:'DejaVu Sans',Verdana,Arial,Helvetica,sans-serif;fill:$ink;font-size:9.5px}
        .hs-heading{font-size:15px;font-weight:bold}
        .hs-summary,.hs-key{font-size:10.5px;fill:$muted}
        .hs-identity{font-size:11.5px;font-weight:bold}
        .hs-value{fill:$ink}
        .hs-name{fill:$muted}
        .hs-place{fill:$muted;font-style:italic}
        .hs-state{fill:$flow;font-weight:bold}
        .hs-number{font-size:8.5px;fill:$ink}
        .hs-volts{font-size:8.5px;fill:$flow}
        .hs-amps{font-size:8.5px;fill:$flow;font-weight:bold}
        .hs-wire-text{font-size:8.5px;fill:$ink}
        .hs-letter{font-size:12px;font-weight:bold}
        .hs-end{text-anchor:end}
        .hs-middle{text-anchor:middle}
        .hs-wire{fill:none;stroke:$wire;stroke-width:1.4;stroke-linecap:square;stroke-linejoin:miter}
        .hs-still{stroke:$still}
        .hs-flow{stroke:$flow}
        .hs-dot,.hs-pivot,.hs-solid{fill:$ink}
        .hs-dot{stroke:$paper;stroke-width:1}
        .hs-ring,.hs-body{fill:$fill;stroke:$ink;stroke-width:1.4;stroke-linejoin:round}
        .hs-module{fill:$module}
        .hs-live{stroke-width:3}
        .hs-symbol,.hs-open,.hs-plate{fill:none;stroke:$ink;stroke-width:1.4;stroke-linecap:round}
        .hs-thick{stroke-width:3.4}
        .hs-blade{stroke:$ink;stroke-width:2.2;stroke-linecap:round}
        .hs-broken{stroke:$fault;stroke-width:1.8}
        .hs-thin{fill:none;stroke:$ink;stroke-width:1}
        .hs-body.hs-thin{fill:$fill}
        .hs-link{stroke:$ink;stroke-width:1;stroke-dasharray:3 2}
        .hs-outline{fill:none;stroke:$muted;stroke-width:1;stroke-dasharray:1.5 2.5}
        .hs-rail{stroke:$ink;stroke-width:3.2;stroke-linecap:round}
        .hs-frame{fill:$frame-fill;stroke:$frame;stroke-width:1;stroke-dasharray:5 3}
        .hs-frame-name{font-size:9.5px;font-style:italic;fill:$muted}
        .hs-sleeve{stroke:$ink;stroke-width:.7}
        .hs-touch{fill:#000;fill-opacity:0;stroke:none}
        .hs-driving{font-weight:bold}
        .hs-driving-dot{fill:$flow}
        .hs-odds{fill:$odds;stroke:$odds-ink;stroke-width:.8}
        .hs-odds-share{fill:$odds-ink}
        .hs-odds-text{font-size:8px;fill:$odds-ink;font-weight:bold}
        .hs-red{fill:$red;stroke:$ink;stroke-width:1.3}
        .hs-red-text{font-size:11px;font-weight:bold;fill:$red-ink}
        .hs-black{fill:$black;stroke:$paper;stroke-width:1.3}
        .hs-black-text{font-size:11px;font-weight:bold;fill:$black-ink}
        .hs-reading{fill:$reading;stroke:$ink;stroke-width:1}
        .hs-reading-text{font-size:8.5px;font-weight:bold;fill:$reading-ink}
        .hs-fault{fill:none;stroke:$fault;stroke-width:2.2;stroke-dasharray:7 3}
        .hs-fault-mark{fill:$paper;stroke:$fault;stroke-width:1.8}
        .hs-fault-cross{stroke:$fault;stroke-width:2.2;stroke-linecap:round}
        .hs-chosen{fill:none;stroke:$chosen;stroke-width:2}
        .hs-about{fill:none;stroke:$red;stroke-width:2}
        .hs-part:focus .hs-focus,.hs-part:hover .hs-focus{stroke:$chosen;stroke-width:1}
        .hs-focus{fill:none;stroke:none}
        """;

    /// <summary>The style element's content.</summary>
    /// <param name="scope">A selector that every rule is put under, so that a page's own texts keep their looks.</param>
    public static string For(DrawingOptions options, string scope)
    {
        var css = new StringBuilder();
        if (options.Switchable)
        {
            foreach (var theme in Enum.GetValues<DrawingTheme>())
            {
                css.Append(scope).Append(".hs-").Append(NameOf(theme)).Append('{');
                foreach (var colour in Colours)
                {
                    css.Append("--hs-").Append(colour.Name).Append(':').Append(Of(colour, theme)).Append(';');
                }

                css.Append("}\n");
            }
        }

        var rules = Rules + "\n" + Flows() + (options.Theme == DrawingTheme.Print && !options.Switchable ? "" : WireColours.Rules);
        foreach (var rule in rules.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            css.Append(Scoped(Coloured(rule, options), scope)).Append('\n');
        }

        if (options.Switchable)
        {
            css.Append(scope).Append(".hs-print .hs-sleeve,").Append(scope).Append(".hs-print .hs-tracer{display:none}\n");
        }
        else if (options.Theme == DrawingTheme.Print)
        {
            css.Append(scope).Append(" .hs-sleeve,").Append(scope).Append(" .hs-tracer{display:none}\n");
        }

        return css.ToString();
    }

    public static string NameOf(DrawingTheme theme) => theme switch
    {
        DrawingTheme.Dark => "dark",
        DrawingTheme.Print => "print",
        _ => "light",
    };

    private static string Flows() => string.Concat(Enumerable.Range(1, CurrentWidth.Steps)
        .Select(s => FormattableString.Invariant($".hs-flow{s}{{stroke-width:{CurrentWidth.Width(s):0.##}}}\n")));

    private static string Of((string Name, string Light, string Dark, string Print) colour, DrawingTheme theme) => theme switch
    {
        DrawingTheme.Dark => colour.Dark,
        DrawingTheme.Print => colour.Print,
        _ => colour.Light,
    };

    /// <summary>Every <c>$name</c> as a variable or as the colour itself; the longest name first.</summary>
    private static string Coloured(string rule, DrawingOptions options)
    {
        foreach (var colour in Colours.OrderByDescending(c => c.Name.Length))
        {
            var value = Of(colour, options.Theme);
            rule = rule.Replace("$" + colour.Name, options.Switchable ? $"var(--hs-{colour.Name},{value})" : value, StringComparison.Ordinal);
        }

        return rule;
    }

    private static string Scoped(string rule, string scope)
    {
        var scoped = new StringBuilder();
        foreach (var one in rule.Split('}', StringSplitOptions.RemoveEmptyEntries))
        {
            var body = one.IndexOf('{', StringComparison.Ordinal);
            scoped.Append(string.Join(',', one[..body].Split(',').Select(s => $"{scope} {s}"))).Append(one[body..]).Append('}');
        }

        return scoped.ToString();
    }
}
