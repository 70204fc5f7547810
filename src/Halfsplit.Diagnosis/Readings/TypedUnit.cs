using System.Collections.Frozen;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>A typed unit: <c>mV</c>, <c>kilohms</c>, <c>M</c>, <c>A</c>, <c>%</c>, or nothing.</summary>
/// <param name="Quantity">Null where only a prefix, or nothing, was typed.</param>
/// <param name="Exponent">The power of ten of the prefix; for percent -2.</param>
/// <param name="HasPrefix">Whether a prefix was typed.</param>
/// <param name="LetterM">Whether the prefix was the bare letter m or M, whose case people don't mind.</param>
/// <param name="Alternating">Whether the unit says alternating current.</param>
internal readonly record struct TypedUnit(
    Quantity? Quantity, int Exponent, bool HasPrefix, bool LetterM, bool Alternating)
{
    private static readonly FrozenDictionary<string, Quantity> Names = new Dictionary<string, Quantity>
    {
        ["v"] = Readings.Quantity.Volts,
        ["volt"] = Readings.Quantity.Volts,
        ["volts"] = Readings.Quantity.Volts,
        ["Ω"] = Readings.Quantity.Ohms,
        ["r"] = Readings.Quantity.Ohms,
        ["ohm"] = Readings.Quantity.Ohms,
        ["ohms"] = Readings.Quantity.Ohms,
        ["a"] = Readings.Quantity.Amperes,
        ["amp"] = Readings.Quantity.Amperes,
        ["amps"] = Readings.Quantity.Amperes,
        ["ampere"] = Readings.Quantity.Amperes,
        ["amperes"] = Readings.Quantity.Amperes,
        ["%"] = Readings.Quantity.Duty,
        ["percent"] = Readings.Quantity.Duty,
        ["pct"] = Readings.Quantity.Duty,
    }.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase);

    private static readonly (string Text, int Exponent)[] PrefixWords =
        [("micro", -6), ("milli", -3), ("kilo", 3), ("mega", 6), ("kil", 3), ("meg", 6)];

    /// <summary>Reads a unit; null where it is none that a meter shows.</summary>
    public static TypedUnit? Read(string text)
    {
        var unit = text.Replace(" ", "", StringComparison.Ordinal).TrimEnd('.');
        if (unit.Length == 0) return default(TypedUnit);
        if (Named(unit, 0, false) is { } plain) return plain;

        foreach (var (word, exponent) in PrefixWords)
        {
            if (!unit.StartsWith(word, StringComparison.OrdinalIgnoreCase)) continue;
            if (Prefixed(unit[word.Length..], exponent, false) is { } spelled) return spelled;
        }

        return unit[0] switch
        {
            'k' or 'K' => Prefixed(unit[1..], 3, false),
            'm' => Prefixed(unit[1..], -3, true),
            'M' => Prefixed(unit[1..], 6, true),
            'u' or 'U' or 'µ' => Prefixed(unit[1..], -6, false),
            _ => null,
        };
    }

    private static TypedUnit? Prefixed(string name, int exponent, bool letterM) =>
        name.Length == 0 ? new TypedUnit(null, exponent, true, letterM, false) : Named(name, exponent, letterM);

    private static TypedUnit? Named(string name, int exponent, bool letterM)
    {
        var prefixed = exponent != 0;
        if (Names.TryGetValue(name, out var quantity))
        {
            if (quantity == Readings.Quantity.Duty) return prefixed ? null : new TypedUnit(quantity, -2, false, false, false);
            return new TypedUnit(quantity, exponent, prefixed, letterM, false);
        }

        // "V DC" and "VAC", either way round, as the dial has it.
        var alternating = Current(name, "ac", out var bare);
        if (!alternating && !Current(name, "dc", out bare)) return null;
        return Names.TryGetValue(bare, out quantity) && quantity is Readings.Quantity.Volts or Readings.Quantity.Amperes
            ? new TypedUnit(quantity, exponent, prefixed, letterM, alternating)
            : null;
    }

    private static bool Current(string name, string kind, out string bare)
    {
        bare = name;
        if (name.Length <= kind.Length) return false;
        if (name.EndsWith(kind, StringComparison.OrdinalIgnoreCase)) bare = name[..^kind.Length];
        else if (name.StartsWith(kind, StringComparison.OrdinalIgnoreCase)) bare = name[kind.Length..];
        else return false;
        return true;
    }
}
