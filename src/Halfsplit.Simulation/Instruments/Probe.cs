using Halfsplit.Circuits.Model;

namespace Halfsplit.Simulation.Instruments;

/// <summary>Where the leads go.</summary>
/// <param name="Red">First terminal; null where none is touched.</param>
/// <param name="Black">Second terminal.</param>
/// <param name="About">The wire a clamp goes round, or the part looked at or listened to.</param>
/// <param name="LampWatts">For a substitute load: watts at the circuit's nominal volts; null: the meter's own test lamp.</param>
public sealed record Probe(
    Instrument Instrument, TerminalName? Red, TerminalName? Black, string? About = null, double? LampWatts = null)
{
    /// <summary>Hot ohms of the lamp, at the given nominal volts.</summary>
    public double LampOhms(Meter meter, double nominalVolts)
    {
        ArgumentNullException.ThrowIfNull(meter);
        return nominalVolts * nominalVolts / (LampWatts ?? meter.LampWatts * (nominalVolts / 12) * (nominalVolts / 12));
    }
}
