using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
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
    public static JobOpened Create(
        EventStamps stamps, string sheetName, string sheetText, Complaint complaint, DiagnosisOptions options,
        IEnumerable<string> unreachable, string vehicleNotes = "")
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
        };
    }
}
