namespace Halfsplit.Circuits.Sheets.Quantities;

/// <summary>What a value can be at all, in the base unit; beyond is a slip of the pen.</summary>
internal readonly record struct Limits(double Low, double High)
{
    /// <summary>Supplies and ratings; a vehicle's low-voltage side stays below 60 V (ISO 6469-3 class A).</summary>
    public static Limits Volts { get; } = new(0.01, 60);

    /// <summary>Volts that may be nothing.</summary>
    public static Limits VoltsOrZero { get; } = new(0, 60);

    /// <summary>From an indicator to the largest starter.</summary>
    public static Limits Amps { get; } = new(0.0001, 3000);

    public static Limits AmpsOrZero { get; } = new(0, 3000);

    /// <summary>What fuses are made for.</summary>
    public static Limits FuseAmps { get; } = new(0.1, 1000);

    public static Limits Ohms { get; } = new(1e-5, 1e8);

    public static Limits Watts { get; } = new(0.01, 20_000);

    /// <summary>A minute's work to a working day.</summary>
    public static Limits Minutes { get; } = new(0, 480);

    public static Limits Seconds { get; } = new(0.01, 3600);

    /// <summary>Wires and leads.</summary>
    public static Limits Metres { get; } = new(0.001, 100);

    public static Limits Reach { get; } = new(0, 30);

    /// <summary>The lint judges the gauge; here only what is no wire at all.</summary>
    public static Limits SquareMillimetres { get; } = new(1e-6, 10_000);

    public static Limits Share { get; } = new(0, 1);

    public static Limits Celsius { get; } = new(-60, 300);

    public static Limits Kelvin { get; } = new(500, 10_000);

    public static Limits Price { get; } = new(0, 1_000_000);

    public bool Contains(double value) => value >= Low && value <= High;
}
