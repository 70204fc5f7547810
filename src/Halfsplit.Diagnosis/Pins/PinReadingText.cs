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

    private static readonly HashSet<string> BodyWords = new(StringComparer.OrdinalIgnoreCase) { PinTest.Body, "Karosserie", "Masse" };

    /// <returns>Null with a problem where it can't be understood, or names a pin that is not there.</returns>
    public static (PinTest Test, PinValue Value)? Parse(string text, PinPuzzle puzzle, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(puzzle);
        var match = Written().Match(text.Trim());
        problem = match.Success ? null : Bad(text, puzzle);
        if (problem is not null || (problem = Unknown(match, puzzle)) is not null)
        {
            return null;
        }

        var setting = Setting(match.Groups["setting"].Value);
        PinPower? power = match.Groups["plus"].Success ? new PinPower(Name(match.Groups["plus"].Value, puzzle), Name(match.Groups["minus"].Value, puzzle)) : null;
        var condition = match.Groups["condition"].Success ? match.Groups["condition"].Value : null;
        if (!Condition(puzzle, setting, ref condition, out problem))
        {
            return null;
        }

        if ((setting == PinSetting.Power || power is not null) && !puzzle.Offered.Any(t => t.Setting == PinSetting.Power || t.Power is not null))
        {
            problem = new Message("pins.no-power", text);
            return null;
        }

        var test = new PinTest(setting, Name(match.Groups["first"].Value, puzzle), Name(match.Groups["second"].Value, puzzle), power, condition);
        if (IsAgainstBody(puzzle) && (test.First == PinTest.Body || test.Second != PinTest.Body || setting is not (PinSetting.Ohms or PinSetting.Volts)))
        {
            problem = new Message("pins.only-body", text);
            return null;
        }

        if (Value(match.Groups["value"].Value.Trim(), setting) is not { } value)
        {
            problem = Bad(text, puzzle);
            return null;
        }

        if (setting == PinSetting.Volts && Math.Abs(value.Number ?? 0) > PinDefaults.Of("pin.most-volts"))
        {
            problem = new Message("pins.too-many-volts", text, new Figure(PinDefaults.Of("pin.most-volts"), "0"));
            return null;
        }

        return (test, value);
    }

    /// <summary>The condition as the puzzle writes it: the only one where none is said; for what is measured at rest, none.</summary>
    private static bool Condition(PinPuzzle puzzle, PinSetting setting, ref string? condition, out Message? problem)
    {
        var said = condition;
        var known = puzzle.Offered.Where(t => t.Setting == setting).Select(t => t.Condition).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        condition = said is null
            ? known.Count == 1 ? known[0] : null
            : known.Find(c => string.Equals(c, said, StringComparison.OrdinalIgnoreCase));
        problem = said is not null && condition is null ? new Message("pins.not-in", said, known.Count == 0 ? "–" : string.Join(", ", known))
            : said is null && known.Count > 1 ? new Message("pins.say-condition", string.Join(", ", known))
            : null;
        return problem is null;
    }

    private static Message? Unknown(Match match, PinPuzzle puzzle)
    {
        var named = new[] { "first", "second", "plus", "minus" }.Select(n => match.Groups[n]).Where(g => g.Success).Select(g => Name(g.Value, puzzle)).ToList();
        return named.Find(n => n != PinTest.Body && !puzzle.Pins.Contains(n)) is { } unknown
            ? new Message("pins.no-pin", unknown, string.Join(", ", puzzle.Pins))
            : named[0] == named[1] || named.Distinct().Count() != named.Count ? new Message("pins.same-pin", named[0]) : null;
    }

    /// <summary>What a reading that is not understood should look like here: a pin's has other forms than a cavity's.</summary>
    private static Message Bad(string text, PinPuzzle puzzle) => IsAgainstBody(puzzle)
        ? new Message("pins.bad-cavity-reading", text, puzzle.Offered.First(t => t.Setting == PinSetting.Volts).Id, puzzle.Offered.First(t => t.Setting == PinSetting.Ohms).Id)
        : new Message("pins.bad-reading", text);

    /// <summary>True for cavities in the car, which are told by volts and ohms against the body; nothing else means anything there.</summary>
    private static bool IsAgainstBody(PinPuzzle puzzle) => puzzle.Offered.All(t => t.Second == PinTest.Body);

    /// <summary>A pin as the puzzle writes it, the body in every language, or the word itself where neither is meant. Capitals matter only where two pins differ in nothing else.</summary>
    private static string Name(string said, PinPuzzle puzzle)
    {
        if (puzzle.Pins.Contains(said))
        {
            return said;
        }

        var near = puzzle.Pins.Where(p => string.Equals(p, said, StringComparison.OrdinalIgnoreCase)).ToList();
        return near.Count == 1 ? near[0] : BodyWords.Contains(said) ? PinTest.Body : said;
    }

    private static PinSetting Setting(string word) => word.ToUpperInvariant() switch
    {
        "OHMS" or "OHM" => PinSetting.Ohms,
        "BEEP" => PinSetting.Continuity,
        "DIODE" => PinSetting.Diode,
        "VOLTS" or "VOLT" or "SPANNUNG" => PinSetting.Volts,
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
        @"^(?<setting>ohms?|beep|diode|volts?|spannung|power)\s+(?<first>\S+)\s+(?<second>\S+)(\s+with\s+(?<plus>\S+)\s+(?<minus>\S+))?(\s+(in|bei)\s+(?<condition>[^=]+?))?\s*=\s*(?<value>.+)$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
