using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Practice;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.App.Tests.Phones;

/// <summary>
/// The same job beside the phone, on this machine: a car with a known fault that answers, and the engine that says what the
/// phone has to ask.
/// </summary>
internal sealed class Companion
{
    private readonly PracticeCar _car;
    private readonly JobSession _session;

    private Companion(PracticeCar car, JobSession session) => (_car, _session) = (car, session);

    public JobSession Session => _session;

    public static Companion Of(string sheet, string complaint, params Fault[] faults)
    {
        var circuit = ShippedSheets.Load(sheet);
        var meant = ComplaintChoice.Named(circuit, complaint)!;
        var opened = JobOpening.Create(
            EventStamps.OfThisMachine, sheet, ShippedSheets.Text(sheet)!, meant, DiagnosisOptions.Default, []);
        var session = JobSession.Open(JobDocument.Of([StoredEvent.Of(opened)]), NothingKept.Instance).Session!;
        return new Companion(
            PracticeCar.Of(new CircuitSimulator(NetworkCompiler.Compile(circuit)), meant, Meter.Default, [.. faults], null), session);
    }

    /// <summary>The check that has to be asked; null at the end.</summary>
    public Check? Asked => _session.IsDone ? null : _session.Next.Check;

    /// <summary>What the person reads at it; the job here goes on with the same answer.</summary>
    public ReadingValue Answer()
    {
        var check = Asked!;
        if (check.Kind == CheckKind.Repair)
        {
            _car.Repair(_session.RepairOf(check)!);
        }

        var answer = check.Kind is CheckKind.Repair or CheckKind.PutBack ? new ReadingParse.Word(AnswerWord.Done) : _car.Answer(check);
        if (answer is ReadingParse.Number number)
        {
            // As the phone's keys give it: four decimals at most, in the usual unit.
            answer = new ReadingParse.Number(Math.Round(number.Value, 4), number.Quantity, null);
        }

        return answer;
    }

    public void Take(ReadingValue answer) => _session.Record(
        answer is ReadingParse.Number number ? Typed(number) : EnginePlay.AsTyped(answer), _session.Next.Check, confirmed: true);

    private static string Typed(ReadingParse.Number number) => number.Quantity switch
    {
        Quantity.Ohms => FormattableString.Invariant($"{number.Value:0.####} Ω"),
        Quantity.Amperes => FormattableString.Invariant($"{number.Value:0.####} A"),
        _ => FormattableString.Invariant($"{number.Value:0.####} V"),
    };
}
