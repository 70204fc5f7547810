using Xunit;
using System.Globalization;
using System.Text;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>A network with its values, as the tests draw them.</summary>
public sealed record TestNetwork(int NodeCount, Branch[] Branches, double[] Conductance, double[] Leak, double[] Injected)
{
    public double[] Volts()
    {
        var volts = new double[NodeCount];
        var solver = new NetworkSolver(NetworkShape.Create(NodeCount, Branches));
        Assert.True(solver.FactorAndSolve(Conductance, Leak, Injected, volts).IsSolved);
        return volts;
    }

    public NetworkSolver Factored()
    {
        var solver = new NetworkSolver(NetworkShape.Create(NodeCount, Branches));
        Assert.True(solver.Factor(Conductance, Leak).IsSolved);
        return solver;
    }

    /// <summary>The same network with further branches in its shape.</summary>
    public TestNetwork With(IEnumerable<AddedBranch> added) => this with
    {
        Branches = [.. Branches, .. added.Select(branch => new Branch(branch.From, branch.To))],
        Conductance = [.. Conductance, .. added.Select(branch => branch.Conductance)],
    };

    /// <summary>A SPICE deck; node k is <c>n</c>k, the reference is 0. Ideal opens are left out.</summary>
    public string Netlist()
    {
        var text = new StringBuilder("network\n");
        for (var index = 0; index < Branches.Length; index++)
        {
            if (Conductance[index] > 0 && Branches[index].From != Branches[index].To)
                Element($"Rb{index}", Branches[index].From, Branches[index].To, 1 / Conductance[index]);
        }

        for (var node = 0; node < NodeCount; node++)
        {
            if (Leak[node] > 0)
                Element($"Rl{node}", node, Branch.Reference, 1 / Leak[node]);
            if (Injected[node] != 0)
                Element($"I{node}", Branch.Reference, node, Injected[node]);
        }

        return text.ToString();

        void Element(string name, int from, int to, double value) =>
            text.Append(CultureInfo.InvariantCulture, $"{name} {Name(from)} {Name(to)} {value:R}\n");
    }

    public static string Name(int node) => node < 0 ? "0" : string.Create(CultureInfo.InvariantCulture, $"n{node}");

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Netlist()}leaks {string.Join(' ', Leak)}");
}
