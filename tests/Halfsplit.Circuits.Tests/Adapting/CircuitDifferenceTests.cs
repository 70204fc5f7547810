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
                "Wire gone: C3.3a -> wire 2.5mm2 1.2m BK -> G2",
                "New wire: C3.3a -> wire 2.5mm2 0.6m BK -> SP7",
                "New wire: SP7 -> wire 2.5mm2 0.6m BK -> G2",
            ],
            CircuitDifference.Between(parent, circuit).Where(m => m.Arguments is not ["K2", ..] || m.Code == "diff.part-renamed").Select(Adapted.Texts.Say));
    }

    [Fact]
    public void Sheets_of_different_cars_can_be_compared()
    {
        var differences = CircuitDifference.Between(ShippedSheets.Load("headlamps"), ShippedSheets.Load("horn"));

        Assert.Contains(differences, d => d.Code == "diff.complaint-removed");
        Assert.Contains(differences, d => d.Code == "diff.condition-added");
        Assert.Contains(differences, d => d.Code == "diff.wire-added");
    }

    /// <summary>The same wiring, written in one long path or in two short ones, and one of them from its other end.</summary>
    [Fact]
    public void A_path_that_was_cut_or_turned_round_is_no_difference()
    {
        const string Long = "  - S1.3 -> wire 1mm2 1m -> F2 -> wire 1mm2 2m RD -> L1\n";
        const string Cut = "  - F2.1 -> wire 1mm2 1m -> S1.3\n  - F2.2 -> wire 1mm2 2m RD -> L1\n";
        static string Sheet(string wiring) => $$"""
            sheet: 1
            title: Lamp
            conditions:
              key off: {}
              lamp on: { S1: "on" }
            complaints:
              lamp dark: { load: L1, is: dead, in: lamp on }
            places:
              dashboard: { open: 2 min }
            parts:
              BAT: { kind: battery, place: dashboard }
              F1: { kind: fuse, rating: 10 A, place: dashboard }
              S1: { kind: switch, place: dashboard, terminals: [2, 3], positions: { off: [], "on": [2-3] } }
              F2: { kind: fuse, rating: 5 A, place: dashboard }
              L1: { kind: lamp, watts: 5 W at 12 V, place: dashboard }
            wiring:
              - BAT.pos -> F1 -> wire 1mm2 1m -> S1.2
            {{wiring.TrimEnd()}}
              - L1.2 -> wire 1mm2 1m -> BAT.neg
            """;

        Assert.Empty(CircuitDifference.Between(SheetReader.Read(Sheet(Long)).Circuit!, SheetReader.Read(Sheet(Cut)).Circuit!));
    }
}
