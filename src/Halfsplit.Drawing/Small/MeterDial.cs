using Halfsplit.Circuits.Messages;
using Halfsplit.Drawing.Svg;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Drawing.Small;

/// <summary>What to set the meter to: a neutral knob that points at the sign of the quantity, and the setting in words.</summary>
public static class MeterDial
{
    private const double Width = 250, Height = 74, KnobX = 44, KnobY = 37;

    public static string Svg(Instrument instrument, DrawingOptions? options = null)
    {
        options ??= DrawingOptions.Default;
        var words = options.Texts.Say(new Message($"instrument.{instrument.Name()}"));
        var pen = SmallDrawing.Pen(options);
        var sign = SignOf(instrument);
        if (instrument is Instrument.TestLamp)
        {
            pen.Circle("hs-body", KnobX, KnobY, 22);
            pen.Line("hs-symbol", KnobX - 15.5, KnobY - 15.5, KnobX + 15.5, KnobY + 15.5);
            pen.Line("hs-symbol", KnobX - 15.5, KnobY + 15.5, KnobX + 15.5, KnobY - 15.5);
        }
        else if (sign is null)
        {
            pen.Circle("hs-body", KnobX, KnobY, 22);
            pen.Circle("hs-dot", KnobX, KnobY, instrument == Instrument.Eye ? 9 : 4);
        }
        else
        {
            pen.Circle("hs-body", KnobX, KnobY, 22);
            pen.Line("hs-symbol hs-thick", KnobX, KnobY, KnobX + 18, KnobY);
            pen.Circle("hs-dot", KnobX, KnobY, 4);
            pen.Text("hs-heading", KnobX + 32, KnobY + 5, sign);
            if (sign is "V" or "A")
            {
                // The sign of direct current: one whole line, one broken.
                var x = KnobX + 48;
                pen.Line("hs-symbol", x, KnobY - 3, x + 14, KnobY - 3);
                pen.Line("hs-link", x, KnobY + 2, x + 14, KnobY + 2);
            }
        }

        pen.Text("hs-identity", KnobX + 78, KnobY + 4, words);
        return SmallDrawing.Document(options, "dial", words, words, Width + Math.Max(0, TextMeasure.Width(words, TextMeasure.Identity, true) - 120), Height, pen);
    }

    /// <summary>The sign of the quantity after ISO 80000 and IEC 60417; null for what is no meter.</summary>
    private static string? SignOf(Instrument instrument) => instrument switch
    {
        Instrument.Volts or Instrument.VoltsLowImpedance => "V",
        Instrument.Ohms => "Ω",
        Instrument.Continuity => "·)))",
        Instrument.AmpsClamp or Instrument.AmpsInline => "A",
        Instrument.Duty => "%",
        _ => null,
    };
}
