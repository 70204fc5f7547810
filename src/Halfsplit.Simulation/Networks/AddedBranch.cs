namespace Halfsplit.Simulation.Networks;

/// <summary>
/// A conductance laid across a network that is already factored: a meter, a jumper, a short.
/// </summary>
/// <param name="From">A node's index, or −1 for the reference.</param>
/// <param name="To">A node's index, or −1 for the reference.</param>
/// <param name="Conductance">Siemens, within <see cref="ConductanceRange"/>.</param>
public readonly record struct AddedBranch(int From, int To, double Conductance);
