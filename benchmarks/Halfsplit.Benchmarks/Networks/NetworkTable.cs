using System.Globalization;

namespace Halfsplit.Benchmarks.Networks;

/// <summary>Prints the solver's times beside ngspice's for the same faults, with the largest difference of the volts.</summary>
internal static class NetworkTable
{
    private const double SpiceSeconds = 2;
    private const int MostCompared = 12;

    public static void Print(TextWriter output)
    {
        output.WriteLine("Times in microseconds per fault, all node volts unless said otherwise. Each branch in turn (or 500 of them)");
        output.WriteLine($"gets {FaultRuns.AddedOhms} ohms more: path re-eliminated and solved. Each node in turn is shorted by {1 / FaultRuns.ShortSiemens} ohms: low-rank.");
        output.WriteLine($"Short x probe: one node's volts for one short, once known what each probe and node answers; its ratio is for a fault read at 16 probes.");
        output.WriteLine("ngspice: alter, op, destroy all, alter back, in one process, its start not counted.");
        output.WriteLine();
        Row(output, ["network", "nodes", "branches", "fill", "ngspice", "complete", "resistive", "ratio", "shorted", "ratio", "short x probe", "ratio", "max diff V"]);
        foreach (var count in new[] { 60, 600, 6000 })
        {
            foreach (var network in new[] { SampleNetwork.Ladder(count), SampleNetwork.Circuit(count), SampleNetwork.Sparse(count, 0.3) })
                PrintRow(output, network);
        }
    }

    private static void PrintRow(TextWriter output, SampleNetwork network)
    {
        var runs = new FaultRuns(network);
        var complete = runs.Complete();
        var resistive = runs.Resistive();
        var shorted = runs.Shorted();
        var atProbes = runs.ShortedAtProbes(out var difference);

        NgSpiceFaults.Fault[] opened = [.. runs.Branches.Select(branch => new NgSpiceFaults.Fault(
            NgSpiceFaults.BranchName(branch), 1 / network.Conductance[branch], 1 / runs.Faulty(branch)))];
        NgSpiceFaults.Fault[] grounded = [.. runs.Nodes.Select(node => new NgSpiceFaults.Fault(
            NgSpiceFaults.LeakName(node), 1 / network.Leak[node], 1 / (network.Leak[node] + FaultRuns.ShortSiemens)))];
        var spice = new NgSpiceFaults(network);
        var spiceSeconds = spice.SecondsPerFault(opened, SpiceSeconds);

        // A second of ngspice's time for comparing, so that the table stays a matter of minutes.
        var compared = Math.Clamp((int)(0.5 / spiceSeconds), 1, MostCompared);
        var branches = Enumerable.Range(0, compared).Select(index => ((2 * index) + 1) * opened.Length / (2 * compared)).ToArray();
        var nodes = Enumerable.Range(0, compared).Select(index => ((2 * index) + 1) * grounded.Length / (2 * compared)).ToArray();
        var judged = spice.Volts([.. branches.Select(index => opened[index]), .. nodes.Select(index => grounded[index])], runs.Probes);
        for (var index = 0; index < compared; index++)
            difference = Math.Max(difference, Difference(judged[index], runs.SolveResistive(runs.Branches[branches[index]]), runs.Probes));
        runs.Restore();
        for (var index = 0; index < compared; index++)
            difference = Math.Max(difference, Difference(judged[compared + index], runs.SolveShorted(runs.Nodes[nodes[index]]), runs.Probes));

        Row(
            output,
            [
                network.Name, Whole(network.NodeCount), Whole(network.Branches.Length), Whole(runs.Shape.EntryCount),
                Micro(spiceSeconds), Micro(complete), Micro(resistive), Ratio(spiceSeconds / resistive),
                Micro(shorted), Ratio(spiceSeconds / shorted),
                Micro(atProbes), Ratio(spiceSeconds / (atProbes * runs.Probes.Length)), difference.ToString("0.0e+0", CultureInfo.InvariantCulture),
            ]);
    }

    private static double Difference(double[] judged, ReadOnlySpan<double> volts, int[] probes)
    {
        var largest = 0.0;
        for (var index = 0; index < probes.Length; index++)
            largest = Math.Max(largest, Math.Abs(judged[index] - volts[probes[index]]));
        return largest;
    }

    private static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Micro(double seconds) => (seconds * 1e6).ToString(seconds < 1e-7 ? "0.0000" : seconds < 1e-4 ? "0.00" : "0", CultureInfo.InvariantCulture);

    private static string Ratio(double ratio) => ratio.ToString("#,0", CultureInfo.InvariantCulture);

    private static void Row(TextWriter output, string[] cells) =>
        output.WriteLine(string.Join(' ', cells.Select((cell, index) => index == 0 ? cell.PadRight(8) : cell.PadLeft(index == 10 ? 14 : 10))));
}
