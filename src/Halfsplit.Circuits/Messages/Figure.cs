using System.Globalization;

namespace Halfsplit.Circuits.Messages;

/// <summary>A number in a message together with how many of its digits are worth saying; written in the language of the text.</summary>
/// <param name="Format">A .NET format such as <c>0.#</c> or <c>G3</c>.</param>
public readonly record struct Figure(double Value, string Format) : IFormattable
{
    /// <summary>The format in the gap of a text, where there is one, comes before the figure's own.</summary>
    public string ToString(string? format, IFormatProvider? formatProvider) => NumberText.Of(Value, format ?? Format, formatProvider);

    /// <summary>With a decimal point, for logs and debuggers.</summary>
    public override string ToString() => ToString(null, CultureInfo.InvariantCulture);
}
