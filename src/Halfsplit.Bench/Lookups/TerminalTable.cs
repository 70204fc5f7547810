using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Lookups;

/// <summary>What the terminal numbers of DIN 72552 mean (<c>data/bench-terminals.csv</c>), those on relays among them.</summary>
public static class TerminalTable
{
    /// <param name="Origin">The second half of the text code of its source, as the source itself is in one language.</param>
    private sealed record Row(string Terminal, string Text, string Origin);

    private static readonly ImmutableArray<Row> Rows =
        [.. BenchData.Read("bench-terminals.csv").Select(r => new Row(r.Text("terminal"), r.Text("text"), r.Text("origin")))];

    /// <summary>Every terminal of the table, in its order.</summary>
    public static ImmutableArray<string> All => [.. Rows.Select(r => r.Terminal)];

    /// <summary>The meaning of one terminal.</summary>
    public static Outcome<Answer> Of(string terminal)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        var name = terminal.Trim();
        var row = Rows.FirstOrDefault(r => string.Equals(r.Terminal, name, StringComparison.OrdinalIgnoreCase));
        return row is null
            ? Outcome.Wrong<Answer>(new Message("bench-limit.terminal", name, Spelling.Hint(name, All), string.Join(", ", All)))
            : Outcome.Of(new Answer(
                new Message("bench-terminal.title", row.Terminal), [], [new("meaning", new Message($"bench-terminal.{row.Text}"))], [],
                [new Message("bench-terminal.source", new Message($"bench-terminal-origin.{row.Origin}")), new Message("bench-terminal.both-ends")]));
    }
}
