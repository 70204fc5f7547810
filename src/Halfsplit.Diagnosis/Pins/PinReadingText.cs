using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>Reads a measurement between pins as a person types it: <c>ohms 1 2 = 85</c>, <c>power 1 2 = clicks</c>, <c>ohms 3 4 with 1 2 = 0.3</c>.</summary>
public static partial class PinReadingText
{
    /// <summary>Answers are understood in every language.</summary>
    private static readonly Dictionary<string, PinWord> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["beeps"] = PinWord.Beeps, ["piept"] = PinWord.Beeps, ["silent"] = PinWord.Silent, ["no beep"] = PinWord.Silent, ["still"] = PinWord.Silent,
        ["kein Piepen"] = PinWord.Silent, ["clicks"] = PinWord.Clicks, ["klickt"] = PinWord.Clicks, ["bright"] = PinWord.Bright, ["hell"] = PinWord.Bright,
        ["dark"] = PinWord.Dark, ["dunkel"] = PinWord.Dark,
    };

    /// <returns>Null with a problem where it can't be understood, or names a pin that is not there.</returns>
    public static (PinTest Test, PinValue Value)? Parse(string text, PinPuzzle puzzle, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(puzzle);
        var match = Written().Match(text.Trim());
        problem = match.Success ? null : new Message("pins.bad-reading", text);
        if (problem is not null || (problem = Unknown(match, puzzle)) is not null)
        {
            return null;
        }

        var setting = Setting(match.Groups["setting"].Value);
        PinPower? power = match.Groups["plus"].Success ? new PinPower(match.Groups["plus"].Value, match.Groups["minus"].Value) : null;
        var test = new PinTest(setting, match.Groups["first"].Value, Name(match.Groups["second"].Value), power);
        if (Value(match.Groups["value"].Value.Trim(), setting) is not { } value)
        {
            problem = new Message("pins.bad-reading", text);
            return null;
        }

        return (test, value);
    }

    private static Message? Unknown(Match match, PinPuzzle puzzle)
    {
        var named = new[] { "first", "second", "plus", "minus" }.Select(n => match.Groups[n]).Where(g => g.Success).Select(g => Name(g.Value)).ToList();
        return named.Find(n => n != PinTest.Body && !puzzle.Pins.Contains(n)) is { } unknown
            ? new Message("pins.no-pin", unknown, string.Join(", ", puzzle.Pins))
            : named[0] == named[1] || named.Distinct().Count() != named.Count ? new Message("pins.same-pin", named[0]) : null;
    }

    private static string Name(string pin) => string.Equals(pin, PinTest.Body, StringComparison.OrdinalIgnoreCase) ? PinTest.Body : pin;

    private static PinSetting Setting(string word) => word.ToUpperInvariant() switch
    {
        "OHMS" or "OHM" => PinSetting.Ohms,
        "BEEP" => PinSetting.Continuity,
        "DIODE" => PinSetting.Diode,
        "VOLTS" => PinSetting.Volts,
        _ => PinSetting.Power,
    };

    private static PinValue? Value(string text, PinSetting setting)
    {
        if (setting is PinSetting.Continuity or PinSetting.Power)
        {
            return Words.TryGetValue(text, out var word) && (word is PinWord.Beeps or PinWord.Silent) == (setting == PinSetting.Continuity)
                ? PinValue.Of(word)
                : null;
        }

        if (string.Equals(text, "OL", StringComparison.OrdinalIgnoreCase))
        {
            return setting == PinSetting.Volts ? null : PinValue.Of(double.PositiveInfinity);
        }

        return TypedQuantity.Read(text, setting == PinSetting.Ohms ? Quantity.Ohms : Quantity.Volts) is { } number && (number >= 0 || setting != PinSetting.Ohms)
            ? PinValue.Of(number)
            : null;
    }

    [GeneratedRegex(
        @"^(?<setting>ohms?|beep|diode|volts|power)\s+(?<first>\S+)\s+(?<second>\S+)(\s+with\s+(?<plus>\S+)\s+(?<minus>\S+))?\s*=\s*(?<value>.+)$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
