namespace Halfsplit.Simulation.Settling;

/// <summary>
/// One electrical picture of the circuit: conductance and source of every branch, volts of every node. A branch carries
/// <c>conductance · (volts from − volts to) + source</c> from its first to its second node.
/// Circuits with a pulsed output have two, on and off, weighted by the duty.
/// </summary>
internal sealed class Frame(int branches, int nodes, bool pulseOff)
{
    public double[] Conductance { get; } = new double[branches];
    public double[] Source { get; } = new double[branches];
    public double[] Volts { get; } = new double[nodes];

    /// <summary>The pulsed outputs are off in this picture.</summary>
    public bool PulseOff { get; } = pulseOff;

    public double Weight { get; set; } = 1;

    public void Set(int branch, double ohms, double source = 0)
    {
        Conductance[branch] = 1 / ohms;
        Source[branch] = source;
    }

    /// <summary>Volts of a node; 0 for the reference.</summary>
    public double At(int node) => node < 0 ? 0 : Volts[node];
}
