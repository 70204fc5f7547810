using CsCheck;
using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Adapting;

public sealed class RandomChangesTests
{
    private const int Kinds = 15;

    private static readonly string[] Sheets = ["pump-feed", "cooling-fan", "headlamps", "horn", "headlamps-ground-side", "starter", "trailer-7pin"];

    private static readonly Gen<(int Kind, int What, int How)[]> Steps = Gen.Select(Gen.Int[0, Kinds - 1], Gen.Int[0, 999], Gen.Int[0, 99]).Array[1, 6];

    [Fact]
    [Trait("Pace", "slow")]
    public void No_sequence_of_changes_makes_an_invalid_sheet()
    {
        var (made, refused) = (0, 0);
        Gen.Select(Gen.Int[0, Sheets.Length - 1].Select(i => Sheets[i]), Steps).Sample(
            (sheet, steps) =>
            {
                var circuit = ShippedSheets.Load(sheet);
                foreach (var step in steps)
                {
                    var change = Change(circuit, step.Kind, step.What, step.How);
                    var done = SheetAdapter.Apply(circuit, change);
                    if (done.Circuit is null)
                    {
                        Assert.DoesNotContain(done.Problem!.Code, Adapted.Texts.Say(done.Problem), StringComparison.Ordinal);
                        refused++;
                        continue;
                    }

                    Adapted.IsValid(done.Circuit);
                    circuit = done.Circuit;
                    made++;
                }
            },
            iter: 25, threads: 1);
        Assert.True(made > refused, $"{made} changes made, {refused} refused");
    }

    /// <summary>A change of some kind to something of the circuit; some name nothing or are impossible.</summary>
    private static SheetChange Change(Circuit circuit, int kind, int what, int how)
    {
        var part = circuit.Parts[what % circuit.Parts.Length].Id;
        var wire = circuit.Wires[what % circuit.Wires.Length].Id;
        var loads = circuit.Parts.OfType<Load>().ToList();
        var load = loads[what % loads.Count];
        var fed = load.Terminals.Length > 2 ? $"{load.Id}.{load.Terminals[how % (load.Terminals.Length - 1)]}" : load.Id;
        var relays = circuit.Parts.OfType<Relay>().Select(r => r.Id).DefaultIfEmpty("K1").ToList();
        var place = (how % 4) switch
        {
            0 => new PlaceChoice("new place " + how, how),
            1 => new PlaceChoice("somewhere", null, MinutesUnknown: true),
            _ => circuit.Places.Length > 0 ? new PlaceChoice(circuit.Places[what % circuit.Places.Length].Name) : null,
        };
        double? share = how % 3 == 0 ? null : how / 100.0;
        return kind switch
        {
            0 => new RenamePart(part, "N" + how),
            1 => new NamePart(part, how % 5 == 0 ? null : "Name: " + how),
            2 => new PlacePart(part, place),
            3 => new SlotPart(part, how % 5 == 0 ? null : "slot #" + how),
            4 => new PricePart(part, how % 5 == 0 ? null : new ValueRange(how, 2 * how)),
            5 => new ColourWire(wire, how % 5 == 0 ? null : "YE/BK"),
            6 => new GaugeWire(wire, how % 5 == 0 ? null : new WireGauge(0.5 + (how / 10.0)), how % 2 == 0),
            7 => new LengthWire(wire, how % 5 == 0 ? null : $"{1 + how}cm", how % 2 == 0),
            8 => new InsertConnector(wire, null, null, place, share),
            9 => new InsertSplice(wire, how % 2 == 0 ? null : "S" + how, "Splice", place, share),
            10 => new RemoveRelay(relays[what % relays.Count], how % 4 != 0),
            11 => new AddRelay(fed, null, null, place),
            12 => new SwitchGroundSide(fed),
            13 => new OpenPlace(circuit.Places[what % circuit.Places.Length].Name, how),
            _ => new TitleSheet("Title: " + how),
        };
    }
}
