using System.Diagnostics;
using System.Globalization;
using System.Text;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Benchmarks.Networks;

/// <summary>
/// ngspice at the same work: one process loads a network, then for each fault alters a resistor, finds the operating
/// point, throws the result away (or it would slow down with every kept plot) and puts the resistor back.
/// </summary>
internal sealed class NgSpiceFaults(SampleNetwork network)
{
    /// <summary>A resistor by its name in the netlist, as it is and as the fault makes it.</summary>
    public readonly record struct Fault(string Resistor, double HealthyOhms, double FaultyOhms);

    public static string BranchName(int branch) => string.Create(CultureInfo.InvariantCulture, $"Rb{branch}");

    public static string LeakName(int node) => string.Create(CultureInfo.InvariantCulture, $"Rl{node}");

    /// <summary>Seconds per fault: many less few, so that starting and loading don't count.</summary>
    public double SecondsPerFault(IReadOnlyList<Fault> faults, double budgetSeconds)
    {
        var one = Seconds(faults, 1);
        var guess = Math.Max(1e-5, (Seconds(faults, 4) - one) / 3);
        if (guess > budgetSeconds / 6)
            return guess;
        var many = Math.Clamp((int)(budgetSeconds / guess), 6, 20_000);
        return (Seconds(faults, 1 + many) - one) / many;
    }

    /// <summary>The volts of some nodes for each fault.</summary>
    public double[][] Volts(IReadOnlyList<Fault> faults, IReadOnlyList<int> nodes)
    {
        var output = Run(Script(faults, faults.Count, nodes));
        var values = output.Split('\n')
            .Where(line => line.StartsWith("v(n", StringComparison.Ordinal))
            .Select(line => double.Parse(line.AsSpan(line.IndexOf('=', StringComparison.Ordinal) + 1), CultureInfo.InvariantCulture))
            .ToArray();
        if (values.Length != faults.Count * nodes.Count)
            throw new InvalidOperationException($"ngspice gave {values.Length} volts for {faults.Count * nodes.Count}:\n{output}");
        return [.. values.Chunk(nodes.Count)];
    }

    private double Seconds(IReadOnlyList<Fault> faults, int count)
    {
        var script = Script(faults, count, []);
        var watch = Stopwatch.StartNew();
        Run(script);
        return watch.Elapsed.TotalSeconds;
    }

    private string Script(IReadOnlyList<Fault> faults, int count, IReadOnlyList<int> nodes)
    {
        var text = new StringBuilder("faults\n");
        for (var branch = 0; branch < network.Branches.Length; branch++)
            Element(BranchName(branch), network.Branches[branch].From, network.Branches[branch].To, 1 / network.Conductance[branch]);
        for (var node = 0; node < network.NodeCount; node++)
            Element(LeakName(node), node, Branch.Reference, 1 / network.Leak[node]);
        Element("I0", Branch.Reference, 0, network.Injected[0]);
        text.Append(".control\nset numdgt=15\nset width=200\n");
        for (var index = 0; index < count; index++)
        {
            var fault = faults[index % faults.Count];
            text.Append(CultureInfo.InvariantCulture, $"alter {fault.Resistor} = {fault.FaultyOhms:R}\nop\n");
            foreach (var node in nodes)
                text.Append(CultureInfo.InvariantCulture, $"print v(n{node})\n");
            text.Append(CultureInfo.InvariantCulture, $"destroy all\nalter {fault.Resistor} = {fault.HealthyOhms:R}\n");
        }

        return text.Append("quit\n.endc\n.end\n").ToString();

        void Element(string name, int from, int to, double value) =>
            text.Append(CultureInfo.InvariantCulture, $"{name} {Node(from)} {Node(to)} {value:R}\n");

        static string Node(int node) => node < 0 ? "0" : string.Create(CultureInfo.InvariantCulture, $"n{node}");
    }

    private static string Run(string script)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllText(file, script);
            var start = new ProcessStartInfo("ngspice", ["-b", file]) { RedirectStandardOutput = true, RedirectStandardError = true };
            using var process = Process.Start(start)!;
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
