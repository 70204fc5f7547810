using System.Globalization;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>
/// Small cuts of the shipped sheets: jobs on cars with hidden faults, stopped after some readings, with the likeliest
/// cars, the best checks and their repairs as they stand then.
/// </summary>
internal static class SequencingCuts
{
    private const int Cars = 7, Checks = 5, CarsPerComplaint = 6, MostMoves = 5;

    public static IReadOnlyList<NamedProblem> Of(string sheet)
    {
        var problems = new List<NamedProblem>();
        var circuit = ShippedSheets.Load(sheet);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        foreach (var complaint in circuit.Complaints)
        {
            var opened = Investigation.Open(circuit, complaint);
            var faults = FaultCatalog.For(simulator)
                .SelectMany(m => m.Faults())
                .Where(f => simulator.Simulate(new Arrangement(complaint.Condition), [f]).Load(complaint.Load).Condition == complaint.Is)
                .ToList();
            for (var i = 0; i < CarsPerComplaint && i < faults.Count; i++)
            {
                var fault = faults[i * faults.Count / CarsPerComplaint % faults.Count];
                var car = new SimulatedCar(circuit, complaint.Load, fault);
                var job = opened.Anew();
                for (var move = 0; move < MostMoves && job.Next().Check is { Kind: not Diagnosis.Checks.CheckKind.Repair } check; move++)
                {
                    job.Record(move.ToString(CultureInfo.InvariantCulture), check, car.Answer(check));
                    if (move > 0 && job.ProblemCut(Cars, Checks) is { Checks.Length: > 1, Repairs.Length: > 1 } cut)
                    {
                        problems.Add(new NamedProblem($"{sheet}, {complaint.Name}, {fault}, after {move + 1}", sheet, () => cut));
                    }
                }
            }
        }

        return problems;
    }
}
