namespace Halfsplit.Simulation.Tests.Networks;

/// <summary>Nodal analysis as textbooks have it: one matrix, Gaussian elimination with exchange of rows.</summary>
internal static class DenseElimination
{
    public static double[] Volts(TestNetwork network)
    {
        var count = network.NodeCount;
        var matrix = new double[count][];
        for (var node = 0; node < count; node++)
        {
            matrix[node] = new double[count + 1];
            matrix[node][node] = network.Leak[node];
            matrix[node][count] = network.Injected[node];
        }

        for (var index = 0; index < network.Branches.Length; index++)
        {
            var (from, to) = network.Branches[index];
            var conductance = network.Conductance[index];
            if (from >= 0)
                matrix[from][from] += conductance;
            if (to >= 0)
                matrix[to][to] += conductance;
            if (from >= 0 && to >= 0)
            {
                matrix[from][to] -= conductance;
                matrix[to][from] -= conductance;
            }
        }

        for (var pivot = 0; pivot < count; pivot++)
        {
            var largest = Enumerable.Range(pivot, count - pivot).MaxBy(row => Math.Abs(matrix[row][pivot]));
            (matrix[pivot], matrix[largest]) = (matrix[largest], matrix[pivot]);
            for (var row = pivot + 1; row < count; row++)
            {
                var factor = matrix[row][pivot] / matrix[pivot][pivot];
                for (var column = pivot; column <= count; column++)
                    matrix[row][column] -= factor * matrix[pivot][column];
            }
        }

        var volts = new double[count];
        for (var row = count - 1; row >= 0; row--)
        {
            var sum = matrix[row][count];
            for (var column = row + 1; column < count; column++)
                sum -= matrix[row][column] * volts[column];
            volts[row] = sum / matrix[row][row];
        }

        return volts;
    }
}
