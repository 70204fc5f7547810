using System.Collections.Frozen;
using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Answers;

/// <summary>A number of an answer in the base unit, and between what bounds it lies where that is known.</summary>
/// <param name="Value">In the base unit: volts, never millivolts.</param>
/// <param name="Range">Lowest and highest value that the inputs and tables allow; null where nothing is uncertain.</param>
public sealed record Measure(double Value, Unit Unit, ValueRange? Range = null)
{
    /// <summary>Whole volts get one more: the meter shows 12.45.</summary>
    private const int Digits = 3;

    /// <summary>Nobody says thousands of seconds.</summary>
    private const double SaidInMinutes = 120;

    /// <summary>Units that people say in thousandths and thousands.</summary>
    private static readonly FrozenSet<Unit> Scaled = new[]
    {
        Unit.Ohm, Unit.Volt, Unit.Amp, Unit.Watt, Unit.OhmPerMetre, Unit.Hertz, Unit.Second, Unit.Metre,
    }.ToFrozenSet();

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

        if (Unit == Unit.Second && Math.Abs(value) >= SaidInMinutes)
        {
            return new Message("bench-unit.of", new Figure(value / 60, Format(value / 60)), "min");
        }

        if (!Scaled.Contains(Unit))
        {
            return Unit switch
            {
                Unit.Count => new Message("bench-unit.count", new Figure(value, "0.##")),
                // Each language has its own.
                Unit.RevolutionsPerMinute => new Message("bench-unit.rpm", new Figure(value, Format(value))),
                _ => new Message("bench-unit.of", new Figure(value, Format(value)), Symbol),
            };
        }

        var exponent = Math.Abs(value) switch
        {
            // What a display can't show is nothing.
            < 1e-9 => 0,
            < 0.9995 => -3,
            >= 999.5 => 3,
            _ => 0,
        };
        var shown = value / MeterUnits.Power(exponent);
        return new Message(
            "bench-unit.of", new Figure(shown, Format(shown, Unit == Unit.Volt && exponent == 0 ? Digits + 1 : Digits)),
            MeterUnits.Letter(exponent) + Symbol);
    }

    /// <summary>The unit as <c>--json</c> names it, in every language the same.</summary>
    public string Symbol => SymbolOf(Unit);

    /// <summary>The same of a unit alone.</summary>
    public static string SymbolOf(Unit unit) => unit switch
    {
        Unit.Ohm => MeterUnits.Symbol(Quantity.Ohms),
        Unit.Volt => MeterUnits.Symbol(Quantity.Volts),
        Unit.Amp => MeterUnits.Symbol(Quantity.Amperes),
        Unit.Watt => "W",
        Unit.Metre => "m",
        Unit.SquareMillimetre => "mm²",
        Unit.Celsius => "°C",
        Unit.Kelvin => "K",
        Unit.Percent => MeterUnits.Symbol(Quantity.Duty),
        Unit.RevolutionsPerMinute => "1/min",
        Unit.Hertz => "Hz",
        Unit.Second => "s",
        Unit.OhmPerMetre => "Ω/m",
        Unit.WattPerMetre => "W/m",
        _ => "",
    };

    /// <summary>So many decimals that so many digits are seen; none where the whole part has them all.</summary>
    private static string Format(double value, int digits = Digits)
    {
        var size = Math.Abs(value) < 1e-9 || !double.IsFinite(value) ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value) * 1.0005));
        var decimals = Math.Clamp(digits - 1 - size, 0, 4);
        return decimals == 0 ? "0" : "0." + new string('#', decimals);
    }

    public override string ToString() => Value.ToString("G4", CultureInfo.InvariantCulture) + " " + Symbol;
}
