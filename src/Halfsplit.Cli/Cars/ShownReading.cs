using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Cars;

/// <summary>What the display of an instrument shows.</summary>
/// <param name="Value">Before the display rounds it; null where nothing can be said.</param>
/// <param name="Shown">As a person would type it: "12.43 V", "OL", "no beep"; null where nothing can be said.</param>
/// <param name="Word">What a lamp or buzzer does; null for numbers.</param>
/// <param name="Abstains">Why nothing can be said.</param>
public sealed record ShownReading(
    Probe Probe, Prediction Prediction, double? Value, Quantity Quantity, double Resolution, string? Shown, AnswerWord? Word,
    Message? Abstains)
{
    /// <summary>The middle, in decades, of where published buzzers stop.</summary>
    private static readonly double BuzzerOhms = Math.Sqrt(Meter.BuzzerLowOhms * Meter.BuzzerHighOhms);

    private const double BrightShare = 0.75, DarkShare = 0.15;

    /// <summary>The same as a person reads it in the language of the run.</summary>
    public string? Spoken => Shown switch
    {
        null or "OL" => Shown,
        _ when Probe.Instrument == Instrument.Continuity => CliTexts.Words.TextOf(Word!),
        _ => SpokenReading.Of(Displayed(Value!.Value, Quantity, Resolution), CliTexts.Catalog.Language),
    };

    public bool IsOverLimit => Shown == "OL";

    /// <summary>Reads the prediction off a display.</summary>
    /// <param name="nominalVolts">12 or 24: what makes a lamp bright.</param>
    public static ShownReading Of(Probe probe, Prediction read, Meter meter, double nominalVolts)
    {
        ArgumentNullException.ThrowIfNull(probe);
        ArgumentNullException.ThrowIfNull(meter);
        var quantity = probe.Instrument switch
        {
            Instrument.Ohms or Instrument.Continuity => Quantity.Ohms,
            Instrument.AmpsClamp or Instrument.AmpsInline => Quantity.Amperes,
            Instrument.Duty => Quantity.Duty,
            _ => Quantity.Volts,
        };
        // A duty range shows tenths of a per cent.
        var step = quantity == Quantity.Duty ? 0.001 : meter.Resolution(probe.Instrument, read.Value);
        if (read.Abstains != Abstention.None)
        {
            return new ShownReading(probe, read, null, quantity, step, null, null, Reason(read.Abstains));
        }

        if (probe.Instrument == Instrument.Continuity)
        {
            var word = read.Value < BuzzerOhms ? AnswerWord.Beeps : AnswerWord.NoBeep;
            return new ShownReading(probe, read, read.Value, quantity, step, AnswerWords.English.TextOf(word), word, null);
        }

        if (read.IsOverLimit(probe.Instrument))
        {
            return new ShownReading(probe, read, null, quantity, step, "OL", null, null);
        }

        var share = Math.Abs(read.Value) / nominalVolts;
        return new ShownReading(
            probe, read, read.Value, quantity, step, Display(read.Value, quantity, step),
            probe.Instrument != Instrument.TestLamp ? null
                : share >= BrightShare ? AnswerWord.Bright : share >= DarkShare ? AnswerWord.Dim : AnswerWord.Dark,
            null);
    }

    /// <summary>The value rounded to the display's step, with its unit.</summary>
    public static string Display(double value, Quantity quantity, double step) => Displayed(value, quantity, step).ToString();

    private static ReadingParse.Number Displayed(double value, Quantity quantity, double step)
    {
        var rounded = Math.Round(value / step) * step;
        // No display shows a minus before zero.
        return new ReadingParse.Number(rounded == 0 ? 0 : rounded, quantity, step);
    }

    private static Message Reason(Abstention abstention) => abstention switch
    {
        Abstention.LiveCircuit => new Message("abstains.live"),
        Abstention.Chatter => new Message("abstains.chatter"),
        _ => new Message("abstains.waveform"),
    };
}
