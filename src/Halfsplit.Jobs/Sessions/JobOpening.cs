using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>How a job begins.</summary>
public static class JobOpening
{
    /// <summary>The version of the engine that opened a job.</summary>
    public static string EngineVersion { get; } = typeof(JobOpening).Assembly.GetName().Version?.ToString(3) ?? "";

    /// <summary>The event that opens a job.</summary>
    /// <param name="sheetName">The sheet's file name or shipped name.</param>
    /// <param name="sheetText">The whole sheet; it stays with the job.</param>
    /// <param name="unreachable">Places and parts given up from the start.</param>
    /// <param name="history">What finished jobs taught; it stays with the job.</param>
    public static JobOpened Create(
        EventStamps stamps, string sheetName, string sheetText, Complaint complaint, DiagnosisOptions options,
        IEnumerable<string> unreachable, string vehicleNotes = "", FailureHistory? history = null)
    {
        ArgumentNullException.ThrowIfNull(stamps);
        ArgumentNullException.ThrowIfNull(complaint);
        var (id, at) = stamps.Next(null);
        return new JobOpened(id, at, sheetName, sheetText, FailureWeights.Version, EngineVersion)
        {
            Complaint = complaint.Name,
            Meant = ComplaintChoice.ToKeep(complaint),
            VehicleNotes = vehicleNotes,
            Options = OptionsOfJob.ToKeep(options, unreachable),
            Learned = HistoryOfJob.ToKeep(history ?? FailureHistory.None),
        };
    }

    /// <summary>What was noticed before, as events behind the one that opens the job; each thing once.</summary>
    public static ImmutableArray<ThingNoticed> Noticed(EventStamps stamps, JobOpened opened, IEnumerable<Noticed> things)
    {
        ArgumentNullException.ThrowIfNull(stamps);
        ArgumentNullException.ThrowIfNull(opened);
        ArgumentNullException.ThrowIfNull(things);
        var events = ImmutableArray.CreateBuilder<ThingNoticed>();
        foreach (var thing in things.Distinct())
        {
            var (id, at) = stamps.Next(events.Count > 0 ? events[^1].Id : opened.Id);
            events.Add(new ThingNoticed(id, at, thing.Kind.Name) { About = thing.About });
        }

        return events.ToImmutable();
    }
}
