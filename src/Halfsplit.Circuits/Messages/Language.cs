using System.Globalization;

namespace Halfsplit.Circuits.Messages;

/// <summary>A language that the program speaks: which texts are said, and how numbers and days are written in them.</summary>
public sealed class Language
{
    private Language(string code, string decimalSign)
    {
        Code = code;
        // Not the machine's own culture data: a browser has none, and two machines must write the same.
        Formats = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        Formats.NumberFormat.NumberDecimalSeparator = decimalSign;
        Formats.NumberFormat.PercentDecimalSeparator = decimalSign;
        Formats.NumberFormat.CurrencyDecimalSeparator = decimalSign;
    }

    public static Language English { get; } = new("en", ".");

    public static Language German { get; } = new("de", ",");

    /// <summary>Every language, the one of machine outputs first.</summary>
    public static IReadOnlyList<Language> All { get; } = [English, German];

    /// <summary>ISO 639-1 code.</summary>
    public string Code { get; }

    /// <summary>How numbers are written: with this language's decimal sign, and without signs between thousands.</summary>
    public CultureInfo Formats { get; }

    /// <summary>The language of a name such as <c>de</c>, <c>de-AT</c> or <c>de_DE.UTF-8</c>; null for one that is not spoken.</summary>
    public static Language? Find(string? name)
    {
        var code = name?.Split('-', '_', '.')[0];
        return All.FirstOrDefault(l => string.Equals(l.Code, code, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The language whose <see cref="Formats"/> these are; English for any others.</summary>
    public static Language Of(IFormatProvider? formats) => All.FirstOrDefault(l => ReferenceEquals(l.Formats, formats)) ?? English;

    public override string ToString() => Code;
}
