using System.Diagnostics;
using System.Globalization;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Benchmarks.Decisions;

/// <summary>Time from a reading recorded to the next check known, over hidden faults on the shipped sheets.</summary>
internal static class DecisionTable
{
    private const int CarsPerSheet = 12;
    private const int MostMoves = 30;

    /// <param name="sheets">Which; empty for all that are shipped.</param>
    public static void Print(IReadOnlyList<string> sheets)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        var slowest = (Sheet: "", Milliseconds: 0.0);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{"sheet",-22} {"decisions",9} {"open ms",8} {"first ms",8} {"median ms",9} {"90 % ms",8} {"worst ms",8}"));
        Play("pump-feed");
        foreach (var sheet in sheets.Count == 0 ? ShippedSheets.Names : sheets)
        {
            var (opens, firsts, times) = Play(sheet);
            times.Sort();
            var worst = Math.Max(times[^1], firsts.Max());
            slowest = worst > slowest.Milliseconds ? (sheet, worst) : slowest;
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{sheet,-22} {times.Count,9} {Median(opens),8:0} {Median(firsts),8:0} {Median(times),9:0.0} {times[times.Count * 9 / 10],8:0.0} {times[^1],8:0.0}"));
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture, $"slowest of all, the first planned ones included: {slowest.Milliseconds:0} ms ({slowest.Sheet})"));
    }

    private static double Median(List<double> values)
    {
        values.Sort();
        return values[values.Count / 2];
    }

    private static (List<double> Opens, List<double> Firsts, List<double> Times) Play(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        var complaint = circuit.Complaints[0];
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var faults = FaultCatalog.For(simulator)
            .SelectMany(m => m.Faults())
            .Where(f => simulator.Simulate(new Arrangement(complaint.Condition), [f]).Load(complaint.Load).Condition == complaint.Is)
            .ToList();
        List<double> opens = [], firsts = [], times = [];
        for (var i = 0; i < CarsPerSheet; i++)
        {
            var car = new SimulatedCar(circuit, complaint.Load, faults[i * faults.Count / CarsPerSheet]);
            var start = Stopwatch.GetTimestamp();
            var investigation = Investigation.Open(circuit, complaint);
            opens.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            for (var move = 0; move < MostMoves && investigation.Next().Check is { } check; move++)
            {
                var answer = car.Answer(check);
                start = Stopwatch.GetTimestamp();
                investigation.Record($"{move}", check, answer);
                investigation.Next();
                // The third decision is the first that is planned: all cars are still alive.
                (move == 1 ? firsts : times).Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }
        }

        return (opens, firsts, times);
    }
}
