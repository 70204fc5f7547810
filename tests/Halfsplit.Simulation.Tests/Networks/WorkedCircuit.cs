using System.Globalization;
using Halfsplit.Simulation.Networks;
using Xunit;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>A textbook circuit by the names of its nodes; "0" is the reference.</summary>
internal sealed class WorkedCircuit
{
    /// <summary>An ideal source, near enough: the solver loses no digit to it, so it may be absurdly strong.</summary>
    private const double SourceSiemens = 1e15;

    private readonly Dictionary<string, int> nodes = new(StringComparer.Ordinal) { ["0"] = Branch.Reference };
    private readonly List<AddedBranch> branches = [];
    private readonly List<(int Node, double Ampere)> currents = [];

    /// <summary>A source of volts from a node to the reference.</summary>
    public WorkedCircuit Source(string node, double volts)
    {
        branches.Add(new(Index(node), Branch.Reference, SourceSiemens));
        return Current(node, volts * SourceSiemens);
    }

    /// <summary>A source of amperes from the reference into a node.</summary>
    public WorkedCircuit Current(string node, double ampere)
    {
        currents.Add((Index(node), ampere));
        return this;
    }

    public WorkedCircuit Resistor(string from, string to, double ohms)
    {
        branches.Add(new(Index(from), Index(to), 1 / ohms));
        return this;
    }

    public Solution Solve()
    {
        var count = nodes.Count - 1;
        var injected = new double[count];
        foreach (var (node, ampere) in currents)
            injected[node] += ampere;
        var solver = new NetworkSolver(NetworkShape.Create(count, [.. branches.Select(branch => new Branch(branch.From, branch.To))]));
        var volts = new double[count];
        var outcome = solver.FactorAndSolve([.. branches.Select(branch => branch.Conductance)], new double[count], injected, volts);
        Assert.True(outcome.IsSolved);
        return new Solution(nodes, solver, volts);
    }

    /// <summary>Compares a value to digits as printed in a source: it must round to them.</summary>
    public static void AssertPrinted(string printed, double value)
    {
        var number = double.Parse(printed, CultureInfo.InvariantCulture);
        var mantissa = printed.Split('E')[0];
        var decimals = mantissa.Contains('.', StringComparison.Ordinal) ? mantissa.Length - mantissa.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        var exponent = printed.Contains('E', StringComparison.Ordinal) ? int.Parse(printed.Split('E')[1], CultureInfo.InvariantCulture) : 0;
        var half = 0.5 * Math.Pow(10, exponent - decimals);
        Assert.InRange(value, number - (half * 1.000001), number + (half * 1.000001));
    }

    private int Index(string node)
    {
        if (!nodes.TryGetValue(node, out var index))
            nodes[node] = index = nodes.Count - 1;
        return index;
    }

    internal sealed class Solution(Dictionary<string, int> nodes, NetworkSolver solver, double[] volts)
    {
        /// <summary>The volts from a node to another.</summary>
        public double Volts(string node, string other = "0") => At(node) - At(other);

        /// <summary>The amperes through a resistance between two nodes, from the first to the second.</summary>
        public double Amperes(string from, string to, double ohms) => Volts(from, to) / ohms;

        public double OhmsBetween(string from, string to) => solver.ResistanceBetween(nodes[from], nodes[to]);

        private double At(string node) => nodes[node] < 0 ? 0 : volts[nodes[node]];
    }
}
