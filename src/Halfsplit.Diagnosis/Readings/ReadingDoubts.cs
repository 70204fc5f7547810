using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>
/// Doubts a number that can be read but is unlikely: another unit, a slipped prefix, swapped leads. The first doubt
/// is asked; a person who confirms it has confirmed the number.
/// </summary>
internal static class ReadingDoubts
{
    /// <summary>Amps beyond those of any predicted car, as a multiple, from which a person is asked; an assumption.</summary>
    private const double BeyondFrom = 3;

    /// <summary>Amps that a clamp's zero, or a load that nobody thought of, may well make; an assumption.</summary>
    private const double NoQuestionBelow = 1;

    public static ReadingParse Weigh(
        string plain, TypedNumber typed, TypedUnit unit, Quantity quantity, ExpectedAnswer expected)
    {
        var exponent = Exponent(unit, quantity);
        if (Make(typed, exponent, quantity) is not { } number)
        {
            return new ReadingParse.Rejected(new Message("reading.number-too-large", TypedText.Excerpt(plain)));
        }

        if (unit.Quantity is { } other && other != quantity)
        {
            return Ask(
                "reading.unit-does-not-fit",
                [TypedText.Excerpt(plain), MeterUnits.Symbol(quantity), number],
                number);
        }

        if (unit.Alternating) return Ask("reading.alternating", [number], number);

        if (typed.CommaMayPartThousands && Make(typed.WithoutComma(), exponent, quantity) is { } thousands)
        {
            return Ask(
                "reading.thousands-or-decimal",
                [TypedText.Excerpt(plain), number, thousands with { Resolution = null }],
                number,
                thousands);
        }

        if (quantity == Quantity.Ohms && typed is { EndsWithPoint: true, Digits: "1." } && unit.Quantity is null)
        {
            return Ask("reading.one-or-over-limit", [number], number, new ReadingParse.OverLimit());
        }

        return Implausible(typed, unit, number, expected) ?? Slipped(typed, unit, number, expected)
            ?? BeyondAll(typed, number, exponent, expected) ?? (ReadingParse)number;
    }

    /// <summary>"Nothing" typed where a number is asked: zero, or no connection at all.</summary>
    public static ReadingParse NothingShown(Quantity quantity)
    {
        var zero = new ReadingParse.Number(0, quantity, null);
        return quantity == Quantity.Ohms
            ? Ask("reading.nothing-on-ohms", [], new ReadingParse.OverLimit(), zero)
            : Ask("reading.nothing-shown", [zero], zero);
    }

    // A megavolt or a megampere is no reading: m and M are both milli there.
    private static int Exponent(TypedUnit unit, Quantity quantity)
    {
        if (quantity == Quantity.Duty) return unit.Quantity == Quantity.Duty ? unit.Exponent : unit.Exponent - 2;
        if (unit.Quantity == Quantity.Duty) return 0;
        return unit.LetterM && quantity != Quantity.Ohms ? -3 : unit.Exponent;
    }

    private static ReadingParse.Question? Implausible(
        TypedNumber typed, TypedUnit unit, ReadingParse.Number number, ExpectedAnswer expected)
    {
        // A lower-case m before ohms is milli to the letter, but a hand-held meter shows no such thing.
        if (unit.LetterM && unit.Exponent == -3 && number.Quantity == Quantity.Ohms && number.Value != 0
            && !Near(number, expected.Predicted)
            && Make(typed, 6, Quantity.Ohms) is { } mega)
        {
            return Ask("reading.milli-or-mega", [number, mega], number, mega);
        }

        if (expected.IsPlausible(number.Value)) return null;
        if (number.Value < 0 && expected.IsPlausible(-number.Value) && number.Quantity != Quantity.Ohms)
        {
            return Ask("reading.leads-swapped", [number], number);
        }

        ReadingValue[] others =
            [.. OtherPrefixes(typed, unit, number.Quantity).Where(other => expected.IsPlausible(other.Value))];
        var code = number.Value < expected.PlausibleLow ? "reading.too-low" : "reading.too-high";
        if (others.Length == 0) return Ask(code, [number], number);

        object hint = others.Skip(1).Aggregate((object)others[0], (all, next) => new Message("reading.either", all, next));
        return Ask(code + "-unless-prefix", [number, hint], number, others);
    }

    private static ReadingParse.Question? Slipped(
        TypedNumber typed, TypedUnit unit, ReadingParse.Number number, ExpectedAnswer expected)
    {
        if (expected.Predicted.IsDefaultOrEmpty || number.Value == 0 || Near(number, expected.Predicted)) return null;
        foreach (var other in OtherPrefixes(typed, unit, number.Quantity))
        {
            if (expected.IsPlausible(other.Value) && Near(other, expected.Predicted))
            {
                return Ask("reading.unit-slip", [number, other], number, other);
            }
        }

        return null;
    }

    /// <summary>
    /// More amps than any of the predicted cars draws, by far: a decimal point that slipped, a wrong range, or a clamp that was not
    /// zeroed. Volts and ohms have limits of their own.
    /// </summary>
    private static ReadingParse.Question? BeyondAll(
        TypedNumber typed, ReadingParse.Number number, int exponent, ExpectedAnswer expected)
    {
        if (number.Quantity != Quantity.Amperes || expected.Predicted.IsDefaultOrEmpty) return null;
        var most = expected.Predicted.Max(Math.Abs);
        if (Math.Abs(number.Value) <= Math.Max(NoQuestionBelow, BeyondFrom * most)) return null;
        ReadingValue[] others = Make(typed, exponent - 1, Quantity.Amperes) is { } tenth && Near(tenth, expected.Predicted)
            ? [tenth]
            : [];
        return Ask("reading.beyond-all", [number, new ReadingParse.Number(most, Quantity.Amperes, most < 10 ? 0.1 : 1)], number, others);
    }

    /// <summary>The same digits with the prefixes that are easily overlooked or mistyped on this range.</summary>
    private static IEnumerable<ReadingParse.Number> OtherPrefixes(TypedNumber typed, TypedUnit unit, Quantity quantity)
    {
        if (quantity == Quantity.Duty) yield break;
        var own = Exponent(unit, quantity);
        int[] exponents = quantity == Quantity.Ohms ? [0, 3, 6] : [0, -3];
        foreach (var exponent in exponents)
        {
            if (exponent != own && Make(typed, exponent, quantity) is { } other) yield return other;
        }
    }

    /// <summary>Within a tenth of a prediction, or within the last digit typed.</summary>
    private static bool Near(ReadingParse.Number number, ImmutableArray<double> predicted)
    {
        if (predicted.IsDefault) return false;
        // Of a current only the size counts: the minus says which way round the clamp was put on.
        var read = number.Quantity == Quantity.Amperes ? Math.Abs(number.Value) : number.Value;
        foreach (var value in predicted)
        {
            var room = Math.Max(0.1 * Math.Abs(value), number.Resolution ?? 0);
            if (Math.Abs(read - value) <= room) return true;
        }

        return false;
    }

    private static ReadingParse.Number? Make(TypedNumber typed, int exponent, Quantity quantity)
    {
        var value = typed.Value(exponent);
        if (!double.IsFinite(value)) return null;
        var resolution = typed.Resolution(exponent);
        return new ReadingParse.Number(value, quantity, double.IsFinite(resolution) && resolution > 0 ? resolution : null);
    }

    private static ReadingParse.Question Ask(
        string code, object[] arguments, ReadingValue meant, params ReadingValue[] alternatives) =>
        new(new Message(code, arguments), meant, [.. alternatives]);
}
