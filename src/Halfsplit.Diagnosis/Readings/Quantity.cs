namespace Halfsplit.Diagnosis.Readings;

/// <summary>What a reading measures. Values are always in the SI unit named here.</summary>
public enum Quantity
{
    /// <summary>A direct voltage, in volts.</summary>
    Volts,

    /// <summary>A resistance, in ohms.</summary>
    Ohms,

    /// <summary>A direct current, in amperes.</summary>
    Amperes,

    /// <summary>The share of time an output is on, 0 to 1; typed and shown in percent.</summary>
    Duty,
}
