using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Practice;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.App.Tests.Phones;

/// <summary>
/// A car of the practice game with a drawn fault, drawn parts and a noisy meter, that answers whatever the phone asks. The
/// job beside it only keeps the way back from a check's id to the check; it plans nothing.
/// </summary>
internal sealed class PlayedCar
{
    private readonly PracticeCar _car;
    private readonly JobSession _session;

    private PlayedCar(Complaint complaint, PracticeCar car, JobSession session) => (Complaint, _car, _session) = (complaint, car, session);

    public Complaint Complaint { get; }

    /// <summary>Stands behind a fault that nobody has mended yet.</summary>
    public const string StillThere = " (still there)";

    /// <summary>What is or was wrong with it, as <c>--fault</c> takes it; whether it still is.</summary>
    public string Hidden => _car.Hidden + (_car.Left.IsEmpty ? "" : StillThere);

    /// <summary>The first complaint of a shipped sheet; the same seed gives the same car.</summary>
    public static PlayedCar Of(string sheet, long seed)
    {
        var circuit = ShippedSheets.Load(sheet);
        var complaint = ComplaintChoice.Usual(circuit)!;
        var opened = JobOpening.Create(
            EventStamps.OfThisMachine, sheet, ShippedSheets.Text(sheet)!, complaint, DiagnosisOptions.Default, []);
        return new PlayedCar(
            complaint, PracticeCar.Draw(circuit, complaint, Meter.Default, seed)!,
            JobSession.Open(JobDocument.Of([StoredEvent.Of(opened)]), NothingKept.Instance).Session!);
    }

    /// <summary>What is read, seen or done at this check.</summary>
    public ReadingValue Answer(string id)
    {
        var check = _session.FindCheck(id) ?? throw new InvalidOperationException($"The engine on this machine knows no check {id}.");
        var answer = _car.Answer(check);
        if (check.Kind == CheckKind.Repair)
        {
            _car.Repair(_session.RepairOf(check)!);
        }

        if (answer is ReadingParse.Word { Answer: var word } && word == AnswerWord.NotSure)
        {
            _session.Skip(check, null, SkipReason.NotSure);
        }
        else
        {
            _session.Record(EnginePlay.AsTyped(answer), check, confirmed: true);
        }

        // Of the words that mean the same, the one on the button.
        return answer is ReadingParse.Word said && check.Kind is not (CheckKind.Repair or CheckKind.PutBack)
            ? new ReadingParse.Word(OfferedWords.For(_session.Circuit, check, said.Answer))
            : answer;
    }
}
