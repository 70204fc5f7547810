using Halfsplit.Simulation.Spice;
using Halfsplit.Simulation.Tests.Judges;
using Xunit;

namespace Halfsplit.Simulation.Tests.Spice;

/// <summary>A settled car's exported netlists (two with a pulsed output) beside its own volts.</summary>
internal sealed record ExportedPicture(string Name, SpiceDeck Deck, double[] Volts)
{
    public static IEnumerable<ExportedPicture> Of(string name, OperatingPoint point)
    {
        for (var f = 0; f < point.Run.Frames.Length; f++)
        {
            var deck = SpiceDeck.Parse(SpiceNetlist.Of(point, pulseOff: f == 1).Text);
            var frame = point.Run.Frames[f];
            yield return new ExportedPicture(
                f == 0 ? name : name + ", pulse off",
                deck,
                [.. deck.Nodes.Select(n => n[0] == 'n' ? frame.Volts[Node(n)] : double.NaN)]);
        }
    }

    /// <summary>Nodes of the export are <c>n0</c>, <c>n1</c>…; the points behind a source's resistance are <c>e…</c>.</summary>
    private static int Node(string name) => int.Parse(name.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture);
}

/// <summary>How a set of pictures fared before ngspice and the exact judge.</summary>
/// <param name="Pictures">Pictures compared.</param>
/// <param name="Nodes">Nodes compared.</param>
/// <param name="StrayPictures">Pictures with a node where ngspice strays.</param>
/// <param name="StrayNodes">Nodes where ngspice strays.</param>
/// <param name="LargestStray">The most it strays, in volts.</param>
/// <param name="LargestProven">The largest error that the exact judge leaves to the simulation, in volts.</param>
internal readonly record struct SpiceAgreement(
    int Pictures, int Nodes, int StrayPictures, int StrayNodes, double LargestStray, double LargestProven)
{
    /// <summary>A node with less to hold it floats: only leaks and open contacts tie it to anything.</summary>
    private const double FloatingOhms = 1e6;

    /// <summary>The share of the tolerance within which the exact judge must prove the simulation right.</summary>
    private const double ProvenShare = 0.1;

    /// <summary>Every so many pictures the exact judge is asked whatever ngspice says.</summary>
    private const int AskedAnyway = 50;

    /// <summary>
    /// Lets ngspice judge every node within 1e-6 of the value plus 10 µV. Where it doesn't agree, the node must float,
    /// and the exact judge must prove the simulation right to a tenth of that tolerance.
    /// </summary>
    public static SpiceAgreement Judge(IReadOnlyList<ExportedPicture> pictures)
    {
        var judged = SpiceDeck.Judge([.. pictures.Select(p => p.Deck)]);
        var sum = new SpiceAgreement(pictures.Count, 0, 0, 0, 0, 0);
        for (var i = 0; i < pictures.Count; i++)
        {
            sum = sum.With(pictures[i], judged[i], askAnyway: i % AskedAnyway == 0);
        }

        return sum;
    }

    private SpiceAgreement With(ExportedPicture picture, double[] judged, bool askAnyway)
    {
        var (name, deck, volts) = picture;
        var differences = volts.Select((v, n) => double.IsNaN(v) ? 0 : Math.Abs(judged[n] - v)).ToArray();
        var tolerances = volts.Select(v => double.IsNaN(v) ? double.PositiveInfinity : (1e-6 * Math.Abs(v)) + 10e-6).ToArray();
        int[] stray = [.. Enumerable.Range(0, volts.Length).Where(n => !(differences[n] <= tolerances[n]))];
        var largestProven = LargestProven;
        if (stray.Length > 0 || askAnyway)
        {
            var exact = new ProvenVolts(deck);
            var bounds = exact.Bounds([.. volts.Select((v, n) => double.IsNaN(v) ? judged[n] : v)]);
            for (var n = 0; n < bounds.Length; n++)
            {
                Assert.True(
                    bounds[n] <= ProvenShare * tolerances[n],
                    $"{name}, node {deck.Nodes[n]}: {volts[n]:R} V here, {judged[n]:R} V in ngspice, proven to {bounds[n]:R} V.");
                largestProven = Math.Max(largestProven, double.IsNaN(volts[n]) ? 0 : bounds[n]);
            }

            Assert.All(stray, n => Assert.True(
                exact.OhmsToReference(deck.Nodes[n]) > FloatingOhms,
                $"{name}: ngspice strays at node {deck.Nodes[n]}, which does not float."));
        }

        return new SpiceAgreement(
            Pictures,
            Nodes + volts.Count(v => !double.IsNaN(v)),
            StrayPictures + (stray.Length > 0 ? 1 : 0),
            StrayNodes + stray.Length,
            stray.Select(n => differences[n]).Append(LargestStray).Max(),
            largestProven);
    }
}
