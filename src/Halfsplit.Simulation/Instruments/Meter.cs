namespace Halfsplit.Simulation.Instruments;

/// <summary>
/// A handheld digital multimeter with its leads and its test lamp. Spreads are one standard deviation; a maker's
/// accuracy limit is taken as two.
/// </summary>
/// <param name="InputOhms">Input resistance on volts; 10 MΩ is common (Lessons in Electric Circuits vol. I ch. 8).</param>
/// <param name="LowImpedanceOhms">Input resistance on its low-impedance setting, about 3 kΩ (secondary source).</param>
/// <param name="LeadOhms">Both leads together; 0.1 to 0.3 Ω, from memory.</param>
/// <param name="Counts">Highest display count.</param>
/// <param name="GainAccuracy">Accuracy limit as a share of the reading, 0.5 %; from memory.</param>
/// <param name="CountAccuracy">Accuracy limit in counts.</param>
/// <param name="JackAmps">What the in-line jack bears.</param>
/// <param name="LampWatts">Watts of the test lamp at 12 V.</param>
public sealed record Meter(
    double InputOhms = 10e6,
    double LowImpedanceOhms = 3e3,
    double LeadOhms = 0.2,
    double Counts = 6000,
    double GainAccuracy = 0.005,
    double CountAccuracy = 2,
    double JackAmps = 10,
    double LampWatts = 3)
{
    /// <summary>Ohms above which the display shows over-limit; from memory.</summary>
    public const double OverLimitOhms = 40e6;

    /// <summary>Thresholds of continuity buzzers lie between these (four published handheld-meter manuals: 50, 50, 70, 100 Ω).</summary>
    public const double BuzzerLowOhms = 30, BuzzerHighOhms = 100;

    /// <summary>Current of the ohms range, about 1 mA (NEETS module 21).</summary>
    public const double OhmsTestAmps = 1e-3;

    /// <summary>Finest step on the volts display.</summary>
    private const double FinestVolts = 1e-4, FinestOhms = 0.1, FinestAmps = 0.01;

    public static Meter Default { get; } = new();

    /// <summary>The display's step at this value: the meter ranges itself.</summary>
    public double Resolution(Instrument instrument, double value)
    {
        var finest = instrument switch
        {
            Instrument.Ohms or Instrument.Continuity => FinestOhms,
            Instrument.AmpsClamp or Instrument.AmpsInline => FinestAmps,
            _ => FinestVolts,
        };
        var step = finest;
        while (Math.Abs(value) >= Counts * step)
        {
            step *= 10;
        }

        return step;
    }

    /// <summary>Spread that all readings share, as a share of the value.</summary>
    public double GainSpread(Instrument instrument) =>
        instrument is Instrument.AmpsClamp ? 2 * GainAccuracy : GainAccuracy / 2;

    /// <summary>Spread of what all readings of the instrument are off by, whatever they show: a clamp's zero, with every magnet nearby; from memory.</summary>
    public static double ZeroSpread(Instrument instrument) => instrument is Instrument.AmpsClamp ? 0.1 : 0;

    /// <summary>Spread of each reading by itself, beyond the display's step.</summary>
    public double OffsetSpread(Instrument instrument, double value) => instrument switch
    {
        // The zero wanders a little from place to place; from memory.
        Instrument.AmpsClamp => 0.03 + (0.01 * Math.Abs(value)),
        Instrument.Ohms => 0.15 + (0.5 * CountAccuracy * Resolution(instrument, value)),
        _ => 0.5 * CountAccuracy * Resolution(instrument, value),
    };
}
