namespace Halfsplit.Simulation.Networks;

/// <summary>
/// How a solved network answers to one more conductance between two of its points, whatever its size: found once by
/// <see cref="NetworkSolver.Across"/>, then each conductance costs a division, and each node's volts a product.
/// </summary>
/// <param name="DropWithout">Volts from the first point to the second while nothing is added.</param>
/// <param name="Resistance">What the network is between the two points, in ohms, its sources at rest. Never negative.</param>
public readonly record struct AddedConductance(double DropWithout, double Resistance)
{
    /// <summary>The amperes that flow through an added conductance from the first point to the second.</summary>
    /// <param name="conductance">Siemens, zero or more, so that the denominator is at least one.</param>
    public double Current(double conductance) => conductance * DropWithout / (1 + (conductance * Resistance));

    /// <summary>The volts across an added conductance.</summary>
    /// <param name="conductance">Siemens, zero or more.</param>
    public double Drop(double conductance) => DropWithout / (1 + (conductance * Resistance));

    /// <summary>A node's volts with the added conductance.</summary>
    /// <param name="without">The node's volts without it.</param>
    /// <param name="response">The node's volts for one ampere between the two points, from <see cref="NetworkSolver.Across"/>.</param>
    /// <param name="conductance">Siemens, zero or more.</param>
    public double Volts(double without, double response, double conductance) => without - (response * Current(conductance));
}
