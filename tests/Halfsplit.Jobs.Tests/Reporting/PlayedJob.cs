using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Drawing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Practice;
using Halfsplit.Jobs.Reporting;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Tests.Reporting;

/// <summary>A job on a simulated car with a bad ground, played by the engine to its proof, with whatever somebody typed beside.</summary>
internal static class PlayedJob
{
    private const int MostSteps = 60;

    /// <summary>Everything that can be typed, said in one text that would do harm wherever it is taken for more than text.</summary>
    public const string Hostile =
        "<script>document.title='ran'</script><img src=x onerror=\"document.title='ran'\"></style><style>*{display:none}</style>"
        + "\"'&amp;</bdi>]]><!-- \u202Eesrever\u0001 <a href=\"javascript:alert(1)\">=cmd|' /C calc'!A0</a>";

    public static TextCatalog Texts(Language language) => new(language, JobTexts.Source, DrawingTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);

    public static JobSession Play(string typed = "a plain remark", string vehicle = "Blue van, invented")
    {
        var circuit = ShippedSheets.Load("headlamps");
        var complaint = ComplaintChoice.Usual(circuit)!;
        var car = PracticeCar.Of(
            new CircuitSimulator(NetworkCompiler.Compile(circuit)), complaint, new Meter(), [new Fault("G5", FaultModes.Resistive, 0.5)], null);
        var document = JobDocument.Empty.With(JobOpening.Create(
            EventStamps.OfThisMachine, "headlamps", ShippedSheets.Text("headlamps")!, complaint, DiagnosisOptions.Default, [], vehicle));
        var session = JobSession.Open(document, NothingKept.Instance).Session!;
        session.Describe(null, typed, typed);
        session.Note(typed);
        for (var i = 0; i < MostSteps && !session.IsDone && session.Next.Check is { } check; i++)
        {
            var answer = car.Answer(check);
            if (check.Kind == CheckKind.Repair)
            {
                car.Repair(session.RepairOf(check)!);
            }

            if (session.Record(EnginePlay.AsTyped(answer), check, confirmed: true) is not SessionOutcome.Kept)
            {
                session.Skip(check);
            }
        }

        return session;
    }

    public static string Html(JobSession session, ReportReader reader, Language? language = null, ReportPaper paper = ReportPaper.Any)
    {
        var (report, texts) = (ReportBuilder.Of(session), Texts(language ?? Language.English));
        return ReportPage.Html(report, texts, reader, paper, ReportDrawing.Svg(session, report, texts, reader));
    }
}
