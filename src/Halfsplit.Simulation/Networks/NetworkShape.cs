using System.Globalization;

namespace Halfsplit.Simulation.Networks;

/// <summary>
/// What is joined to what, and the order in which to eliminate it. Built once per circuit, immutable, and safe to
/// share between threads; a <see cref="NetworkSolver"/> does the arithmetic.
/// </summary>
public sealed class NetworkShape
{
    /// <summary>The most nodes a network may have.</summary>
    public const int MostNodes = 1_000_000;

    private readonly Branch[] branches;

    private NetworkShape(int nodeCount, Branch[] branches)
    {
        NodeCount = nodeCount;
        this.branches = branches;
        Plan = EliminationPlan.Build(nodeCount, branches);
    }

    /// <summary>The number of nodes without the reference.</summary>
    public int NodeCount { get; }

    /// <summary>The branches in the order in which conductances are given. Parallel ones stay apart here.</summary>
    public ReadOnlySpan<Branch> Branches => branches;

    /// <summary>
    /// The number of couplings in the eliminated network, fill included: a solution costs time in proportion to it.
    /// </summary>
    public int EntryCount => Plan.EntryCount;

    /// <summary>The height of the elimination tree: the most nodes that a change of one branch can re-eliminate.</summary>
    public int Height => Plan.Height;

    internal EliminationPlan Plan { get; }

    /// <summary>Orders the elimination of a network and lays out its arithmetic.</summary>
    /// <param name="nodeCount">Nodes are 0 to <paramref name="nodeCount"/> − 1.</param>
    /// <param name="branches">Ends are node indexes, or −1 for the reference.</param>
    /// <exception cref="ArgumentException">The node count is out of range, or a branch names a node that is not there.</exception>
    public static NetworkShape Create(int nodeCount, ReadOnlySpan<Branch> branches)
    {
        if (nodeCount is < 0 or > MostNodes)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"A network of {nodeCount} nodes is not possible."),
                nameof(nodeCount));
        }

        for (var index = 0; index < branches.Length; index++)
        {
            var (from, to) = branches[index];
            CheckEnd(from, nodeCount, "branch", index, nameof(branches));
            CheckEnd(to, nodeCount, "branch", index, nameof(branches));
        }

        return new NetworkShape(nodeCount, branches.ToArray());
    }

    internal static void CheckEnd(int node, int nodeCount, string what, int index, string argument)
    {
        if (node < Branch.Reference || node >= nodeCount)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"The {what} {index} ends at node {node}, which is not one of {nodeCount}."),
                argument);
        }
    }
}
