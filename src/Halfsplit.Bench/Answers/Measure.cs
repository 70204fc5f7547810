using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Answers;

/// <summary>A number of an answer in the base unit, and between what bounds it lies where that is known.</summary>
/// <param name="Value">In the base unit: volts, never millivolts.</param>
/// <param name="Range">Lowest and highest value that the inputs and tables allow; null where nothing is uncertain.</param>
public sealed record Measure(double Value, Unit Unit, ValueRange? Range = null)
{
    /// <summary>Whole volts get one more: the meter shows 12.45.</summary>
    private const int Digits = 3;

    /// <summary>Units that people say in thousandths and thousands.</summary>
    private static readonly Dictionary<Unit, string> Scaled = new()
    {
        [Unit.Ohm] = "ohm", [Unit.Volt] = "volt", [Unit.Amp] = "amp", [Unit.Watt] = "watt", [Unit.OhmPerMetre] = "ohm-per-metre",
        [Unit.Hertz] = "hertz", [Unit.Second] = "second", [Unit.Metre] = "metre",
    };

    /// <summary>The number with its unit, three digits of it, and its bounds in brackets.</summary>
    public Message Say() => Range is { } range && (range.Low != Value || range.High != Value)
        ? new Message("bench-unit.spread", Say(Value), Say(range.Low), Say(range.High))
        : Say(Value);

    private Message Say(double value)
    {
        if (double.IsInfinity(value))
        {
            return new Message("bench-unit.endless");
        }

        if (!Scaled.TryGetValue(Unit, out var name))
        {
            return new Message("bench-unit." + Plain(Unit), new Figure(value, Unit == Unit.Count ? "0.##" : Format(value)));
        }

        var (prefix, factor) = Math.Abs(value) switch
        {
            // What a display can't show is nothing.
            < 1e-9 => ("", 1.0),
            < 0.9995 => ("milli", 1e3),
            >= 999.5 => ("kilo", 1e-3),
            _ => ("", 1.0),
        };
        return new Message("bench-unit." + prefix + name, new Figure(value * factor, Format(value * factor, Unit == Unit.Volt && prefix.Length == 0 ? Digits + 1 : Digits)));
    }

    /// <summary>The unit as <c>--json</c> names it, in every language the same.</summary>
    public string Symbol => Unit switch
    {
        Unit.Ohm => "Ω",
        Unit.Volt => "V",
        Unit.Amp => "A",
        Unit.Watt => "W",
        Unit.Metre => "m",
        Unit.SquareMillimetre => "mm²",
        Unit.Celsius => "°C",
        Unit.Kelvin => "K",
        Unit.Percent => "%",
        Unit.RevolutionsPerMinute => "1/min",
        Unit.Hertz => "Hz",
        Unit.Second => "s",
        Unit.OhmPerMetre => "Ω/m",
        Unit.WattPerMetre => "W/m",
        _ => "",
    };

    private static string Plain(Unit unit) => unit switch
    {
        Unit.SquareMillimetre => "square-millimetre",
        Unit.Celsius => "celsius",
        Unit.Kelvin => "kelvin",
        Unit.Percent => "percent",
        Unit.RevolutionsPerMinute => "rpm",
        Unit.WattPerMetre => "watt-per-metre",
        _ => "count",
    };

    /// <summary>So many decimals that so many digits are seen; none where the whole part has them all.</summary>
    private static string Format(double value, int digits = Digits)
    {
        var size = Math.Abs(value) < 1e-9 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value) * 1.0005));
        var decimals = Math.Clamp(digits - 1 - size, 0, 4);
        return decimals == 0 ? "0" : "0." + new string('#', decimals);
    }

    public override string ToString() => Value.ToString("G4", CultureInfo.InvariantCulture) + " " + Symbol;
}
