using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Jobs.Storage;

namespace Halfsplit.Cli.Cars;

/// <summary>The history a job is opened with.</summary>
/// <param name="History">What was learned; empty for nothing.</param>
/// <param name="Folder">Where from; null where nothing was looked at.</param>
/// <param name="Problems">Files that could not be counted.</param>
public sealed record LearnedFrom(FailureHistory History, string? Folder, ImmutableArray<Message> Problems)
{
    /// <summary>
    /// Reads the folder that was named, else the one the job file is to lie in. Without either, nothing is read; and
    /// nothing but that one folder ever is.
    /// </summary>
    /// <returns>What was learned; or null and the problem, where the folder that was named can't be read.</returns>
    public static (LearnedFrom? Learned, Message? Problem) Of(AtHandSettings settings, Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(circuit);
        var folder = settings.History ?? (settings.JobPath is { Length: > 0 } path ? FolderOf(path) : null);
        if (settings.IgnoreHistory || folder is null || (settings.History is null && !Directory.Exists(folder)))
        {
            return (new LearnedFrom(FailureHistory.None, null, []), null);
        }

        var read = HistoryFolder.Read(folder);
        return read.IsDone
            ? (new LearnedFrom(
                FailureHistory.Of(read.Value.Entries.Select(e => e.Case).OfType<ProvenCase>(), circuit.Title), folder,
                read.Value.Problems), null)
            : (null, read.Problem);
    }

    /// <summary>Tells on the error stream which files were left out.</summary>
    public void Tell(Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        foreach (var problem in Problems)
        {
            terminal.Error.WriteLine(terminal.Say("trouble", terminal.Say(problem)));
        }
    }

    private static string? FolderOf(string path)
    {
        try
        {
            return Path.GetDirectoryName(Path.GetFullPath(path));
        }
        catch (Exception trouble) when (trouble is ArgumentException or NotSupportedException or IOException)
        {
            // The making of the file tells what is wrong with its name.
            return null;
        }
    }
}
