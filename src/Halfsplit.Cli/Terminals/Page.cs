using Halfsplit.Circuits.Messages;
using Spectre.Console;

namespace Halfsplit.Cli.Terminals;

/// <summary>Lines and paragraphs on a terminal, wrapped at its width. Colour only adds to what the words say.</summary>
public static class Page
{
    public static readonly Style Heading = new(decoration: Decoration.Bold);
    public static readonly Style Caution = new(Color.Yellow, decoration: Decoration.Bold);
    public static readonly Style Good = new(Color.Green);
    public static readonly Style Bad = new(Color.Red);
    public static readonly Style Bar = new(Color.Aqua);

    public static void Blank(this Terminal terminal) => terminal.Console.WriteLine();

    /// <summary>A line or paragraph; later lines hang.</summary>
    /// <param name="indent">Blanks before the first line.</param>
    /// <param name="hang">More blanks before the others.</param>
    public static void Line(this Terminal terminal, string text, Style? style = null, int indent = 0, int hang = 0)
    {
        foreach (var line in Wrapping.Wrap(text, terminal.Width, indent, hang))
        {
            terminal.Console.Write(new Text(line, style ?? Style.Plain));
            terminal.Console.WriteLine();
        }
    }

    public static void Line(this Terminal terminal, Message message, Style? style = null, int indent = 0, int hang = 0) =>
        terminal.Line(terminal.Say(message), style, indent, hang);

    /// <summary>A line that is copied or searched, and so never broken or coloured.</summary>
    public static void Raw(this Terminal terminal, string text)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        terminal.Out.Write(text + "\n");
    }

    /// <summary>A word in its column, then text.</summary>
    public static void Row(this Terminal terminal, string label, string text, int column = 14, Style? style = null) =>
        terminal.Line("  " + (label + (label.Length < column - 2 || label.Length == 0 ? "" : " ")).PadRight(column - 2) + text, style, 0, column);

    /// <summary>Pieces of different style in one line; the caller sees to the width.</summary>
    public static void Pieces(this Terminal terminal, params (string Text, Style? Style)[] pieces)
    {
        foreach (var (text, style) in pieces)
        {
            terminal.Console.Write(new Text(text, style ?? Style.Plain));
        }

        terminal.Console.WriteLine();
    }
}
