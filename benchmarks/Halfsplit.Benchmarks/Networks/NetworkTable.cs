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
        output.WriteLine("ngspice: alter, op, destroy all, alter back, in one process, its start not counted.");
        output.WriteLine();
        Row(output, ["network", "nodes", "branches", "fill", "complete", "resistive", "ngspice", "ratio", "shorted", "ngspice", "ratio", "short x probe", "ratio", "max diff V"]);
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
        var spiceResistive = spice.SecondsPerFault(opened, SpiceSeconds);
        var spiceShorted = spice.SecondsPerFault(grounded, SpiceSeconds);

        // A second of ngspice's time for each kind of fault, so that the table stays a matter of minutes.
        var compared = Math.Clamp((int)(1 / Math.Max(spiceResistive, spiceShorted)), 2, MostCompared);
        var some = Enumerable.Range(0, compared).Select(index => index * runs.Branches.Length / compared).ToArray();
        var judged = spice.Volts([.. some.Select(index => opened[index])], runs.Probes);
        for (var index = 0; index < some.Length; index++)
            difference = Math.Max(difference, Difference(judged[index], runs.SolveResistive(runs.Branches[some[index]]), runs.Probes));
        runs.Restore();
        some = [.. Enumerable.Range(0, compared).Select(index => index * runs.Nodes.Length / compared)];
        judged = spice.Volts([.. some.Select(index => grounded[index])], runs.Probes);
        for (var index = 0; index < some.Length; index++)
            difference = Math.Max(difference, Difference(judged[index], runs.SolveShorted(runs.Nodes[some[index]]), runs.Probes));

        Row(
            output,
            [
                network.Name, Whole(network.NodeCount), Whole(network.Branches.Length), Whole(runs.Shape.EntryCount),
                Micro(complete), Micro(resistive), Micro(spiceResistive), Ratio(spiceResistive / resistive),
                Micro(shorted), Micro(spiceShorted), Ratio(spiceShorted / shorted),
                Micro(atProbes), Ratio(spiceShorted / (atProbes * runs.Probes.Length)), difference.ToString("0.0e+0", CultureInfo.InvariantCulture),
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
        output.WriteLine(string.Join(' ', cells.Select((cell, index) => index == 0 ? cell.PadRight(8) : cell.PadLeft(index == 11 ? 14 : 10))));
}
