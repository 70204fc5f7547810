using System.Collections.Immutable;
using Halfsplit.Diagnosis.Pins;

namespace Halfsplit.Diagnosis.Tests.Pins;

/// <summary>
/// A relay on the bench, wired up pin by pin, with a meter on it: what the search for its pins is tested with. It follows the circuit
/// alone, and none of what the search expects.
/// </summary>
/// <param name="Plus">Where a diode across the coil wants plus; null without one.</param>
/// <param name="CoilOhms">Infinite for an open coil.</param>
/// <param name="Closed">Pairs that touch: at rest, and pulled in.</param>
internal sealed record RealRelay(
    ImmutableArray<string> Pins, string Roles, string CoilA, string CoilB, string? Plus, double CoilOhms,
    ImmutableArray<(string A, string B, bool AtRest, bool PulledIn)> Closed)
{
    private const double LeadOhms = 0.24;

    public static ImmutableArray<string> FourPins { get; } = ["make", "make with resistor", "make with diode", "break"];

    public static ImmutableArray<string> FivePins { get; } = ["changeover", "changeover with diode", "twin", "double"];

    public static IEnumerable<string> Kinds => [.. FourPins, .. FivePins];

    /// <summary>The seed says which pin is which.</summary>
    public static RealRelay Of(string kind, int seed, ImmutableArray<string> pins = default)
    {
        pins = pins.IsDefault ? FourPins.Contains(kind) ? ["1", "2", "3", "4"] : ["1", "2", "3", "4", "5"] : pins;
        var mixed = pins.ToArray();
        new Random(seed).Shuffle(mixed);
        var (a, b, c, d) = (mixed[0], mixed[1], mixed[2], mixed[3]);
        var plus = kind.EndsWith("diode", StringComparison.Ordinal) ? a : null;
        var (coilA, coilB) = plus is null ? ("coil", "coil") : ("coil-plus", "coil-minus");
        // A resistor of 680 Ω beside a coil of 95 Ω.
        var ohms = kind.EndsWith("resistor", StringComparison.Ordinal) ? 95 * 680 / (95.0 + 680) : 95;
        var (rest, names) = kind switch
        {
            "break" => (ImmutableArray.Create((c, d, true, false)), new Dictionary<string, string> { [c] = "break", [d] = "break" }),
            // Two outputs joined inside, and two of their own: of those nothing tells which pin is common.
            "twin" => ([(c, d, false, true), (d, mixed[4], true, true)], new() { [c] = "common", [d] = "make", [mixed[4]] = "make" }),
            "double" => ([(c, d, false, true), (c, mixed[4], false, true)], new() { [c] = "make", [d] = "make", [mixed[4]] = "make" }),
            _ when kind.StartsWith("changeover", StringComparison.Ordinal) =>
                ([(c, d, false, true), (c, mixed[4], true, false)], new() { [c] = "common", [d] = "make", [mixed[4]] = "break" }),
            _ => ([(c, d, false, true)], new() { [c] = "make", [d] = "make" }),
        };
        names[a] = coilA;
        names[b] = coilB;
        return new RealRelay(
            pins, string.Join(", ", pins.Order(StringComparer.Ordinal).Select(p => $"{p} {names[p]}")), a, b, plus, ohms, rest);
    }

    public PinValue Read(PinTest test)
    {
        var isIn = test.Power is { } power && Pulls(power.Plus, power.Minus);
        var ohms = Ohms(test.First, test.Second, isIn);
        return test.Setting switch
        {
            PinSetting.Power => PinValue.Of(
                ohms < 5 || (IsCoil(test.First, test.Second) && Plus == test.Second) ? PinWord.Bright : Pulls(test.First, test.Second) ? PinWord.Clicks : PinWord.Dark),
            PinSetting.Continuity => PinValue.Of(ohms < 30 ? PinWord.Beeps : PinWord.Silent),
            PinSetting.Diode => PinValue.Of(double.IsPositiveInfinity(ohms) ? ohms : 1e-3 * ohms),
            _ => PinValue.Of(ohms),
        };
    }

    private bool IsCoil(string first, string second) => (first, second) == (CoilA, CoilB) || (second, first) == (CoilA, CoilB);

    private bool Pulls(string plus, string minus) => IsCoil(plus, minus) && double.IsFinite(CoilOhms) && (Plus is null || Plus == plus);

    /// <summary>Through contacts that touch, however many, or through the coil.</summary>
    private double Ohms(string first, string second, bool isIn)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal) { first };
        for (var grown = true; grown;)
        {
            grown = false;
            foreach (var (a, b, atRest, pulledIn) in Closed.Where(c => isIn ? c.PulledIn : c.AtRest))
            {
                grown |= (reached.Contains(a) && reached.Add(b)) || (reached.Contains(b) && reached.Add(a));
            }
        }

        return reached.Contains(second) ? LeadOhms : IsCoil(first, second) ? CoilOhms + LeadOhms : double.PositiveInfinity;
    }
}
