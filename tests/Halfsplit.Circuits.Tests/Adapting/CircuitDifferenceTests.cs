using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Adapting;

public sealed class CircuitDifferenceTests
{
    public static TheoryData<string> Sheets => [.. ShippedSheets.Names];

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_circuit_differs_from_itself_in_nothing(string name)
    {
        var circuit = ShippedSheets.Load(name);

        Assert.Empty(CircuitDifference.Between(circuit, SheetReader.Read(SheetWriter.Write(circuit)).Circuit!));
    }

    [Fact]
    public void Every_kind_of_difference_is_told_in_words()
    {
        var parent = ShippedSheets.Load("pump-feed");
        var circuit = Adapted.Of(
            "pump-feed", "id K2 = K5", "name K5 = Relay of the pump", "place K5 = sill, 6 min", "slot K5 = 9", "price M1 = 80 to 120",
            "colour K5~C1 = GN", "gauge K5~C1 = about 4mm2", "length K5~C1 = 3m", "splice SP7 in C3~G2 at tank after 50 %", "title = Van");

        Assert.Equal(
            [
                "K2 is now called K5.",
                "title: Pump feed through a main relay and a pump relay -> Van",
                "New place sill: { open: 6 min }",
                "K5, name: Pump relay -> Relay of the pump",
                "K5, place: kick panel -> sill",
                "K5, slot: R4 -> 9",
                "M1, price: nothing -> 80 to 120",
                "New part SP7: { kind: splice, place: tank }",
                "K5.87~C1.2a, gauge: 2.5mm2 -> about 4mm2",
                "K5.87~C1.2a, length: 2.8m -> 3m",
                "K5.87~C1.2a, colour: YE -> GN",
                "Path gone: M1.neg -> C3.3 -> wire 2.5mm2 1.2m BK -> G2",
                "New path: M1.neg -> C3.3 -> wire 2.5mm2 0.6m BK -> SP7 -> wire 2.5mm2 0.6m BK -> G2",
            ],
            CircuitDifference.Between(parent, circuit).Where(m => m.Arguments is not ["K2", ..] || m.Code == "diff.part-renamed").Select(Adapted.Texts.Say));
    }

    [Fact]
    public void Sheets_of_different_cars_can_be_compared()
    {
        var differences = CircuitDifference.Between(ShippedSheets.Load("headlamps"), ShippedSheets.Load("horn"));

        Assert.Contains(differences, d => d.Code == "diff.complaint-removed");
        Assert.Contains(differences, d => d.Code == "diff.condition-added");
        Assert.Contains(differences, d => d.Code == "diff.path-added");
    }
}
