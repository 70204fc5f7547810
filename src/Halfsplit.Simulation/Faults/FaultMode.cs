using System.Collections.Immutable;

namespace Halfsplit.Simulation.Faults;

/// <summary>What a severity counts.</summary>
public enum SeverityUnit { None, Ohms, Volts, Ratio }

/// <summary>A way a part can fail, with the degrees that are simulated.</summary>
/// <param name="Part">As in <see cref="Fault.Part"/>.</param>
/// <param name="Mode">As in <see cref="Fault.Mode"/>.</param>
/// <param name="Kind">The kind of thing that fails, for failure weights: <c>wire</c>, <c>cavity</c>, <c>socket</c>, or a part's kind.</param>
/// <param name="Owner">The part or wire it belongs to.</param>
/// <param name="Unit">What the severities count.</param>
/// <param name="Severities">Ascending; empty where the mode has no degree.</param>
public sealed record FaultMode(
    string Part, string Mode, string Kind, string Owner, SeverityUnit Unit, ImmutableArray<double> Severities)
{
    /// <summary>The suspect's name: "G2 resistive", "K1 coil open".</summary>
    public string Id => $"{Part} {Mode.Replace('-', ' ')}";

    /// <summary>One fault for each severity, or the one fault.</summary>
    public IEnumerable<Fault> Faults() => Severities.Length == 0
        ? [new Fault(Part, Mode)]
        : Severities.Select(s => new Fault(Part, Mode, s));
}
