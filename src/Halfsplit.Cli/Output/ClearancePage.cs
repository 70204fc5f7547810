using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>What a reading cleared and what it could not, in a few lines.</summary>
public static class ClearancePage
{
    private const int Column = 16;

    /// <summary>Suspects named; the rest is counted.</summary>
    private const int Named = 3;

    /// <param name="most">Sentences at most about what it could not clear.</param>
    public static void Draw(Terminal terminal, JobSession session, SessionEntry entry, int most = 2)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(entry);
        if (session.Investigation.ClearanceOf(entry.Event.Id.ToString()) is not { } clearance)
        {
            return;
        }

        if (clearance.Cleared.Length > 0)
        {
            terminal.Row(terminal.Say("clears.cleared"), Cleared(terminal, session, clearance), Column);
        }

        Sentences(terminal, "clears.carried", clearance.Assurances.Take(1));
        Sentences(terminal, "clears.not-cleared", clearance.Reasons.Take(most));
    }

    private static void Sentences(Terminal terminal, string heading, IEnumerable<Message> sentences)
    {
        var label = terminal.Say(heading);
        foreach (var sentence in sentences)
        {
            terminal.Row(label, terminal.Say(sentence), Column);
            label = "";
        }
    }

    private static string Cleared(Terminal terminal, JobSession session, Clearance clearance)
    {
        var names = string.Join(
            ", ", clearance.Cleared.Take(Named).Select(m => terminal.Say(SuspectName.Of(session.Circuit, m.Suspect))));
        return clearance.Cleared.Length > Named
            ? terminal.Say("clears.and-more", names, clearance.Cleared.Length - Named)
            : names;
    }
}
