using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Halfsplit.Simulation.Faults;

/// <summary>One part and one way it fails: <c>G2:resistive:2</c>, <c>K1:coil-open</c>, <c>C3.4:open</c>.</summary>
/// <param name="Part">A part, a wire (<c>K2.87~C3.4a</c>), a connector cavity (<c>C3.4</c>), a socket terminal (<c>K2.30</c>) or a module's output (<c>ECU.pump-drive</c>).</param>
/// <param name="Mode">The way it fails, in kebab case.</param>
/// <param name="Severity">Ohms, volts or a ratio, as the mode says; null where the mode has no degree.</param>
public sealed record Fault(string Part, string Mode, double? Severity = null)
{
    public override string ToString() => Severity is { } severity
        ? string.Create(CultureInfo.InvariantCulture, $"{Part}:{Mode}:{severity:G6}")
        : $"{Part}:{Mode}";

    /// <summary>Reads <c>PART:MODE[:SEVERITY]</c>; the severity may carry m, k or M.</summary>
    public static bool TryParse(string? text, [NotNullWhen(true)] out Fault? fault)
    {
        fault = null;
        var pieces = (text ?? "").Split(':');
        if (pieces.Length is < 2 or > 3 || pieces[0].Length == 0 || pieces[1].Length == 0)
        {
            return false;
        }

        double? severity = null;
        if (pieces.Length == 3)
        {
            if (!TryParseSeverity(pieces[2], out var value))
            {
                return false;
            }

            severity = value;
        }

        fault = new Fault(pieces[0], pieces[1], severity);
        return true;
    }

    private static bool TryParseSeverity(string text, out double value)
    {
        var trimmed = text.Trim();
        var factor = trimmed.Length == 0 ? 1.0 : trimmed[^1] switch { 'm' => 1e-3, 'k' => 1e3, 'M' => 1e6, _ => 1.0 };
        if (factor != 1.0)
        {
            trimmed = trimmed[..^1];
        }

        var parsed = double.TryParse(trimmed.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out value);
        value *= factor;
        return parsed && double.IsFinite(value) && value >= 0;
    }
}
