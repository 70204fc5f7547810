using CsCheck;
using Halfsplit.Simulation.Tests.Networks;
using Xunit;

namespace Halfsplit.Simulation.Tests.Judges;

/// <summary>The judge for large networks before the judge for small ones.</summary>
public sealed class ProvenVoltsTests
{
    [Fact]
    public void Its_bounds_hold_the_true_error_and_are_narrow() =>
        TestNetworks.AnySign(16).Sample(
            drawn =>
            {
                // As a netlist carries them: ohms, so that both judges see the same fractions.
                var network = drawn with
                {
                    Conductance = [.. drawn.Conductance.Select(g => g > 0 ? 1 / (1 / g) : 0)],
                    Leak = [.. drawn.Leak.Select(g => 1 / (1 / g))],
                };
                var truth = ExactSolution.Of(network, network.Injected);
                var deck = SpiceDeck.Parse(network.Netlist());
                var volts = network.Volts();
                var bounds = new ProvenVolts(deck).Bounds([.. deck.Nodes.Select(n => volts[Node(n)])]);
                for (var i = 0; i < bounds.Length; i++)
                {
                    var error = truth.AbsoluteError(Node(deck.Nodes[i]), volts[Node(deck.Nodes[i])]);
                    Assert.InRange(error, 0, bounds[i] * (1 + 1e-9));
                    // Wide only by what A·v ≥ |r| leaves unsaid about signs.
                    Assert.InRange(bounds[i], 0, error + 1e-10);
                }
            },
            iter: 300);

    [Fact]
    public void Volts_that_are_wrong_by_a_microvolt_or_a_billionth_are_found_out()
    {
        var network = TestNetworks.Fed(30).Single();
        var deck = SpiceDeck.Parse(network.Netlist());
        double[] volts = [.. deck.Nodes.Select(n => network.Volts()[Node(n)])];
        // Drawn leaks can let a current source raise gigavolts, where a microvolt is below the last digit.
        var shift = Math.Max(1e-6, 1e-9 * Math.Abs(volts[^1]));
        volts[^1] += shift;
        var bounds = new ProvenVolts(deck).Bounds(volts);
        // The neighbours' bounds may widen with it: a residual has no sign.
        Assert.True(bounds[^1] >= 0.9 * shift, $"{bounds[^1]}");
    }

    private static int Node(string name) => int.Parse(name.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture);
}
