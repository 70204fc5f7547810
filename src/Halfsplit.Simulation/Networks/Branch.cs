namespace Halfsplit.Simulation.Networks;

/// <summary>
/// A conductance's two ends. Each is a node's index, or <see cref="Reference"/> for the battery's negative post.
/// A branch from a node to itself is allowed and carries nothing.
/// </summary>
public readonly record struct Branch(int From, int To)
{
    /// <summary>The index that stands for the reference (zero volts).</summary>
    public const int Reference = -1;
}
