using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.Jobs.Tests.Sessions;

/// <summary>Jobs on a shipped sheet, in memory.</summary>
internal static class SessionJob
{
    public static JobDocument Opened(string sheet = "headlamps", DiagnosisOptions? options = null, params string[] unreachable)
    {
        var complaint = ComplaintChoice.Usual(ShippedSheets.Load(sheet))!;
        return JobDocument.Empty.With(JobOpening.Create(
            EventStamps.OfThisMachine, sheet, ShippedSheets.Text(sheet)!, complaint, options ?? DiagnosisOptions.Default, unreachable));
    }

    public static JobSession Open(JobDocument document, IJobStore? store = null)
    {
        var opened = JobSession.Open(document, store ?? NothingKept.Instance);
        Assert.True(opened.IsOpen, opened.Problem?.ToString());
        return opened.Session;
    }

    public static JobSession Began(params string[] readings)
    {
        var session = Open(Opened());
        foreach (var reading in readings)
        {
            Assert.IsType<SessionOutcome.Kept>(session.Record(reading));
        }

        return session;
    }

    public static Complaint Complaint(this JobSession session) => session.Investigation.Complaint;

    public static string Odds(this JobSession session) => string.Join('\n', session.Investigation.Suspects
        .Select(s => FormattableString.Invariant($"{s.Suspect.Id} {s.Odds:R}")));
}
