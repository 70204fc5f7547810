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

    /// <summary>The language of the person at this machine, by the UI culture; English where that is not spoken here.</summary>
    public static Language Current => Find(CultureInfo.CurrentUICulture.Name) ?? English;

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

    public override string ToString() => Code;
}
