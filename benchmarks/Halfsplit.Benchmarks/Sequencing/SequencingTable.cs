using System.Diagnostics;
using System.Globalization;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>Prints how much each policy costs over the exact optimum, on problems drawn at random.</summary>
internal static class SequencingTable
{
    /// <summary>Beliefs after which a problem is given up and counted as such.</summary>
    private const int MostBeliefs = 4_000_000;

    /// <summary>The policies compared; a new one is made for each problem, so one may remember what it has seen.</summary>
    private static readonly (string Name, Func<RepairPolicy> Create)[] Policies =
    [
        ("probability per cost, no checks", () => RepairOrder.Choose),
        ("information per cost, to 95 %", () => new OneStepInformation(0.95).Choose),
        ("information per cost, isolating", () => new OneStepInformation(1).Choose),
        ("worth of a check, one step ahead", () => OneStepWorth.Choose),
    ];

    public static void Print(TextWriter output, int count)
    {
        var rows = new Row?[count];
        var done = 0;
        var clock = Stopwatch.StartNew();
        Parallel.For(0, count, seed =>
        {
            rows[seed] = Solve(RandomProblem.Create(seed));
            if (Interlocked.Increment(ref done) % 50 == 0)
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{done} of {count}, {clock.Elapsed.TotalSeconds:0} s"));
        });

        output.WriteLine("Cost over the exact optimum on small problems drawn at random: faults behind places that stay open,");
        output.WriteLine("connectors to part and mate, a key; checks that never err (even seeds) and that do (odd seeds); repairs with prices.");
        var solved = rows.Select((row, seed) => (Row: row, Seed: seed)).Where(r => r.Row is not null).Select(r => (Row: r.Row!, r.Seed)).ToList();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{count} problems, {count - solved.Count} given up at {MostBeliefs:N0} beliefs, {solved.Count(r => r.Row.DetoursPay)} in which a detour pays."));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"Beliefs per problem: mean {solved.Average(r => r.Row.Beliefs):N0}, most {solved.Max(r => r.Row.Beliefs):N0}; seconds: mean {solved.Average(r => r.Row.Seconds):0.000}, most {solved.Max(r => r.Row.Seconds):0.0}."));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"The optimum checks something first in {solved.Count(r => r.Row.ChecksFirst)} problems."));
        PrintRows(output, "all", solved);
        PrintRows(output, "checks never err", [.. solved.Where(r => r.Seed % 2 == 0)]);
        PrintRows(output, "checks may err", [.. solved.Where(r => r.Seed % 2 == 1)]);
    }

    private static Row? Solve(RepairProblem problem)
    {
        var clock = Stopwatch.StartNew();
        if (ExactPolicy.Solve(problem, MostBeliefs) is not { } exact)
            return null;
        var seconds = clock.Elapsed.TotalSeconds;
        var checksFirst = exact.BestActions()[0] is >= 0 and var first && first < problem.Checks.Length;
        return new Row(
            exact.BeliefCount, seconds, exact.DetoursPay, checksFirst,
            [.. Policies.Select(p => (PolicyValue.Of(problem, p.Create()) / exact.Value) - 1)]);
    }

    private static void PrintRows(TextWriter output, string title, List<(Row Row, int Seed)> solved)
    {
        output.WriteLine();
        output.WriteLine($"{title,-36}{"mean %",9}{"50 %",9}{"90 %",9}{"worst %",9}{"at seed",9}{"optimal %",11}");
        for (var policy = 0; policy < Policies.Length && solved.Count > 0; policy++)
        {
            var sorted = solved.Select(r => (Excess: r.Row.Excess[policy], r.Seed)).Order().ToList();
            // The differences of equal sums added in another order are no excess.
            var optimal = sorted.Count(e => e.Excess < 1e-9);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{Policies[policy].Name,-36}{100 * sorted.Average(e => e.Excess),9:0.00}{100 * sorted[sorted.Count / 2].Excess,9:0.00}{100 * sorted[sorted.Count * 9 / 10].Excess,9:0.00}{100 * sorted[^1].Excess,9:0.0}{sorted[^1].Seed,9}{100.0 * optimal / sorted.Count,11:0.0}"));
        }
    }

    private sealed record Row(int Beliefs, double Seconds, bool DetoursPay, bool ChecksFirst, double[] Excess);
}
