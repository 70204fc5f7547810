using System.ComponentModel;
using System.Globalization;

namespace Halfsplit.Cli.Settings;

/// <summary>Ohms of the command line: a number, or <c>OL</c> for what does not conduct.</summary>
public sealed class OhmsOrOpen : TypeConverter
{
    private static readonly EitherDecimalSign Number = new();

    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string);

    /// <exception cref="FormatException">The text is neither a number nor OL.</exception>
    public override object? ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value) =>
        string.Equals((string)value, "OL", StringComparison.OrdinalIgnoreCase) ? double.PositiveInfinity : Number.ConvertFrom(context, culture, value);
}
