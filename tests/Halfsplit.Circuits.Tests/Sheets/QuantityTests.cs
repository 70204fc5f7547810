using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

/// <summary>Numbers with units, as people write them.</summary>
public sealed class QuantityTests
{
    [Theory]
    [InlineData("85 ohm", 85)]
    [InlineData("85ohm", 85)]
    [InlineData("85 ohms", 85)]
    [InlineData("85 Ω", 85)]
    [InlineData("0,8 ohm", 0.8)]
    [InlineData("\"0,8 ohm\"", 0.8)]
    [InlineData(".8 ohm", 0.8)]
    [InlineData("8e-1 ohm", 0.8)]
    [InlineData("+85 ohm", 85)]
    [InlineData("0.3 mohm", 0.0003)]
    [InlineData("3 mΩ", 0.003)]
    [InlineData("1.2 kohm", 1200)]
    [InlineData("1,2 kΩ", 1200)]
    [InlineData("4.7 Mohm", 4.7e6)]
    [InlineData("85 OHM", 85)]
    public void Ohms(string written, double ohms)
    {
        // In a list or map in braces a comma separates, so a decimal comma needs a line of its own or quotes.
        var relay = (Relay)Part($"K9:\n    kind: relay\n    coil: {written}");
        Assert.Equal(ohms, relay.CoilOhms);
    }

    [Theory]
    [InlineData("10mm2 1m", 10, 1, "1m")]
    [InlineData("2,5mm2 4,2m", 2.5, 4.2, "4.2m")]
    [InlineData("2.5 mm² 420 cm", 2.5, 4.2, "420cm")]
    [InlineData("1.5mm^2 800mm", 1.5, 0.8, "800mm")]
    [InlineData("1sqmm 10ft", 1, 3.048, "10ft")]
    [InlineData("1mm2 6in", 1, 0.1524, "6in")]
    public void Wires_in_millimetres(string written, double area, double metres, string length)
    {
        var wire = Wire($"wire {written} RD");
        Assert.Equal(area, wire.Gauge.SquareMillimetres);
        Assert.Equal(metres, wire.Length, 1e-12);
        Assert.Equal(length, wire.LengthWritten);
        Assert.Null(wire.Gauge.Awg);
    }

    // AWG areas: the published definition, four digits.
    [Theory]
    [InlineData("14AWG", 14, 2.081)]
    [InlineData("14 AWG", 14, 2.081)]
    [InlineData("20awg", 20, 0.5176)]
    [InlineData("1/0AWG", 0, 53.49)]
    [InlineData("4/0 AWG", -3, 107.2)]
    public void Wires_in_awg(string written, int awg, double area)
    {
        var wire = Wire($"wire {written} 6ft RD");
        Assert.Equal(awg, wire.Gauge.Awg);
        Assert.Equal(1, wire.Gauge.SquareMillimetres / area, 5e-4);
        Assert.Equal(1.8288, wire.Length, 1e-12);
    }

    [Fact]
    public void A_wire_says_its_colour_name_and_place_in_that_order()
    {
        var wire = Wire("wire 1mm2 1m ye/bk as W7 in fuse box");
        Assert.Equal(("YE/BK", "W7", "fuse box"), (wire.Colour, wire.Name, wire.Place));
        Assert.Equal("W7", Read("  - S1 -> wire 1mm2 1m as W7 -> L1\n", "wiring").Wires[^1].Id);
    }

    [Theory]
    [InlineData("5.5 A at 13 V", 5.5, 13)]
    [InlineData("5500 mA at 13V", 5.5, 13)]
    [InlineData("5.5 A", 5.5, 12)]
    public void Ratings_hold_at_some_volts(string written, double amps, double volts)
    {
        var motor = (Motor)Part($"M1: {{ kind: motor, runs: {written} }}");
        Assert.Equal((amps, volts), (motor.RunAmps, motor.RunVolts));
    }

    [Theory]
    [InlineData("10 V to 15 V", 10, 15)]
    [InlineData("10 to 15 V", 10, 15)]
    [InlineData("12 V", 12, 12)]
    public void Ranges(string written, double low, double high) =>
        Assert.Equal(new ValueRange(low, high), ((Load)Part($"L9: {{ kind: lamp, watts: 5 W, works: {written} }}")).WorksVolts);

    [Theory]
    [InlineData("4 min", 4)]
    [InlineData("30 s", 0.5)]
    [InlineData("1 h", 60)]
    public void Minutes(string written, double minutes) =>
        Assert.Equal(minutes, Read($"  boot: {{ open: {written} }}\n", "places").FindPlace("boot")!.OpenMinutes, 1e-12);

    [Theory]
    [InlineData("2 s", 2)]
    [InlineData("500 ms", 0.5)]
    [InlineData("1 min", 60)]
    public void Seconds(string written, double seconds) =>
        Assert.Equal(seconds, Read($"  x: {{ lasts: {written} }}\n", "conditions").FindCondition("x")!.LastsSeconds);

    [Fact]
    public void A_sheet_reads_the_same_under_any_culture()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        var expected = CircuitDump.Of(ShippedSheets.Load("pump-feed"));
        try
        {
            foreach (var name in new[] { "tr-TR", "de-DE", "fa-IR" })
            {
                System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo(name);
                var circuit = ShippedSheets.Load("pump-feed");
                Assert.Equal(expected, CircuitDump.Of(circuit));
                Assert.Equal(expected, CircuitDump.Of(SheetReader.Read(SheetWriter.Write(circuit)).Circuit!));
            }
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }

    private static PathWire Wire(string item) => Read($"  - S1 -> {item} -> L1\n", "wiring").Wires[^1].Spec;

    private static Part Part(string lines) => Read($"  {lines}\n", "parts")[lines[..lines.IndexOf(':', StringComparison.Ordinal)]];

    private static Circuit Read(string addition, string section)
    {
        var sheet = MarkedSheet.Add(section, "§" + addition.Trim());
        var reading = SheetReader.Read(sheet.Text);
        Assert.Empty(reading.Problems);
        return reading.Circuit!;
    }
}
