using System.ComponentModel;
using System.Globalization;

namespace Halfsplit.Cli.Settings;

/// <summary>A number of the command line, with a decimal point or a decimal comma in every language.</summary>
public sealed class EitherDecimalSign : TypeConverter
{
    public override bool CanConvertFrom(ITypeDescriptorContext? context, Type sourceType) => sourceType == typeof(string);

    /// <exception cref="FormatException">The text is no number, or has signs between thousands.</exception>
    public override object ConvertFrom(ITypeDescriptorContext? context, CultureInfo? culture, object value)
    {
        var text = ArgumentGuard.Undo((string)value).Replace(',', '.');
        return double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
