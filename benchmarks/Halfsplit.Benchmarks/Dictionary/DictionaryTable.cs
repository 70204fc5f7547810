using System.Diagnostics;
using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Settling;
using Halfsplit.Simulation.Spice;

namespace Halfsplit.Benchmarks.Dictionary;

/// <summary>
/// The whole fault dictionary of a sheet, every suspect in every condition with all states settled, beside ngspice
/// finding as many operating points of the same network, states given, by <c>alter</c> and <c>op</c> in one process.
/// </summary>
internal static class DictionaryTable
{
    private const int Few = 20;
    private const int Many = 2020;

    public static void Print()
    {
        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{"sheet",-12} {"nodes",5} {"points",7} {"cold ms",8} {"warm ms",8} {"µs/point",9} {"µs/solution",12} {"ngspice µs/op",14} {"ratio",6} {"worst difference V",19}"));
        foreach (var sheet in ShippedSheets.Names)
        {
            var network = NetworkCompiler.Compile(ShippedSheets.Load(sheet));
            var faults = FaultCatalog.For(new CircuitSimulator(network)).SelectMany(m => m.Faults()).ToList();
            var (points, cold) = Fill(network, faults);
            var warm = Enumerable.Range(0, 5).Min(_ => Fill(network, faults).Milliseconds);
            var condition = network.Circuit.Complaints[0].Condition;
            var spice = NgSpiceSeconds(network, condition, out var worst);
            var perPoint = warm / points * 1e-3;
            var perSolution = SecondsPerSolution(network, faults);
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{sheet,-12} {network.NodeNames.Length,5} {points,7} {cold,8:0} {warm,8:0} {perPoint * 1e6,9:0.0} {perSolution * 1e6,12:0.00} {spice * 1e6,14:0.0} {spice / perSolution,6:0} {worst,19:0.0e0}"));
        }
    }

    private static (int Points, double Milliseconds) Fill(CircuitNetwork network, List<Fault> faults)
    {
        var simulator = new CircuitSimulator(network);
        var start = Stopwatch.GetTimestamp();
        var points = 0;
        foreach (var fault in faults)
        {
            foreach (var condition in network.Circuit.Conditions)
            {
                simulator.Simulate(new Arrangement(condition.Name), [fault]);
                points++;
            }
        }

        return (points, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
    }

    /// <summary>
    /// Seconds for one solution with its states given, what ngspice does: every settled network of the complaint's
    /// condition factored and solved again.
    /// </summary>
    private static double SecondsPerSolution(CircuitNetwork network, List<Fault> faults)
    {
        var simulator = new CircuitSimulator(network);
        var arrangement = new Arrangement(network.Circuit.Complaints[0].Condition);
        var runs = faults.Select(f => simulator.Simulate(arrangement, [f]).Run)
            .Where(r => r.Attachments.Length == 0)
            .ToList();
        var solver = new NetworkSolver(network.ShapeWith([]));
        var injected = new double[network.NodeNames.Length];
        var volts = new double[injected.Length];
        var leaks = Settler.Leaks(injected.Length);
        Settler.Inject(runs[0], runs[0].Frames[0], injected);
        var best = double.MaxValue;
        for (var round = 0; round < 20; round++)
        {
            var start = Stopwatch.GetTimestamp();
            foreach (var run in runs)
            {
                solver.FactorAndSolve(run.Frames[0].Conductance, leaks, injected, volts);
            }

            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalSeconds / runs.Count);
        }

        return best;
    }

    /// <summary>Seconds per operating point: many less few, so that starting and loading do not count.</summary>
    private static double NgSpiceSeconds(CircuitNetwork network, string condition, out double worst)
    {
        var point = new CircuitSimulator(network).Simulate(new Arrangement(condition), []);
        var netlist = SpiceNetlist.Of(point);
        var resistor = netlist.Text.Split('\n').First(l => l.StartsWith("R0 ", StringComparison.Ordinal)).Split(' ');
        worst = WorstDifference(netlist, point);
        Time(netlist, resistor, Few);
        return (Time(netlist, resistor, Many) - Time(netlist, resistor, Few)) / (Many - Few);
    }

    private static double Time(SpiceNetlist netlist, string[] resistor, int count)
    {
        var script = new StringBuilder(".control\n");
        for (var i = 0; i < count; i++)
        {
            script.Append(CultureInfo.InvariantCulture, $"alter {resistor[0]} = {0.001 * (1 + i):R}\nop\ndestroy all\n");
        }

        var start = Stopwatch.GetTimestamp();
        Run(netlist.Text.Replace(".op\n.end\n", script + "quit\n.endc\n.end\n", StringComparison.Ordinal));
        return Stopwatch.GetElapsedTime(start).TotalSeconds;
    }

    private static double WorstDifference(SpiceNetlist netlist, OperatingPoint point)
    {
        var nodes = netlist.NodeOfTerminal.Where(n => n.Value != "0").ToList();
        var script = ".control\nset numdgt=15\nop\n" + string.Concat(nodes.Select(n => $"print v({n.Value})\n")) + "quit\n.endc\n.end\n";
        var volts = Run(netlist.Text.Replace(".op\n.end\n", script, StringComparison.Ordinal)).Split('\n')
            .Where(l => l.StartsWith("v(n", StringComparison.Ordinal))
            .Select(l => double.Parse(l.AsSpan(l.IndexOf('=', StringComparison.Ordinal) + 1), CultureInfo.InvariantCulture))
            .ToList();
        return nodes.Select((n, i) => Math.Abs(volts[i] - point.Volts(Circuits.Model.TerminalName.Parse(n.Key)))).Max();
    }

    private static string Run(string text)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, text);
            using var process = Process.Start(new ProcessStartInfo("ngspice", ["-b", file]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var errors = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0 ? output : throw new InvalidOperationException(output + errors.Result);
        }
        finally
        {
            File.Delete(file);
        }
    }
}
