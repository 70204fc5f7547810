using CsCheck;
using Halfsplit.Simulation.Networks;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>Draws what a person lays across a circuit: a meter, a lamp, a jumper, a short.</summary>
internal static class AddedBranches
{
    /// <summary>Ends are any numbers; <see cref="Within"/> brings them into a network.</summary>
    public static Gen<AddedBranch> Any { get; } = Gen.Select(
        Gen.Int[0, 10_000], Gen.Int[0, 10_000], Gen.OneOf(1e-7, 3e-4, 0.02, 5.0, 100.0, 1e4), (from, to, g) => new AddedBranch(from, to, g));

    public static AddedBranch[] Within(TestNetwork network, AddedBranch[] drawn) =>
    [
        .. drawn.Select(branch => branch with
        {
            From = branch.From % network.NodeCount,
            To = (branch.To % (network.NodeCount + 1)) - 1,
        }),
    ];
}
