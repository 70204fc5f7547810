using System.Diagnostics;
using System.Globalization;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Drawing;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Benchmarks.Shelf;

/// <summary>Reads, lints, predicts and draws every shipped sheet in one run.</summary>
internal static class ShelfTable
{
    public static void Print()
    {
        // The first sheet pays for what is compiled on the way.
        _ = Times("pump-feed");
        Console.WriteLine($"{"sheet",-22} {"parts",5} {"problems",8} {"lint ms",8} {"conditions",10} {"predict ms",10} {"draw ms",8}");
        var sum = new Row(0, 0, 0, 0, 0, 0);
        foreach (var sheet in ShippedSheets.Names)
        {
            var row = Times(sheet);
            Write(sheet, row);
            sum = new Row(
                sum.Parts + row.Parts, sum.Problems + row.Problems, sum.Lint + row.Lint, sum.Conditions + row.Conditions,
                sum.Predict + row.Predict, sum.Draw + row.Draw);
        }

        Write($"all {ShippedSheets.Names.Length}", sum);
    }

    private static void Write(string name, Row row) => Console.WriteLine(string.Create(
        CultureInfo.InvariantCulture,
        $"{name,-22} {row.Parts,5} {row.Problems,8} {row.Lint,8:0.0} {row.Conditions,10} {row.Predict,10:0.0} {row.Draw,8:0.0}"));

    private static Row Times(string sheet)
    {
        var start = Stopwatch.GetTimestamp();
        var reading = SheetReader.Read(ShippedSheets.Text(sheet)!);
        var circuit = reading.Circuit!;
        var problems = CircuitLint.Check(circuit, reading.Positions).Length;
        var lint = Elapsed(ref start);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        foreach (var condition in circuit.Conditions)
        {
            _ = simulator.Simulate(new Arrangement(condition.Name), []).BatteryAmps;
        }

        var predict = Elapsed(ref start);
        _ = CircuitDrawing.Svg(circuit);
        return new Row(circuit.Parts.Length, problems, lint, circuit.Conditions.Length, predict, Elapsed(ref start));
    }

    private static double Elapsed(ref long start)
    {
        var elapsed = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        start = Stopwatch.GetTimestamp();
        return elapsed;
    }

    private sealed record Row(int Parts, int Problems, double Lint, int Conditions, double Predict, double Draw);
}
