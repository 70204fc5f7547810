using System.Text;
using Halfsplit.App.Desk;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Events;

namespace Halfsplit.App.Link;

/// <summary>A job as the list shows it: known without waking the engine.</summary>
/// <param name="Stands"><c>going-on</c>, <c>proven</c>, <c>handed-over</c> or <c>given-up</c>.</param>
/// <param name="Readings">How many answers it holds.</param>
public sealed record ShelvedJob(
    string Id, string Sheet, string Complaint, string Vehicle, DateTimeOffset Opened, DateTimeOffset Changed, string Stands, int Readings)
{
    /// <summary>Null where the event that opens it is missing.</summary>
    public static ShelvedJob? Of(JobLines kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var state = JobReplay.Replay(Document(kept.Lines));
        return state.Opened is not { } opened ? null : new ShelvedJob(
            kept.Job, opened.SheetName, opened.Complaint, opened.VehicleNotes, opened.At, state.InForce.Max(e => e.At),
            state.Closed?.Outcome switch
            {
                JobOutcome.Proven => "proven",
                JobOutcome.HandedOver => "handed-over",
                JobOutcome.GivenUp => "given-up",
                _ => state.HandedOver is null ? "going-on" : "handed-over",
            },
            state.Readings.Count() + state.Proofs.Count());
    }

    public static JobDocument Document(IEnumerable<string> lines) =>
        JobDocument.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines))).Document;

    /// <summary>The same file as the terminal's.</summary>
    public static string File(IEnumerable<string> lines) => Encoding.UTF8.GetString(Document(lines).ToJsonLines());

    /// <summary>Reads a job file of the terminal or of another device.</summary>
    /// <returns>The job's id and lines, with what could not be read; or the problem.</returns>
    public static (string? Job, KeptLine[] Lines, Message[] Damaged, Message? Problem) Read(string name, byte[] file)
    {
        var reading = JobDocument.Read(file);
        if (!reading.IsJob)
        {
            return (null, [], [], new Message("job.file-not-a-job", name));
        }

        if (reading.Document.Version > JobDocument.CurrentVersion)
        {
            return (null, [], [], new Message("job.file-newer", name, reading.Document.Version));
        }

        if (JobReplay.Replay(reading.Document).Opened is not { } opened)
        {
            return (null, [], [], new Message("job.not-opened"));
        }

        return (
            opened.Id.ToString(), [.. reading.Document.Events.Select(e => new KeptLine(e.Id.ToString(), e.Line))],
            [.. reading.Damaged.Select(d => d.Message)], null);
    }

    /// <summary>Whether all words of a search are found in it.</summary>
    public bool Matches(string search)
    {
        ArgumentNullException.ThrowIfNull(search);
        return search.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .All(word => $"{Sheet} {Complaint} {Vehicle}".Contains(word, StringComparison.OrdinalIgnoreCase));
    }
}
