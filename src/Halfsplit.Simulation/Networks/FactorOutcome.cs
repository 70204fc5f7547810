using System.Collections.Immutable;

namespace Halfsplit.Simulation.Networks;

/// <summary>
/// What came of a factorisation: solved, or the nodes whose volts nothing determines because they have neither a leak
/// nor any path to the reference. <c>default</c> means solved.
/// </summary>
public readonly struct FactorOutcome
{
    private readonly ImmutableArray<int> floating;

    internal FactorOutcome(ImmutableArray<int> floating) => this.floating = floating;

    /// <summary>True when every node's volts are determined.</summary>
    public bool IsSolved => floating.IsDefaultOrEmpty;

    /// <summary>The floating nodes by rising index; empty when solved.</summary>
    public ImmutableArray<int> FloatingNodes => floating.IsDefault ? [] : floating;
}
