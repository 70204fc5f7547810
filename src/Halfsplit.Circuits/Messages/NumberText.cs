namespace Halfsplit.Circuits.Messages;

/// <summary>Writes numbers for people: the one place where a number becomes text, so that no minus ever stands before a zero.</summary>
public static class NumberText
{
    /// <summary>The number in a .NET format; what rounds to zero has no sign.</summary>
    /// <param name="value">Any number.</param>
    /// <param name="format">A .NET format such as <c>0.#</c>; null or empty for all its digits.</param>
    /// <param name="formats">Signs and digits; null for those of the thread.</param>
    public static string Of(double value, string? format, IFormatProvider? formats)
    {
        var text = value.ToString(format, formats);
        return value <= 0 && text.Contains('0', StringComparison.Ordinal) && text.AsSpan().IndexOfAnyInRange('1', '9') < 0
            ? 0.0.ToString(format, formats)
            : text;
    }
}
