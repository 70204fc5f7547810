using System.Collections.Immutable;
using System.Globalization;

namespace Halfsplit.Simulation.Networks;

/// <summary>
/// Solves a network of conductances for its node volts by star–mesh elimination. The leak to the reference is kept
/// apart from the couplings, so nothing is ever subtracted and every factor is accurate to a few units in the last
/// place, whatever the spread of conductances (see docs/solver.md).
/// </summary>
/// <remarks>
/// Reusable: solving allocates nothing, but for workspace that added conductances need and that is kept. Not safe for
/// use by two threads at once: give each thread its own solver over the shared shape.
/// </remarks>
public sealed partial class NetworkSolver
{
    private readonly EliminationPlan plan;

    /// <summary>Branch conductances and leaks as last given.</summary>
    private readonly double[] given;
    private readonly double[] givenLeak;

    /// <summary>Couplings, then leaks, as they stand when their node is eliminated (see <see cref="EliminationPlan"/>).</summary>
    private readonly double[] value;

    /// <summary>Per entry, the share of its column's node that goes to its row: coupling over pivot.</summary>
    private readonly double[] share;

    /// <summary>Per node, one over its pivot, in ohms; zero where the pivot is zero.</summary>
    private readonly double[] reciprocal;

    private bool hasFactor;
    private int zeroPivots;

    /// <summary>Makes the workspace for networks of one shape.</summary>
    public NetworkSolver(NetworkShape shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        Shape = shape;
        plan = shape.Plan;
        given = new double[plan.Slot.Length];
        givenLeak = new double[plan.NodeCount];
        value = new double[plan.ValueCount];
        share = new double[plan.EntryCount];
        reciprocal = new double[plan.NodeCount];
        path = new int[plan.NodeCount];
        onPath = new bool[plan.NodeCount];
        pathNodes = new int[plan.NodeCount];
        reach = new double[plan.NodeCount];
        pairResponse = new double[plan.NodeCount];
    }

    /// <summary>The shape that this solver works on.</summary>
    public NetworkShape Shape { get; }

    private int LeakStart => plan.EntryCount;

    private FactorOutcome Outcome() =>
        zeroPivots == 0 ? default : new FactorOutcome(FloatingNodes.Find(Shape, given, givenLeak));

    private void TakeConductances(ReadOnlySpan<double> branchConductance, ReadOnlySpan<double> leak)
    {
        CheckLength(branchConductance.Length, given.Length, "branch conductances", nameof(branchConductance));
        CheckLength(leak.Length, givenLeak.Length, "leaks", nameof(leak));
        hasFactor = false;
        for (var node = 0; node < leak.Length; node++)
            givenLeak[node] = ConductanceRange.Take(leak[node], "leak of node", node, nameof(leak));
        for (var branch = 0; branch < given.Length; branch++)
            given[branch] = TakeBranch(branchConductance, branch);
    }

    private static double TakeBranch(ReadOnlySpan<double> branchConductance, int branch) =>
        ConductanceRange.Take(branchConductance[branch], "conductance of branch", branch, nameof(branchConductance));

    private void RequireFactor()
    {
        if (!hasFactor || zeroPivots > 0)
            throw new InvalidOperationException("The network has not been factored, or some of its nodes float.");
    }

    private static void CheckLength(int length, int expected, string what, string argument)
    {
        if (length != expected)
        {
            throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{length} {what} were given where {expected} are needed."), argument);
        }
    }
}
