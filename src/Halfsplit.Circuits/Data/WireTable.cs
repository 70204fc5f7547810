using System.Collections.Immutable;

namespace Halfsplit.Circuits.Data;

/// <summary>What a copper wire of a given cross-section resists and bears (<c>data/wires.csv</c>).</summary>
public static class WireTable
{
    /// <summary>Resistivity of annealed copper at 20 °C, Ω·mm²/m (IACS, 1/58 rounded as 0.017241).</summary>
    public const double CopperResistivity = 0.017241;

    /// <summary>Temperature coefficient of annealed copper at 20 °C, per kelvin (IACS).</summary>
    public const double CopperTemperatureCoefficient = 0.00393;

    private static readonly ImmutableArray<DataRow> Rows = DataFile.Read("wires.csv");

    /// <summary>The cross-sections of the table, mm², thinnest first.</summary>
    public static ImmutableArray<double> SquareMillimetres { get; } = [.. Rows.Select(r => r.Number("square_mm"))];

    /// <summary>Those among them whose resistance IEC 60228 has.</summary>
    public static ImmutableArray<double> PublishedSquareMillimetres { get; } =
        [.. Rows.Where(r => r.Has("milliohm_per_m")).Select(r => r.Number("square_mm"))];

    /// <summary>Area to (resistance × area): near 0.0195 Ω·mm²/m everywhere, so it interpolates well.</summary>
    private static readonly TableCurve Resistivity = new(Rows.Where(r => r.Has("milliohm_per_m"))
        .Select(r => (r.Number("square_mm"), r.Number("milliohm_per_m") * 1e-3 * r.Number("square_mm"))));

    private static readonly TableCurve Bearable =
        new(Rows.Select(r => (Math.Log(r.Number("square_mm")), Math.Log(r.Number("bearable_amps")))), drawnOn: true);

    /// <summary>
    /// Ohms per metre of a stranded vehicle wire. At a standard cross-section this is the published maximum of
    /// IEC 60228 class 5; between them resistance times area is interpolated on area, outside it is held.
    /// </summary>
    /// <param name="squareMillimetres">Copper area, mm², above 0.</param>
    /// <param name="celsius">Temperature of the copper, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">The area is not above 0.</exception>
    public static double OhmsPerMetre(double squareMillimetres, double celsius = 20)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(squareMillimetres);
        var resistivity = Resistivity.At(squareMillimetres);
        return resistivity / squareMillimetres * (1 + CopperTemperatureCoefficient * (celsius - 20));
    }

    /// <summary>Ohms per metre of a solid annealed copper wire: the physical floor, and the basis of AWG tables.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The area is not above 0.</exception>
    public static double SolidOhmsPerMetre(double squareMillimetres, double celsius = 20)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(squareMillimetres);
        return CopperResistivity / squareMillimetres * (1 + CopperTemperatureCoefficient * (celsius - 20));
    }

    /// <summary>
    /// Copper area of an AWG number, mm², by the definition d = 0.127 mm · 92^((36 − n)/39). 1/0 to 4/0 are 0 to −3.
    /// </summary>
    public static double SquareMillimetresOfAwg(int awg)
    {
        var diameter = 0.127 * Math.Pow(92, (36 - awg) / 39.0);
        return Math.PI / 4 * diameter * diameter;
    }

    /// <summary>
    /// Amps a single wire bears for as long as one likes in free air at 30 °C, used to judge a fuse against the wire
    /// behind it. From memory of DIN VDE 0298-4 (0.75 mm² and up), common practice below: no published source was
    /// read, so a judgement near the limit is a warning, not a verdict.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The area is not above 0.</exception>
    public static double BearableAmps(double squareMillimetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(squareMillimetres);
        return Math.Exp(Bearable.At(Math.Log(squareMillimetres)));
    }
}
