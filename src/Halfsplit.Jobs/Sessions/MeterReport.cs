using System.Globalization;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Sessions;

/// <summary>The meter or lamp as a check uses it.</summary>
/// <param name="InputOhms">What it puts between the leads; null for ohms, a clamp and whatever has no input.</param>
/// <param name="Resolution">The least step of the display near the expected value, in the unit of the reading.</param>
/// <param name="Accuracy">As meters state it: <c>0.5 % + 2</c>.</param>
/// <param name="LeadOhms">Resistance of both leads together.</param>
/// <param name="LampWatts">For a lamp: its watts at the circuit's nominal volts; else null.</param>
public sealed record MeterReport(double? InputOhms, double Resolution, string Accuracy, double LeadOhms, double? LampWatts)
{
    /// <summary>Null for checks without an instrument.</summary>
    /// <param name="near">A value the reading is expected to be near.</param>
    public static MeterReport? Of(Meter meter, Probe probe, double nominalVolts, double near)
    {
        ArgumentNullException.ThrowIfNull(meter);
        ArgumentNullException.ThrowIfNull(probe);
        if (probe.Instrument is Instrument.Eye or Instrument.Ear)
        {
            return null;
        }

        double? input = probe.Instrument switch
        {
            Instrument.Volts => meter.InputOhms,
            Instrument.VoltsLowImpedance => meter.LowImpedanceOhms,
            Instrument.TestLamp => probe.LampOhms(meter, nominalVolts),
            Instrument.AmpsInline => InstrumentReader.InlineOhms,
            _ => null,
        };
        double? watts = probe.Instrument == Instrument.TestLamp ? nominalVolts * nominalVolts / input : null;
        var accuracy = string.Create(
            CultureInfo.InvariantCulture, $"{Math.Round(100 * meter.GainAccuracy, 3)} % + {meter.CountAccuracy}");
        return new MeterReport(
            input, meter.Resolution(probe.Instrument, near), accuracy, meter.LeadOhms,
            watts is { } exact ? Math.Round(exact, 6) : null);
    }

    /// <summary>As a job file keeps it; 0 stands for "no input".</summary>
    internal MeterUsed ToKeep() => new(InputOhms ?? 0, Resolution, Accuracy, LeadOhms);
}
