using Halfsplit.Circuits.Messages;

namespace Halfsplit.Cli.Conversation;

/// <summary>
/// A command of a conversation and what follows it. The words of every language are understood, whichever is spoken; the
/// names are <c>quit</c>, <c>help</c>, <c>status</c>, <c>why</c>, <c>list</c>, <c>note</c>, <c>notice</c>, <c>back</c>, <c>skip</c>,
/// <c>hand-over</c>.
/// </summary>
public readonly record struct TalkCommand(string Name, string Rest)
{
    private static readonly (string Name, string Word)[] Words =
        [.. ((string[])["quit", "help", "status", "why", "list", "note", "notice", "back", "skip", "hand-over"])
            .SelectMany(name => Said(name).Select(word => (name, word)))];

    /// <summary>Reads a line; an empty name where it begins with no command.</summary>
    public static TalkCommand Read(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        foreach (var (name, word) in Words)
        {
            if (Behind(line, word) is { } rest)
            {
                return new TalkCommand(name, rest);
            }
        }

        return new TalkCommand("", line);
    }

    /// <summary>True for yes in any language.</summary>
    public static bool IsYes(string line) => Said("yes").Any(word => Behind(line, word) is "");

    /// <summary>True for what says that something is not known, in any language.</summary>
    public static bool IsUnknown(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return Said("unknown").Any(word => line.Trim().Equals(word, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>What follows "place" in any language; null where the text does not begin with it.</summary>
    public static string? Place(string text) => Said("place").Select(word => Behind(text, word)).FirstOrDefault(rest => rest is not null);

    private static IEnumerable<string> Said(string name) => Language.All
        .SelectMany(l => (CliTexts.Source.Find($"command.{name}", l) ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        .Distinct(StringComparer.Ordinal);

    private static string? Behind(string line, string word) =>
        line.StartsWith(word, StringComparison.OrdinalIgnoreCase) && (line.Length == word.Length || line[word.Length] == ' ')
            ? line[word.Length..].Trim()
            : null;
}
