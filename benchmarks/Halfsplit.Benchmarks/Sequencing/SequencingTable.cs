using System.Diagnostics;
using System.Globalization;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Planning.Sequencing.Exact;

namespace Halfsplit.Benchmarks.Sequencing;

/// <summary>A problem of the table.</summary>
/// <param name="Name">Names it where a policy does worst on it.</param>
/// <param name="Group">What it is counted with, beside all.</param>
internal sealed record NamedProblem(string Name, string Group, Func<RepairProblem> Create);

/// <summary>Prints how much each policy costs over the exact optimum.</summary>
internal static class SequencingTable
{
    /// <summary>Beliefs after which a problem is given up and counted as such.</summary>
    private const int MostBeliefs = 4_000_000;

    /// <summary>Problems drawn at random.</summary>
    /// <param name="count">How many.</param>
    /// <param name="first">The seed of the first; the others follow it.</param>
    public static void PrintRandom(TextWriter output, int count, int first)
    {
        output.WriteLine("Cost over the exact optimum on small problems drawn at random: faults behind places that stay open,");
        output.WriteLine("connectors to part and mate, a key; checks that never err (even seeds) and that do (odd seeds); repairs with prices.");
        Print(output, [.. Enumerable.Range(first, count).Select(seed => new NamedProblem(
            seed.ToString(CultureInfo.InvariantCulture), seed % 2 == 0 ? "checks never err" : "checks may err", () => RandomProblem.Create(seed)))]);
    }

    /// <summary>Any problems; progress goes to the error stream.</summary>
    public static void Print(TextWriter output, IReadOnlyList<NamedProblem> problems)
    {
        var rows = new Row?[problems.Count];
        var done = 0;
        var clock = Stopwatch.StartNew();
        Parallel.For(0, rows.Length, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            rows[i] = Solve(problems[i]);
            if (Interlocked.Increment(ref done) is var now && now % 50 == 0)
                Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{now} of {rows.Length}, {clock.Elapsed.TotalSeconds:0} s"));
        });

        var solved = rows.OfType<Row>().ToList();
        if (solved.Count == 0)
            return;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{rows.Length} problems, {rows.Length - solved.Count} given up at {MostBeliefs:N0} beliefs, {solved.Count(r => r.DetoursPay)} in which a detour pays."));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"The optimum checks something first in {solved.Count(r => r.ChecksFirst)}. Beliefs met: mean {solved.Average(r => r.Beliefs):N0}, most {solved.Max(r => r.Beliefs):N0}; seconds to the optimum: mean {solved.Average(r => r.Seconds):0.000}, most {solved.Max(r => r.Seconds):0.0}."));
        PrintRows(output, "all", solved);
        foreach (var group in solved.GroupBy(r => r.Problem.Group))
            PrintRows(output, group.Key, [.. group]);
    }

    private static Row? Solve(NamedProblem named)
    {
        var problem = named.Create();
        var clock = Stopwatch.StartNew();
        if (ExactPolicy.Solve(problem, MostBeliefs) is not { } exact)
            return null;
        var seconds = clock.Elapsed.TotalSeconds;
        var checksFirst = exact.BestActions()[0] is >= 0 and var first && first < problem.Checks.Length;
        return new Row(
            named, exact.BeliefCount, seconds, exact.DetoursPay, checksFirst,
            [.. SequencingPolicies.All.Select(p => Judge(problem, exact.Value, p.Create()))]);
    }

    private static Judged Judge(RepairProblem problem, double optimum, RepairPolicy policy)
    {
        var choices = 0;
        var clock = Stopwatch.StartNew();
        var value = PolicyValue.Of(problem, (p, standing) =>
        {
            choices++;
            return policy(p, standing);
        });
        return new Judged((value / optimum) - 1, choices, clock.Elapsed.TotalMilliseconds);
    }

    private static void PrintRows(TextWriter output, string title, List<Row> solved)
    {
        output.WriteLine();
        output.WriteLine($"{title,-36}{"mean %",9}{"50 %",9}{"90 %",9}{"worst %",9}{"in",9}{"optimal %",11}{"ms/choice",11}");
        for (var policy = 0; policy < SequencingPolicies.All.Count; policy++)
        {
            var sorted = solved.OrderBy(r => r.Policies[policy].Excess).ToList();
            double Excess(int at) => 100 * sorted[at].Policies[policy].Excess;

            // The differences of equal sums added in another order are no excess.
            var optimal = solved.Count(r => r.Policies[policy].Excess < 1e-9);
            var time = solved.Sum(r => r.Policies[policy].Milliseconds) / solved.Sum(r => r.Policies[policy].Choices);
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{SequencingPolicies.All[policy].Name,-36}{100 * solved.Average(r => r.Policies[policy].Excess),9:0.00}{Excess(sorted.Count / 2),9:0.00}{Excess(sorted.Count * 9 / 10),9:0.00}{Excess(sorted.Count - 1),9:0.0}{sorted[^1].Problem.Name,9}{100.0 * optimal / sorted.Count,11:0.0}{time,11:0.000}"));
        }
    }

    private sealed record Row(
        NamedProblem Problem, int Beliefs, double Seconds, bool DetoursPay, bool ChecksFirst, Judged[] Policies);

    private sealed record Judged(double Excess, int Choices, double Milliseconds);
}
