namespace Halfsplit.App.Link;

/// <summary>What the check digit of a vehicle identification number says.</summary>
public enum VehicleNumberCheck
{
    /// <summary>Nothing was typed.</summary>
    Empty,

    /// <summary>Not 17 characters.</summary>
    WrongLength,

    /// <summary>I, O, Q or something that is no letter or digit.</summary>
    WrongCharacter,

    /// <summary>The ninth character is not the digit the rule asks for.</summary>
    DigitDiffers,

    Fits,
}

/// <summary>
/// The check digit of a vehicle identification number: 49 CFR 565.15(c), values of its table III, weights of its table IV.
/// The rule holds for vehicles made for the United States; others may carry any character there.
/// </summary>
public static class VehicleNumber
{
    private const string Letters = "ABCDEFGHJKLMNPRSTUVWXYZ";
    private const string Values = "12345678123457923456789";
    private const int Length = 17, DigitAt = 8, Modulus = 11;

    private static readonly int[] Weights = [8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2];

    /// <summary>Without blanks and hyphens, in capitals.</summary>
    public static string Plain(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return string.Concat(typed.Where(c => !char.IsWhiteSpace(c) && c != '-')).ToUpperInvariant();
    }

    public static VehicleNumberCheck Check(string typed)
    {
        var number = Plain(typed);
        if (number.Length == 0)
        {
            return VehicleNumberCheck.Empty;
        }

        if (number.Any(c => ValueOf(c) < 0))
        {
            return VehicleNumberCheck.WrongCharacter;
        }

        if (number.Length != Length)
        {
            return VehicleNumberCheck.WrongLength;
        }

        var rest = number.Select((c, i) => ValueOf(c) * Weights[i]).Sum() % Modulus;
        return number[DigitAt] == (rest == 10 ? 'X' : (char)('0' + rest)) ? VehicleNumberCheck.Fits : VehicleNumberCheck.DigitDiffers;
    }

    private static int ValueOf(char character)
    {
        var at = Letters.IndexOf(character, StringComparison.Ordinal);
        return char.IsAsciiDigit(character) ? character - '0' : at < 0 ? -1 : Values[at] - '0';
    }
}
