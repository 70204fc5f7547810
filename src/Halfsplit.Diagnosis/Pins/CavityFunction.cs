using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What one cavity of a connector is for, and what a meter should show there.</summary>
/// <param name="Name">In a person's words: feed, ground, level sender.</param>
/// <param name="Volts">Against the body with the circuit switched on; null where it is not known.</param>
/// <param name="Ohms">To the body with the feed off; null where it is not known.</param>
public sealed record CavityFunction(string Name, ValueRange? Volts, ValueRange? Ohms)
{
    /// <summary>Reads <c>feed: 11-14 V</c>, <c>ground: 0-0.2 V 0-2 ohm</c>, <c>sender: 50..300 ohm</c>.</summary>
    /// <returns>Null with a problem where the text says nothing that can be measured.</returns>
    public static CavityFunction? Parse(string text, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        problem = null;
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var name = colon < 0 ? "" : text[..colon].Trim();
        ValueRange? volts = null, ohms = null;
        var rest = colon < 0 ? "" : text[(colon + 1)..].Replace("..", "-", StringComparison.Ordinal).Trim();
        var fine = name.Length > 0 && rest.Length > 0;
        while (fine && rest.Length > 0)
        {
            if (Range(rest) is not var (range, unit, behind))
            {
                fine = false;
                break;
            }

            if (unit == "V" && volts is null)
            {
                volts = range;
            }
            else if (unit is "ohm" or "Ω" && ohms is null)
            {
                ohms = range;
            }
            else
            {
                fine = false;
            }

            rest = behind;
        }

        if (fine)
        {
            return new CavityFunction(name, volts, ohms);
        }

        problem = new Message("pins.bad-function", text);
        return null;
    }

    /// <summary><c>11-14 V</c> or <c>5 ohm</c> at the start of a text, and what stands behind it.</summary>
    private static (ValueRange Range, string Unit, string Behind)? Range(string text)
    {
        if (TypedQuantity.Number(text) is not var (low, behind))
        {
            return null;
        }

        var high = low;
        if (behind.StartsWith('-'))
        {
            if (TypedQuantity.Number(behind[1..]) is not var (end, unitOn))
            {
                return null;
            }

            (high, behind) = (end, unitOn);
        }

        var blank = behind.IndexOf(' ', StringComparison.Ordinal);
        return low < 0 || low > high ? null : (new ValueRange(low, high), blank < 0 ? behind : behind[..blank], blank < 0 ? "" : behind[blank..].TrimStart());
    }
}
