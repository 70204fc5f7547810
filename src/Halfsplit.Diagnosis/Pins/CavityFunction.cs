using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What one cavity of a connector is for, and what a meter should show there.</summary>
/// <param name="Name">In a person's words: feed, ground, level sender.</param>
/// <param name="Volts">Against the body with the circuit switched on; null where it is not known.</param>
/// <param name="Ohms">To the body with the feed off; null where it is not known.</param>
public sealed partial record CavityFunction(string Name, ValueRange? Volts, ValueRange? Ohms)
{
    /// <summary>Reads <c>feed: 11-14 V</c>, <c>ground: 0-0.2 V 0-2 ohm</c>, <c>sender: 50..300 ohm</c>.</summary>
    /// <returns>Null with a problem where the text says nothing that can be measured.</returns>
    public static CavityFunction? Parse(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        var match = Written().Match(text.Trim());
        var (volts, ohms) = (Range(match, "volts"), Range(match, "ohms"));
        problem = match.Success && (volts ?? ohms) is not null && Orderly(volts) && Orderly(ohms) ? null : new Message("pins.bad-function", text);
        return problem is null ? new CavityFunction(match.Groups["name"].Value.Trim(), volts, ohms) : null;
    }

    private static bool Orderly(ValueRange? range) => range is not { } r || r.Low <= r.High;

    private static ValueRange? Range(Match match, string name) => match.Groups[name + "low"] is { Success: true } low
        ? new ValueRange(Number(low), match.Groups[name + "high"] is { Success: true } high ? Number(high) : Number(low))
        : null;

    private static double Number(Group group) => double.Parse(group.Value.Replace(',', '.'), CultureInfo.InvariantCulture);

    [GeneratedRegex(
        @"^(?<name>[^:]+):(\s*(?<voltslow>\d+([.,]\d+)?)(\s*(-|\.\.)\s*(?<voltshigh>\d+([.,]\d+)?))?\s*V\b)?(\s*(?<ohmslow>\d+([.,]\d+)?)(\s*(-|\.\.)\s*(?<ohmshigh>\d+([.,]\d+)?))?\s*(ohm|Ω))?\s*$",
        RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
