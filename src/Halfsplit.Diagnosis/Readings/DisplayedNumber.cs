using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>A value as a meter's display shows it.</summary>
public static class DisplayedNumber
{
    /// <summary>Rounded to the display's step, in the instrument's quantity.</summary>
    /// <param name="value">In the SI unit.</param>
    public static ReadingParse.Number Of(Meter meter, Instrument instrument, double value)
    {
        ArgumentNullException.ThrowIfNull(meter);
        var step = meter.Resolution(instrument, value);
        var quantity = instrument switch
        {
            Instrument.Ohms => Quantity.Ohms,
            Instrument.AmpsClamp or Instrument.AmpsInline => Quantity.Amperes,
            _ => Quantity.Volts,
        };
        // No display shows a minus before zero.
        return new ReadingParse.Number((Math.Round(value / step) * step) + 0.0, quantity, step);
    }
}
