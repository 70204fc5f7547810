using Halfsplit.Bench.Batteries;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Answers;

/// <summary>Inputs that are more than one number.</summary>
public static class TypedInputs
{
    /// <summary>Volts at amps, such as <c>12.5@5</c>; null where it is not that.</summary>
    public static LoadedVolts? Loaded(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split('@');
        return parts.Length == 2 && TypedQuantity.Read(parts[0], Quantity.Volts) is { } volts && TypedQuantity.Read(parts[1], Quantity.Amperes) is { } amps
            ? new LoadedVolts(volts, amps)
            : null;
    }

    /// <summary>Two voltages with a comma between, such as <c>12.4,0.1</c>; decimal commas need a semicolon: <c>12,4;0,1</c>. Null where it is not that.</summary>
    public static (double First, double Second)? TwoVolts(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var parts = text.Split(text.Contains(';', StringComparison.Ordinal) ? ';' : ',');
        return parts.Length == 2 && TypedQuantity.Read(parts[0], Quantity.Volts) is { } first && TypedQuantity.Read(parts[1], Quantity.Volts) is { } second
            ? (first, second)
            : null;
    }
}
