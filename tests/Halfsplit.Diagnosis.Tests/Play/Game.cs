using System.Globalization;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Tests.Play;

/// <summary>How a game went.</summary>
public sealed record Played(
    bool IsProven, IReadOnlyList<Finding> Findings, IReadOnlyList<(Check Check, ReadingValue Value)> Moves, double Minutes,
    Investigation Investigation)
{
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
        Circuit circuit, Complaint complaint, SimulatedCar car, int slipAt = -1, Func<Check, ReadingValue, ReadingValue>? slip = null)
    {
        var investigation = Investigation.Open(circuit, complaint);
        var findings = new List<Finding>();
        var moves = new List<(Check, ReadingValue)>();
        var minutes = 0.0;
        for (var move = 0; move < MostMoves; move++)
        {
            var step = investigation.Next();
            if (step.Check is null)
            {
                return new Played(step.IsProven, findings, moves, minutes, investigation);
            }

            if (step.Finding is { } finding)
            {
                findings.Add(finding);
            }

            var value = car.Answer(step.Check);
            if (move == slipAt)
            {
                value = slip!(step.Check, value);
            }

            minutes += step.Effort!.Minutes;
            moves.Add((step.Check, value));
            investigation.Record(move.ToString(CultureInfo.InvariantCulture), step.Check, value);
        }

        return new Played(false, findings, moves, minutes, investigation);
    }
}
