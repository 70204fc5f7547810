namespace Halfsplit.Bench.Answers;

/// <summary>What a number of an answer counts.</summary>
public enum Unit
{
    Ohm,
    Volt,
    Amp,
    Watt,
    Metre,
    SquareMillimetre,
    Celsius,
    Kelvin,
    Percent,
    RevolutionsPerMinute,
    Hertz,
    Second,
    OhmPerMetre,
    WattPerMetre,

    /// <summary>A bare number: bars of a commutator, how many measurements.</summary>
    Count,
}
