using System.Numerics;
using System.Runtime.InteropServices;

namespace Halfsplit.Simulation.Networks;

public sealed partial class NetworkSolver
{
    /// <summary>Eliminates the whole network.</summary>
    /// <param name="branchConductance">Siemens, one per branch of the shape; zero for an ideal open.</param>
    /// <param name="leak">Siemens to the reference, one per node.</param>
    /// <returns>Solved, or the nodes that float.</returns>
    /// <exception cref="ArgumentException">A conductance is outside <see cref="ConductanceRange"/>; the message has its index.</exception>
    public FactorOutcome Factor(ReadOnlySpan<double> branchConductance, ReadOnlySpan<double> leak)
    {
        TakeConductances(branchConductance, leak);
        EliminateAll();
        hasFactor = true;
        return Outcome();
    }

    /// <summary>
    /// <see cref="Factor"/>, then <see cref="Solve"/> unless nodes float. (Moving the currents along with the
    /// elimination in one pass was measured and is no faster.)
    /// </summary>
    /// <param name="branchConductance">Siemens, one per branch of the shape; zero for an ideal open.</param>
    /// <param name="leak">Siemens to the reference, one per node.</param>
    /// <param name="injected">Amperes from the reference into each node, of any sign.</param>
    /// <param name="volts">Receives each node's volts against the reference; all zero if some nodes float.</param>
    /// <returns>Solved, or the nodes that float.</returns>
    /// <exception cref="ArgumentException">A conductance or a current is out of range; the message has its index.</exception>
    public FactorOutcome FactorAndSolve(
        ReadOnlySpan<double> branchConductance, ReadOnlySpan<double> leak, ReadOnlySpan<double> injected, Span<double> volts)
    {
        var outcome = Factor(branchConductance, leak);
        if (outcome.IsSolved)
            Solve(injected, volts);
        else
            volts.Clear();
        return outcome;
    }

    // One and two later neighbours are most of any wiring, so these loops are written out. All of them add in the same
    // order as PassOn, which Refactor's equality of bits rests on.
    private void EliminateAll()
    {
        Array.Clear(value, 0, plan.EntryCount);
        givenLeak.CopyTo(value.AsSpan(LeakStart));
        var slot = plan.Slot;
        var values = value;
        var conductances = given;
        for (var branch = 0; branch < slot.Length; branch++)
            values[slot[branch]] += conductances[branch];

        zeroPivots = 0;
        foreach (var group in plan.Groups)
        {
            switch (group.Degree)
            {
                case 1:
                    EliminateWithOne(group);
                    break;
                case 2:
                    EliminateWithTwo(group);
                    break;
                default:
                    for (var step = group.From; step < group.To; step++)
                    {
                        EliminateColumn(step);
                        PassOn(step);
                    }

                    break;
            }
        }
    }

    private void EliminateWithOne(EliminationPlan.Group group)
    {
        var order = plan.Order;
        var rows = plan.Row;
        var values = value;
        var leaks = value.AsSpan(LeakStart);
        var shares = share;
        var entry = plan.ColumnStart[group.From];
        for (var step = group.From; step < group.To; step++, entry++)
        {
            var node = order[step];
            var row = rows[entry];
            var coupling = values[entry];
            var leak = leaks[node];
            var oneOverPivot = Reciprocal(leak + coupling, node);
            var part = coupling * oneOverPivot;
            shares[entry] = part;
            leaks[row] += part * leak;
        }
    }

    private void EliminateWithTwo(EliminationPlan.Group group)
    {
        var order = plan.Order;
        var rows = plan.Row;
        var targets = plan.Target;
        var values = value;
        var leaks = value.AsSpan(LeakStart);
        var shares = share;
        var entry = plan.ColumnStart[group.From];
        var place = plan.Segment[entry];
        for (var step = group.From; step < group.To; step++, entry += 2)
        {
            var node = order[step];
            var first = rows[entry];
            var second = rows[entry + 1];
            var toFirst = values[entry];
            var toSecond = values[entry + 1];
            var leak = leaks[node];
            var oneOverPivot = Reciprocal(leak + toFirst + toSecond, node);
            var firstPart = toFirst * oneOverPivot;
            var secondPart = toSecond * oneOverPivot;
            shares[entry] = firstPart;
            shares[entry + 1] = secondPart;
            leaks[first] += firstPart * leak;
            leaks[second] += secondPart * leak;
            values[targets[place++]] += firstPart * toSecond;
        }
    }

    /// <summary>Turns a column that is summed up into shares.</summary>
    private void EliminateColumn(int step)
    {
        var start = plan.ColumnStart[step];
        var end = plan.ColumnStart[step + 1];
        var node = plan.Order[step];
        var values = value;
        var shares = share;
        var pivot = values[LeakStart + node];
        for (var entry = start; entry < end; entry++)
            pivot += values[entry];
        var oneOverPivot = Reciprocal(pivot, node);
        for (var entry = start; entry < end; entry++)
            shares[entry] = values[entry] * oneOverPivot;
    }

    private double Reciprocal(double pivot, int node)
    {
        // A sum without subtraction is zero only if every term is: nothing joins this node to anything that is left.
        var oneOverPivot = 0.0;
        if (pivot > 0)
            oneOverPivot = 1 / pivot;
        else
            zeroPivots++;
        reciprocal[node] = oneOverPivot;
        return oneOverPivot;
    }

    /// <summary>Adds what an eliminated node's neighbours gain by it: leaks, and couplings among themselves.</summary>
    private void PassOn(int step)
    {
        var end = plan.ColumnStart[step + 1];
        var leaks = value.AsSpan(LeakStart);
        var leak = leaks[plan.Order[step]];
        for (var entry = plan.ColumnStart[step]; entry < end; entry++)
        {
            leaks[plan.Row[entry]] += share[entry] * leak;
            PassOnEntry(entry, end);
        }
    }

    /// <summary>Adds one entry's products with the later entries of its column, all to the column of its row.</summary>
    private void PassOnEntry(int entry, int end)
    {
        var values = value;
        var part = share[entry];
        var place = plan.Segment[entry];
        if (place >= 0)
        {
            var terms = values.AsSpan(entry + 1, end - entry - 1);
            var targets = plan.Target.AsSpan(place, terms.Length);
            for (var index = 0; index < terms.Length; index++)
                values[targets[index]] += part * terms[index];
            return;
        }

        place = ~place;
        var from = entry + 1;
        for (var runs = plan.Run[place++]; runs > 0; runs--)
        {
            var length = plan.Run[place + 1];
            AddScaled(values.AsSpan(plan.Run[place], length), values.AsSpan(from, length), part);
            place += 2;
            from += length;
        }
    }

    private static void AddScaled(Span<double> sum, ReadOnlySpan<double> term, double factor)
    {
        var sums = MemoryMarshal.Cast<double, Vector<double>>(sum);
        var terms = MemoryMarshal.Cast<double, Vector<double>>(term);
        // Product and sum are rounded apart, never fused, so that every machine gets the same bits.
        for (var index = 0; index < sums.Length; index++)
            sums[index] += terms[index] * factor;
        for (var index = sums.Length * Vector<double>.Count; index < sum.Length; index++)
            sum[index] += term[index] * factor;
    }
}
