using System.Globalization;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>How a game went.</summary>
/// <param name="WrongRepairs">Repairs that took no fault away.</param>
public sealed record Played(
    bool IsProven, IReadOnlyList<Finding> Findings, IReadOnlyList<(Check Check, ReadingValue Value)> Moves, double Minutes, int WrongRepairs,
    Investigation Investigation)
{
    /// <summary>Proven after the one repair it needed.</summary>
    public bool IsRightAtOnce => IsProven && WrongRepairs == 0;

    public override string ToString() => string.Join("\n", Moves.Select(m => $"{m.Check.Id} => {m.Value}"))
        + $"\nproven {IsProven}; " + string.Join("; ", Findings.Select(f => $"{f.Repair.Id} {f.Odds:0.000}"));
}

/// <summary>Lets the engine play against a hidden car until the job ends.</summary>
public static class Game
{
    private const int MostMoves = 45;

    public static Fault Fault(string text) =>
        Simulation.Faults.Fault.TryParse(text, out var fault) ? fault : throw new ArgumentException(text, nameof(text));

    public static Played Play(string sheet, string complaint, params string[] faults)
    {
        var circuit = ShippedSheets.Load(sheet);
        var about = circuit.Complaints.First(c => c.Name == complaint);
        return Play(circuit, about, new SimulatedCar(circuit, about.Load, faults.Select(Fault)));
    }

    /// <param name="slipAt">The move at which the answer is replaced by <paramref name="slip"/>; −1 for none.</param>
    public static Played Play(
        Circuit circuit, Complaint complaint, SimulatedCar car, int slipAt = -1, Func<Check, ReadingValue, ReadingValue>? slip = null) =>
        PlayOn(Investigation.Open(circuit, complaint), car, slipAt: slipAt, slip: slip);

    /// <summary>Plays a job to its end from where it stands.</summary>
    /// <param name="from">Moves made already.</param>
    /// <param name="slipAt">The move at which the answer is replaced by <paramref name="slip"/>; −1 for none.</param>
    public static Played PlayOn(
        Investigation investigation, SimulatedCar car, int from = 0, int slipAt = -1, Func<Check, ReadingValue, ReadingValue>? slip = null)
    {
        var findings = new List<Finding>();
        var moves = new List<(Check, ReadingValue)>();
        var minutes = 0.0;
        var wrongRepairs = 0;
        for (var move = from; move < MostMoves; move++)
        {
            var step = investigation.Next();
            if (step.Check is null)
            {
                return new Played(step.IsProven, findings, moves, minutes, wrongRepairs, investigation);
            }

            if (step.Finding is { } finding)
            {
                findings.Add(finding);
            }

            var faults = car.Faults.Count;
            var value = car.Answer(step.Check);
            wrongRepairs += step.Check.Kind == CheckKind.Repair && car.Faults.Count == faults ? 1 : 0;
            if (move == slipAt)
            {
                value = slip!(step.Check, value);
            }

            minutes += step.Effort!.Minutes;
            moves.Add((step.Check, value));
            investigation.Record(move.ToString(CultureInfo.InvariantCulture), step.Check, value);
        }

        return new Played(false, findings, moves, minutes, wrongRepairs, investigation);
    }
}
