using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Cars;

/// <summary>Finds the suspect a person means: by its name ("G2 resistive"), as a fault (G2:resistive), or by its part alone.</summary>
public static class NamedSuspect
{
    /// <summary>Names listed where none fits.</summary>
    private const int Listed = 8;

    /// <summary>Null, with a problem, where there is none.</summary>
    public static Suspect? Find(JobSession session, string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(text);
        problem = null;
        var all = session.Investigation.Suspects;
        var wanted = Plain(text);
        // Likeliest first: a part's name stands for its likeliest failure.
        var found = all.FirstOrDefault(s => Plain(s.Suspect.Id) == wanted)
            ?? all.FirstOrDefault(s => s.Suspect.Modes.Any(m => Plain(m.Part) == wanted || Plain(m.Owner) == wanted));
        if (found is not null)
        {
            return found.Suspect;
        }

        problem = new Message(
            "cli.no-suspect", text, Spelling.Hint(text, all.Select(s => s.Suspect.Id)),
            string.Join(", ", all.Take(Listed).Select(s => s.Suspect.Id)));
        return null;
    }

    private static string Plain(string text) =>
        text.Trim().Replace(':', ' ').Replace('-', ' ').ToUpperInvariant();
}
