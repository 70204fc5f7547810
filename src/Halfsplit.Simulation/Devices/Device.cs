using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Devices;

/// <summary>In which order things in a car find their state: fast ones settle before slow ones move.</summary>
internal enum DeviceStage
{
    /// <summary>Diodes and filaments: settle within the solution.</summary>
    Fast,

    /// <summary>Relays, motors, modules.</summary>
    Slow,

    /// <summary>Fuses and protectors: by time and current.</summary>
    Melting,

    /// <summary>Stamps once and never changes state.</summary>
    Fixed,
}

/// <summary>
/// How a kind of part behaves: which conductances and sources it shows in each discrete state, and when it changes.
/// Holds structure only (branch and node numbers); everything that changes lives in the <see cref="Run"/>.
/// </summary>
internal abstract class Device(string part)
{
    public string Part { get; } = part;

    /// <summary>Index of this device's state in <see cref="Run.State"/>.</summary>
    public int Slot { get; set; }

    /// <summary>Where this device's parameters begin in <see cref="Run.Parameters"/>.</summary>
    public int Offset { get; set; }

    public virtual int ParameterCount => 0;

    public abstract DeviceStage Stage { get; }

    /// <summary>Reads faults and the condition into the run's parameters.</summary>
    public virtual void Prepare(Run run) { }

    /// <summary>Writes conductance and source of its branches for the present state.</summary>
    public abstract void Stamp(Run run, Frame frame);

    /// <summary>The state that the solved volts call for.</summary>
    public virtual int Next(Run run) => run.State[Slot];

    /// <summary>
    /// How hard the solved volts push it into its next state: how far they are past the threshold, as a share of it. What
    /// is pushed further moves sooner.
    /// </summary>
    public virtual double Urgency(Run run, int next) => 1;

    /// <summary>How far a value is past a threshold, as a share of the threshold.</summary>
    protected static double Past(double threshold, double value) => Math.Abs(value - threshold) / Math.Max(1e-3, threshold);

    /// <summary>The state at the start of a condition, given the one at the end of the condition before.</summary>
    public virtual int Carry(int state) => state;

    /// <summary>Starts iterations in this run where they ended in the one before; changes no result.</summary>
    public virtual void Warm(Run before, Run now) { }

    protected Span<double> Parameters(Run run) => run.Parameters.AsSpan(Offset, ParameterCount);
}
