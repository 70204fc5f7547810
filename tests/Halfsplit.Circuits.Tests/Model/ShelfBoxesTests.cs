using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Model;

/// <summary>The fuse and relay boxes of the shelf, and where their slots are as the person stands before them.</summary>
public sealed class ShelfBoxesTests
{
    private static readonly TextCatalog English = new(Language.English, CircuitTexts.Source), German = new(Language.German, CircuitTexts.Source);

    /// <summary>Holders of one or two: there is nothing to count.</summary>
    private static readonly (string Sheet, string Place)[] NoBoxes =
        [("motorcycle-start", "left side cover"), ("motorcycle-start", "seat"), ("glow-plugs", "relay bracket"), ("split-charge", "battery tray")];

    public static TheoryData<string> Names => [.. ShippedSheets.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_slot_of_a_box_is_found_in_its_grid(string name)
    {
        var circuit = ShippedSheets.Load(name);

        Assert.All(circuit.Parts.Where(p => p.Notes.Slot is not null && !NoBoxes.Contains((name, p.Notes.Place ?? ""))), p =>
        {
            Assert.NotNull(SlotWords.Seat(circuit, p));
            Assert.False(string.IsNullOrEmpty(circuit.FindPlace(p.Notes.Place)!.Grid!.Seen));
        });
    }

    [Fact]
    public void No_two_cars_have_the_same_box()
    {
        var boxes = ShippedSheets.Names.SelectMany(n => ShippedSheets.Load(n).Places.Where(p => p.Grid is not null).Select(p => string.Join('|', p.Grid!.Rows.Select(r => string.Join(' ', r))))).ToList();

        Assert.Equal(boxes.Count, boxes.Distinct(StringComparer.Ordinal).Count());
    }

    // Upside down: seen from below, the slot with the lowest number is on the right. In the door pillar: a narrow column.
    [Theory]
    [InlineData("blower-resistor", "F1", "top row, on the far right", "obere Reihe, ganz rechts", "lying")]
    [InlineData("blower-resistor", "F4", "top row, fourth from the right", "obere Reihe, vierte Stelle von rechts", "lying")]
    [InlineData("rear-window-heater", "K4", "top row, on the far left", "obere Reihe, ganz links", "lying")]
    [InlineData("rear-window-heater", "F8", "bottom row, on the far left", "untere Reihe, ganz links", "lying")]
    [InlineData("pump-oil-pressure", "F13", "top row, in the middle", "obere Reihe, in der Mitte", "lying")]
    [InlineData("trailer-13pin", "F15", "third from the right", "dritte Stelle von rechts", "lying")]
    [InlineData("wipers", "F4", "second row from the top, on the right", "zweite Reihe von oben, rechts", "door open")]
    [InlineData("wipers", "K2", "bottom row, on the right", "unterste Reihe, rechts", "door open")]
    [InlineData("ignition-coil", "F12", "top row, on the right", "oberste Reihe, rechts", "door open")]
    [InlineData("fan-one-relay", "F12", "second from the top", "zweite Stelle von oben", "door open")]
    [InlineData("truck-tail-lamps-24v", "F22", "bottom row, second from the left", "unterste Reihe, zweite Stelle von links", "step")]
    [InlineData("daytime-lamps", "K2", "on the right", "rechts", "front of the car")]
    public void A_slot_is_where_the_person_sees_it_however_the_box_hangs(string sheet, string part, string english, string german, string seen)
    {
        var circuit = ShippedSheets.Load(sheet);
        var found = circuit.Find(part)!;
        var seat = SlotWords.Say(SlotWords.Seat(circuit, found)!.Value);

        Assert.Equal(english, English.Say(seat));
        Assert.Equal(german, German.Say(seat));
        Assert.Contains(seen, circuit.FindPlace(found.Notes.Place)!.Grid!.Seen, StringComparison.Ordinal);
    }
}
