namespace Halfsplit.Simulation.Networks;

/// <summary>
/// Eliminates the paths of a few nodes once more, densely, with conductances added between those nodes and those nodes
/// kept to the end if wanted. It costs the cube of the path's length but, like the factorisation, subtracts nothing:
/// it stays exact where a low-rank update of an almost floating part would not.
/// </summary>
internal sealed class PathElimination(int nodeCount)
{
    private readonly int[] placeOf = new int[nodeCount];
    private int[] nodes = [];
    private double[] coupling = [];
    private double[] leak = [];
    private double[] current = [];
    private double[] ohms = [];
    private int size;

    /// <summary>Starts on a set of nodes, in the order in which they are to be eliminated.</summary>
    public void Start(ReadOnlySpan<int> nodesInOrder)
    {
        size = nodesInOrder.Length;
        if (nodes.Length < size)
        {
            nodes = new int[size];
            coupling = new double[size * size];
            leak = new double[size];
            current = new double[size];
            ohms = new double[size];
        }

        nodesInOrder.CopyTo(nodes);
        Array.Clear(coupling, 0, size * size);
        Array.Clear(leak, 0, size);
        Array.Clear(current, 0, size);
        for (var place = 0; place < size; place++)
            placeOf[nodes[place]] = place;
    }

    /// <summary>Adds a conductance between two of the nodes, or from one to the reference (−1).</summary>
    public void Add(int from, int to, double conductance)
    {
        if (from == to)
            return;
        if (from < 0 || to < 0)
        {
            leak[placeOf[Math.Max(from, to)]] += conductance;
            return;
        }

        var (low, high) = (Math.Min(placeOf[from], placeOf[to]), Math.Max(placeOf[from], placeOf[to]));
        coupling[(low * size) + high] += conductance;
    }

    /// <summary>Adds amperes into one of the nodes.</summary>
    public void Inject(int node, double amperes) => current[placeOf[node]] += amperes;

    /// <summary>Eliminates all nodes but the last few.</summary>
    public void Eliminate(int kept)
    {
        for (var place = 0; place < size - kept; place++)
        {
            var row = coupling.AsSpan(place * size, size);
            var pivot = leak[place];
            for (var other = place + 1; other < size; other++)
                pivot += row[other];
            var oneOverPivot = ohms[place] = pivot > 0 ? 1 / pivot : 0;
            for (var other = place + 1; other < size; other++)
            {
                if (row[other] == 0)
                    continue;
                var part = row[other] * oneOverPivot;
                var target = coupling.AsSpan(other * size, size);
                for (var third = other + 1; third < size; third++)
                    target[third] += part * row[third];
                leak[other] += part * leak[place];
                current[other] += part * current[place];
                row[other] = part;
            }
        }
    }

    /// <summary>
    /// The volts of the last two nodes, kept, for one ampere from the first to the second (against the reference).
    /// </summary>
    public (double First, double Second) VoltsOfKeptPair()
    {
        var first = leak[size - 2];
        var second = leak[size - 1];
        var between = coupling[((size - 2) * size) + size - 1];
        var determinant = (first * second) + (between * (first + second));
        return (second / determinant, -first / determinant);
    }

    /// <summary>The volts of the last node, kept, for one ampere into it.</summary>
    public double VoltsOfKept() => 1 / leak[size - 1];

    /// <summary>Writes the volts of all nodes; those of the kept ones must stand in <paramref name="volts"/> already.</summary>
    public void Backward(int kept, Span<double> volts)
    {
        for (var place = size - kept - 1; place >= 0; place--)
        {
            var row = coupling.AsSpan(place * size, size);
            var sum = current[place] * ohms[place];
            for (var other = place + 1; other < size; other++)
                sum += row[other] * volts[nodes[other]];
            volts[nodes[place]] = sum;
        }
    }
}
