using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Conversation;

/// <summary>The ranked checks, to choose from by number.</summary>
public static class CheckList
{
    public static void Draw(Terminal terminal, JobSession session, ImmutableArray<RankedCheck> ranked)
    {
        ArgumentNullException.ThrowIfNull(session);
        if (ranked.Length == 0)
        {
            terminal.Line(terminal.Say("list.empty"));
            return;
        }

        terminal.Line(terminal.Say("list.heading"), Page.Heading);
        var number = 0;
        foreach (var check in ranked)
        {
            var cost = terminal.Say("list.cost", CheckPage.Minutes(check.Effort.Minutes), check.Bits.ToString("0.00", CliTexts.Formats));
            terminal.Row($"{++number}", $"{terminal.Say(CheckTitle.Of(session.Circuit, check.Check))} - {cost}", 6);
        }
    }

    /// <summary>The check of a number in the list, or null.</summary>
    public static RankedCheck? Choose(ImmutableArray<RankedCheck> ranked, string number) =>
        int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var chosen)
        && chosen >= 1 && chosen <= ranked.Length
            ? ranked[chosen - 1]
            : null;
}
