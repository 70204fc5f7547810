using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Conversation;

/// <summary>Asks for a line.</summary>
public static class Prompt
{
    /// <summary>The line, trimmed; null when the input has ended. What comes through a pipe is shown, so that the whole reads as a conversation.</summary>
    public static string? Ask(Terminal terminal, bool quiet = false)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        if (!quiet)
        {
            terminal.Out.Write(terminal.Say("prompt"));
            terminal.Out.Flush();
        }

        var line = terminal.In.ReadLine()?.Trim();
        if (!quiet && !terminal.IsTyped)
        {
            terminal.Out.Write((line ?? "") + "\n");
        }

        return line;
    }

    /// <summary>A command and what follows it.</summary>
    public static (string Command, string Behind) Split(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var space = line.IndexOf(' ', StringComparison.Ordinal);
        return space < 0
            ? (line.ToUpperInvariant(), "")
            : (line[..space].ToUpperInvariant(), line[(space + 1)..].Trim());
    }
}
