namespace Halfsplit.Diagnosis.Readings;

/// <summary>Numbers that a person types where no check asks for them: <c>12,4</c>, <c>48 mV</c>, <c>1k2</c>. A comma is a decimal sign.</summary>
public static class TypedQuantity
{
    /// <summary>The number at the start of a text, and what stands behind it; null where the text starts with none.</summary>
    public static (double Value, string Behind)? Number(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TypedNumber.Read(TypedText.Plain(text), out _) is { } number && double.IsFinite(number.Value(0)) ? (number.Value(0), number.Unit) : null;
    }

    /// <summary>A whole text that is a number and a unit of this quantity, in the bare SI unit; null where it is none.</summary>
    /// <param name="bare">What a number without a unit counts: 0.001 where millivolts are asked for.</param>
    public static double? Read(string text, Quantity quantity, double bare = 1)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > TypedText.LongestText || TypedNumber.Read(TypedText.Plain(text), out _) is not { } number || TypedUnit.Read(number.Unit) is not { } unit
            || unit.Alternating || (unit.Quantity is { } said && said != quantity))
        {
            return null;
        }

        var value = unit.Quantity is null && !unit.HasPrefix ? number.Value(0) * bare : number.Value(unit.Exponent);
        return double.IsFinite(value) ? value : null;
    }
}
