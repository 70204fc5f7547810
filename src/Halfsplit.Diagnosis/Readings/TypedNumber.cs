using System.Globalization;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>
/// The number at the start of a typed text, as its digits: <c>12,4</c>, <c>.3</c>, <c>1'200</c>, <c>1k2</c>,
/// <c>1.2e-3</c>. What follows it is the <see cref="Unit"/>, not yet understood.
/// </summary>
internal sealed record TypedNumber
{
    /// <summary>Sign, digits and at most one point: what the invariant culture reads.</summary>
    public required string Digits { get; init; }

    public required int Exponent { get; init; }

    /// <summary>How many digits stand after the decimal sign.</summary>
    public required int Decimals { get; init; }

    public required string Unit { get; init; }

    /// <summary>"1,200": the comma may part thousands.</summary>
    public bool CommaMayPartThousands { get; init; }

    /// <summary>"1.": some older displays show only this for over-limit.</summary>
    public bool EndsWithPoint { get; init; }

    /// <summary>The value with a unit's power of ten, rounded once; may be infinite.</summary>
    public double Value(int unitExponent) => Read(Digits, Exponent + unitExponent);

    /// <summary>The number if the comma parts thousands.</summary>
    public TypedNumber WithoutComma() =>
        this with { Digits = Digits.Replace(".", "", StringComparison.Ordinal), Decimals = 0, CommaMayPartThousands = false };

    public double Resolution(int unitExponent) => Read("1", Exponent + unitExponent - Decimals);

    private static double Read(string digits, int exponent) => double.Parse(
        digits + "e" + exponent.ToString(CultureInfo.InvariantCulture),
        NumberStyles.Float,
        CultureInfo.InvariantCulture);

    /// <summary>
    /// Reads the number. Returns null where the text does not start like one; <paramref name="malformed"/> is true
    /// where it does but the separators make no sense.
    /// </summary>
    public static TypedNumber? Read(string plain, out bool malformed)
    {
        malformed = false;
        var at = 0;
        var sign = "";
        if (plain.Length > 0 && plain[0] is '-' or '+')
        {
            sign = plain[0] == '-' ? "-" : "";
            at = plain.Length > 1 && plain[1] == ' ' ? 2 : 1;
        }

        if (at < plain.Length && plain[at] is 'R' or 'r' && Digit(plain, at + 1))
        {
            // "R47" is 0.47 Ω, as resistors are marked.
            return Infix(plain, sign, "0", at);
        }

        var start = at;
        while (at < plain.Length && InNumber(plain, at)) at++;
        var mantissa = plain[start..at];
        if (!mantissa.AsSpan().ContainsAnyInRange('0', '9')) return null;

        if (Infixed(plain, at) && !mantissa.AsSpan().ContainsAnyExceptInRange('0', '9'))
        {
            return Infix(plain, sign, mantissa, at);
        }

        if (!Separate(mantissa, out var whole, out var fraction, out var doubtfulComma))
        {
            malformed = true;
            return null;
        }

        var exponent = ReadExponent(plain, ref at);
        return new TypedNumber
        {
            Digits = sign + whole + "." + fraction,
            Exponent = exponent,
            Decimals = fraction.Length,
            Unit = plain[at..].TrimStart(' '),
            CommaMayPartThousands = doubtfulComma,
            EndsWithPoint = mantissa[^1] == '.',
        };
    }

    private static bool Digit(string text, int at) => at < text.Length && char.IsAsciiDigit(text[at]);

    private static bool InNumber(string text, int at) => text[at] switch
    {
        '.' or ',' => true,
        '\'' => Digit(text, at + 1),
        // A blank parts thousands only where exactly three digits follow.
        ' ' => at > 0 && Digit(text, at - 1) && Digit(text, at + 1) && Digit(text, at + 2) && Digit(text, at + 3)
            && !Digit(text, at + 4),
        var character => char.IsAsciiDigit(character),
    };

    /// <summary>"1k2", "4R7", "12V4": the unit stands where the decimal sign would.</summary>
    private static bool Infixed(string text, int at) =>
        at < text.Length && "RrΩkKMmVvAa".Contains(text[at], StringComparison.Ordinal) && Digit(text, at + 1);

    private static TypedNumber Infix(string plain, string sign, string whole, int at)
    {
        var letter = plain[at];
        var start = ++at;
        while (Digit(plain, at)) at++;
        var rest = plain[at..].TrimStart(' ');
        var unit = letter is 'R' or 'r' && rest.Length > 0 ? rest : letter + rest;
        return new TypedNumber
        {
            Digits = sign + whole + "." + plain[start..at],
            Exponent = 0,
            Decimals = at - start,
            Unit = unit,
        };
    }

    private static int ReadExponent(string plain, ref int at)
    {
        if (at >= plain.Length || plain[at] is not ('e' or 'E')) return 0;
        var digits = at + 1;
        if (digits < plain.Length && plain[digits] is '-' or '+') digits++;
        if (!Digit(plain, digits)) return 0;
        var end = digits;
        while (Digit(plain, end)) end++;
        if (end - digits > 3) return 0;
        var value = int.Parse(plain.AsSpan(digits, end - digits), NumberStyles.None, CultureInfo.InvariantCulture);
        var negative = plain[at + 1] == '-';
        at = end;
        return negative ? -value : value;
    }

    /// <summary>Tells the decimal sign from the marks that part thousands.</summary>
    private static bool Separate(string mantissa, out string whole, out string fraction, out bool doubtfulComma)
    {
        whole = "";
        fraction = "";
        doubtfulComma = false;
        var points = mantissa.AsSpan().Count('.');
        var commas = mantissa.AsSpan().Count(',');
        var last = mantissa.AsSpan().LastIndexOfAny('.', ',');
        // The last sign is the decimal one, unless the same sign comes more than once.
        var isDecimal = last >= 0 && (mantissa[last] == '.' ? points : commas) == 1;
        var grouped = isDecimal ? mantissa[..last] : mantissa;
        fraction = isDecimal ? mantissa[(last + 1)..] : "";
        if (fraction.AsSpan().ContainsAnyExceptInRange('0', '9')) return false;

        var groups = grouped.Split(['.', ',', '\'', ' ']);
        if (groups.Length > 1)
        {
            if (groups[0].Length is 0 or > 3) return false;
            foreach (var group in groups.AsSpan(1))
            {
                if (group.Length != 3) return false;
            }
        }

        whole = string.Concat(groups);
        if (whole.Length == 0) whole = "0";
        doubtfulComma = isDecimal && mantissa[last] == ',' && groups.Length == 1 && fraction.Length == 3
            && grouped.Length is 1 or 2 or 3 && grouped[0] != '0';
        return true;
    }
}
