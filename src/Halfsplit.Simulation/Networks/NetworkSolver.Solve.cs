namespace Halfsplit.Simulation.Networks;

public sealed partial class NetworkSolver
{
    /// <summary>Finds the node volts with the present factor.</summary>
    /// <param name="injected">Amperes from the reference into each node, of any sign.</param>
    /// <param name="volts">Receives each node's volts against the reference. May be the same memory as <paramref name="injected"/>.</param>
    /// <exception cref="ArgumentException">A current is not finite or exceeds <see cref="ConductanceRange.Largest"/>.</exception>
    /// <exception cref="InvalidOperationException">There is no factor, or nodes float.</exception>
    public void Solve(ReadOnlySpan<double> injected, Span<double> volts)
    {
        RequireFactor();
        TakeCurrents(injected, volts);
        Forward(volts);
        Backward(volts);
    }

    private void TakeCurrents(ReadOnlySpan<double> injected, Span<double> volts)
    {
        CheckLength(injected.Length, plan.NodeCount, "injected currents", nameof(injected));
        CheckLength(volts.Length, plan.NodeCount, "volts", nameof(volts));
        ConductanceRange.CheckCurrents(injected);
        injected.CopyTo(volts);
    }

    /// <summary>Moves each node's current on to its later neighbours, by their shares.</summary>
    private void Forward(Span<double> current)
    {
        var order = plan.Order;
        var rows = plan.Row;
        var shares = share;
        foreach (var group in plan.Groups)
        {
            var entry = plan.ColumnStart[group.From];
            var degree = group.Degree;
            if (degree == 1)
            {
                for (var step = group.From; step < group.To; step++, entry++)
                    current[rows[entry]] += shares[entry] * current[order[step]];
                continue;
            }

            for (var step = group.From; step < group.To; step++)
            {
                var own = current[order[step]];
                for (var end = entry + degree; entry < end; entry++)
                    current[rows[entry]] += shares[entry] * own;
            }
        }
    }

    /// <summary>
    /// Gives each node its volts: what its own current makes over its pivot, plus the mean of its later neighbours'
    /// volts by their shares.
    /// </summary>
    private void Backward(Span<double> volts)
    {
        var order = plan.Order;
        var rows = plan.Row;
        var shares = share;
        var ohms = reciprocal;
        var groups = plan.Groups;
        for (var index = groups.Length - 1; index >= 0; index--)
        {
            var group = groups[index];
            var entry = plan.ColumnStart[group.To];
            switch (group.Degree)
            {
                case 1:
                    for (var step = group.To - 1; step >= group.From; step--)
                    {
                        entry--;
                        var node = order[step];
                        volts[node] = (volts[node] * ohms[node]) + (shares[entry] * volts[rows[entry]]);
                    }

                    break;
                case 2:
                    for (var step = group.To - 1; step >= group.From; step--)
                    {
                        entry -= 2;
                        var node = order[step];
                        volts[node] = (volts[node] * ohms[node])
                            + (shares[entry] * volts[rows[entry]])
                            + (shares[entry + 1] * volts[rows[entry + 1]]);
                    }

                    break;
                default:
                    for (var step = group.To - 1; step >= group.From; step--)
                    {
                        var end = entry;
                        entry -= group.Degree;
                        var node = order[step];
                        volts[node] = (volts[node] * ohms[node]) + Mean(entry, end, volts);
                    }

                    break;
            }
        }
    }

    private double Mean(int entry, int end, ReadOnlySpan<double> volts)
    {
        var rows = plan.Row;
        var shares = share;
        double first = 0, second = 0, third = 0, fourth = 0;
        // Four sums side by side, since each addition would otherwise wait for the one before.
        for (; entry + 3 < end; entry += 4)
        {
            first += shares[entry] * volts[rows[entry]];
            second += shares[entry + 1] * volts[rows[entry + 1]];
            third += shares[entry + 2] * volts[rows[entry + 2]];
            fourth += shares[entry + 3] * volts[rows[entry + 3]];
        }

        for (; entry < end; entry++)
            first += shares[entry] * volts[rows[entry]];
        return (first + second) + (third + fourth);
    }
}
