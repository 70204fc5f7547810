using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Tests.Networks;

namespace Halfsplit.Simulation.Tests.Judges;

/// <summary>
/// The strict judge for networks too large to eliminate in fractions: proves how far given volts can lie from the true
/// ones. The volts are improved until Kirchhoff's currents, summed in exact fractions, all but vanish. What is left
/// over (r) bounds the error: any v with A·v ≥ |r| in every row, shown in exact fractions too, is more than the error,
/// since the inverse of a network's matrix A has no negative entry (A. Berman, R. J. Plemmons, "Nonnegative Matrices in
/// the Mathematical Sciences", ch. 6). How the improvement and v were found is of no consequence to the proof.
/// </summary>
internal sealed class ProvenVolts
{
    private const int Improvements = 3;

    /// <summary>Amps to spare in each row of A·v ≥ |r|: they must outweigh what rounding v does to A·v.</summary>
    private const double Spare = 1e-22;

    private readonly SpiceDeck _deck;
    private readonly Dictionary<string, int> _number;
    private readonly Dictionary<string, double> _held;
    private readonly SpiceElement[] _elements;
    private readonly NetworkSolver _solver;
    private readonly string[] _free;

    public ProvenVolts(SpiceDeck deck)
    {
        _deck = deck;
        if (deck.Elements.Any(e => e.Kind == 'V' && e.To != "0"))
        {
            throw new InvalidOperationException("Only sources to node 0 are expected.");
        }

        _elements = [.. deck.Elements];
        _held = deck.Elements.Where(e => e.Kind == 'V').ToDictionary(e => e.From, e => e.Value, StringComparer.Ordinal);
        _free = [.. deck.Nodes.Where(n => !_held.ContainsKey(n))];
        _number = _free.Select((name, index) => (name, index)).ToDictionary(p => p.name, p => p.index, StringComparer.Ordinal);
        var resistors = _elements.Where(e => e.Kind == 'R').ToArray();
        _solver = new TestNetwork(
            _free.Length,
            [.. resistors.Select(e => new Branch(Number(e.From), Number(e.To)))],
            [.. resistors.Select(e => 1 / e.Value)],
            new double[_free.Length],
            []).Factored();
    }

    /// <summary>For each of the deck's nodes, a proven limit of the error of these volts.</summary>
    /// <param name="volts">One value per node of the deck.</param>
    /// <exception cref="InvalidOperationException">Nothing could be proven.</exception>
    public double[] Bounds(IReadOnlyList<double> volts)
    {
        var given = new Dyadic[_free.Length];
        for (var i = 0; i < volts.Count; i++)
        {
            if (_number.TryGetValue(_deck.Nodes[i], out var index))
            {
                given[index] = Dyadic.Of(volts[i]);
            }
        }

        var better = given.ToArray();
        for (var round = 0; round < Improvements; round++)
        {
            Improve(better, [.. Sum(better, withSources: true).Select(r => Dyadic.Zero - r)]);
        }

        var left = Sum(better, withSources: true);
        Dyadic[] needed = [.. left.Select(r => Dyadic.Of((1.001 * Math.Abs(r.Rounded)) + Spare))];
        var bounds = new Dyadic[_free.Length];
        Array.Fill(bounds, Dyadic.Zero);
        Improve(bounds, needed);
        // Once more: where branch and leak lie 1e14 apart, what rounding alone does to A·v is more than is spared.
        var reached = Sum(bounds, withSources: false);
        Improve(bounds, [.. needed.Zip(reached, (want, have) => want - have)]);
        var product = Sum(bounds, withSources: false);
        for (var i = 0; i < bounds.Length; i++)
        {
            if (!bounds[i].IsAtLeast(Dyadic.Zero) || !product[i].IsAtLeast(left[i].Size))
            {
                throw new InvalidOperationException($"The bound does not hold at node {_free[i]}; nothing is proven.");
            }
        }

        return [.. _deck.Nodes.Select((name, i) => _number.TryGetValue(name, out var n)
            ? ((better[n] - given[n]).Size + bounds[n]).Rounded
            : Math.Abs(_held[name] - volts[i]))];
    }

    /// <summary>Ohms from a node to node 0, sources at rest.</summary>
    public double OhmsToReference(string node) => _solver.ResistanceBetween(Number(node), Branch.Reference);

    /// <summary>Adds to the volts what the solver makes of these amps.</summary>
    private void Improve(Dyadic[] volts, IReadOnlyList<Dyadic> amps)
    {
        var step = new double[volts.Length];
        _solver.Solve([.. amps.Select(a => a.Rounded)], step);
        for (var i = 0; i < step.Length; i++)
        {
            volts[i] += Dyadic.Of(step[i]);
        }
    }

    /// <summary>The amps that flow out of each free node: A·volts, less the sources if they count.</summary>
    private Dyadic[] Sum(Dyadic[] volts, bool withSources)
    {
        var amps = new Dyadic[_free.Length];
        Array.Fill(amps, Dyadic.Zero);
        foreach (var e in _elements)
        {
            var flow = e.Kind switch
            {
                'R' => Dyadic.Of(1 / e.Value) * (At(e.From) - At(e.To)),
                'I' when withSources => Dyadic.Of(e.Value),
                _ => Dyadic.Zero,
            };
            if (Number(e.From) is >= 0 and var from)
            {
                amps[from] += flow;
            }

            if (Number(e.To) is >= 0 and var to)
            {
                amps[to] -= flow;
            }
        }

        return amps;

        Dyadic At(string node) => _number.TryGetValue(node, out var index) ? volts[index]
            : withSources && _held.TryGetValue(node, out var held) ? Dyadic.Of(held) : Dyadic.Zero;
    }

    private int Number(string node) => _number.TryGetValue(node, out var index) ? index : Branch.Reference;
}
