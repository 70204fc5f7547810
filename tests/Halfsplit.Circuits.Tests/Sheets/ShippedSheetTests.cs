using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

public sealed class ShippedSheetTests
{
    public static TheoryData<string> Names() => [.. ShippedSheets.Names];

    [Fact]
    public void The_shelf_is_full()
    {
        Assert.InRange(ShippedSheets.Names.Length, 24, int.MaxValue);
        Assert.InRange(ShippedSheets.Names.Count(n => ShippedSheets.Load(n).Battery.NominalVolts == 24), 2, int.MaxValue);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Shipped_sheets_lint_clean(string name)
    {
        var reading = SheetReader.Read(ShippedSheets.Text(name)!);
        Assert.Empty(reading.Problems);
        Assert.Empty(CircuitLint.Check(reading.Circuit!, reading.Positions));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Shipped_sheets_round_trip(string name)
    {
        var circuit = ShippedSheets.Load(name);
        var written = SheetWriter.Write(circuit);
        var again = SheetReader.Read(written);
        Assert.Empty(again.Problems);
        Assert.Equal(CircuitDump.Of(circuit), CircuitDump.Of(again.Circuit!));
        Assert.Equal(written, SheetWriter.Write(again.Circuit!));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_part_has_a_plain_name_and_a_place(string name)
    {
        foreach (var part in ShippedSheets.Load(name).Parts.Where(p => p is not Battery && p.Id != Metal.Body))
        {
            Assert.False(string.IsNullOrEmpty(part.Notes.Name), part.Id);
            Assert.NotNull(part.Notes.Place);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_sheet_has_complaints_straps_and_a_way_through_its_conditions(string name)
    {
        var circuit = ShippedSheets.Load(name);
        Assert.NotEmpty(circuit.Complaints);
        Assert.Contains(circuit.Wires, w => w.From == new TerminalName("BODY") || w.To == new TerminalName("BODY"));
        Assert.Contains(circuit.Wires, w => w.From == new TerminalName("BAT", "neg") || w.To == new TerminalName("BAT", "neg"));
        Assert.All(circuit.Conditions.Skip(1), c => Assert.NotNull(c.After));
        Assert.Contains(circuit.Places, p => p.Cautions.Length > 0);
    }

    [Fact]
    public void A_name_that_is_not_shipped_gives_no_text()
    {
        Assert.Null(ShippedSheets.Text("hovercraft"));
        Assert.Throws<KeyNotFoundException>(() => ShippedSheets.Load("hovercraft"));
    }
}
