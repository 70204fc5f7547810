using System.Numerics;

namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>
/// The strict judge: node volts as exact fractions. The conductances are taken as the binary fractions that they are,
/// scaled to whole numbers, and eliminated by E. H. Bareiss's method ("Sylvester's identity and multistep
/// integer-preserving Gaussian elimination", Mathematics of Computation 22, 1968), in which every division comes out even.
/// </summary>
internal sealed class ExactSolution
{
    private readonly BigInteger[] numerator;
    private readonly BigInteger denominator;

    private ExactSolution(BigInteger[] numerator, BigInteger denominator) =>
        (this.numerator, this.denominator) = (numerator, denominator);

    public static ExactSolution Of(TestNetwork network, double[] injected)
    {
        var count = network.NodeCount;
        var conductanceScale = Scale([.. network.Conductance, .. network.Leak]);
        var currentScale = Scale(injected);
        var matrix = new BigInteger[count, count + 1];
        for (var node = 0; node < count; node++)
        {
            matrix[node, node] = Whole(network.Leak[node], conductanceScale);
            matrix[node, count] = Whole(injected[node], currentScale) << Math.Max(0, conductanceScale - currentScale);
        }

        for (var index = 0; index < network.Branches.Length; index++)
        {
            var (from, to) = network.Branches[index];
            var conductance = Whole(network.Conductance[index], conductanceScale);
            if (from == to)
                continue;
            if (from >= 0)
                matrix[from, from] += conductance;
            if (to >= 0)
                matrix[to, to] += conductance;
            if (from >= 0 && to >= 0)
            {
                matrix[from, to] -= conductance;
                matrix[to, from] -= conductance;
            }
        }

        Eliminate(matrix, count);
        var determinant = matrix[count - 1, count - 1];
        var solution = new BigInteger[count];
        for (var row = count - 1; row >= 0; row--)
        {
            var sum = determinant * matrix[row, count];
            for (var column = row + 1; column < count; column++)
                sum -= matrix[row, column] * solution[column];
            solution[row] = sum / matrix[row, row];
        }

        return new ExactSolution(solution, determinant << Math.Max(0, currentScale - conductanceScale));
    }

    /// <summary>The volts of a node, rounded.</summary>
    public double Volts(int node) => Quotient(numerator[node], denominator);

    /// <summary>How far some volts are from a node's, as a share of the node's.</summary>
    public double RelativeError(int node, double volts) =>
        numerator[node].IsZero ? Math.Abs(volts) : Math.Abs(Quotient(Difference(node, volts, out var scale), numerator[node] << scale));

    /// <summary>How far some volts are from a node's, in volts.</summary>
    public double AbsoluteError(int node, double volts) =>
        Math.Abs(Quotient(Difference(node, volts, out var scale), denominator << scale));

    /// <summary>How far some volts are from those between two nodes, as a share of those.</summary>
    public double DifferenceError(int from, int to, double volts)
    {
        var between = new ExactSolution([numerator[from] - numerator[to]], denominator);
        return between.RelativeError(0, volts);
    }

    private BigInteger Difference(int node, double volts, out int scale)
    {
        scale = Scale([volts]);
        return (Whole(volts, scale) * denominator) - (numerator[node] << scale);
    }

    private static void Eliminate(BigInteger[,] matrix, int count)
    {
        var previous = BigInteger.One;
        for (var pivot = 0; pivot < count - 1; pivot++)
        {
            for (var row = pivot + 1; row < count; row++)
            {
                for (var column = pivot + 1; column <= count; column++)
                {
                    var product = matrix[row, column] * matrix[pivot, pivot];
                    if (!matrix[row, pivot].IsZero && !matrix[pivot, column].IsZero)
                        product -= matrix[row, pivot] * matrix[pivot, column];
                    matrix[row, column] = product / previous;
                }
            }

            previous = matrix[pivot, pivot];
        }
    }

    /// <summary>The power of two that makes all values whole.</summary>
    private static int Scale(ReadOnlySpan<double> values)
    {
        var scale = 0;
        foreach (var value in values)
        {
            if (value != 0)
                scale = Math.Max(scale, 52 - Math.ILogB(value));
        }

        return scale;
    }

    private static BigInteger Whole(double value, int scale)
    {
        if (value == 0)
            return BigInteger.Zero;
        var exponent = Math.ILogB(value);
        var mantissa = new BigInteger(Math.ScaleB(value, 52 - exponent));
        return mantissa << (scale + exponent - 52);
    }

    private static double Quotient(BigInteger dividend, BigInteger divisor)
    {
        if (dividend.IsZero)
            return 0;
        // Enough bits of the quotient, whatever the sizes.
        var shift = (int)(divisor.GetBitLength() - dividend.GetBitLength()) + 70;
        var quotient = shift >= 0 ? (dividend << shift) / divisor : dividend / (divisor << -shift);
        return Math.ScaleB((double)quotient, -shift);
    }
}
