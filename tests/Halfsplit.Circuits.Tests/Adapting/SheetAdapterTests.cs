using System.Text.RegularExpressions;
using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Adapting;

public sealed class SheetAdapterTests
{
    /// <summary>Changes that are possible on shipped sheets.</summary>
    public static TheoryData<string, string> Possible => new()
    {
        { "pump-feed", "title = Pump feed of a van" },
        { "pump-feed", "id K2 = R12" },
        { "pump-feed", "id ECU = ECM" },
        { "pump-feed", "id BAT = B1" },
        { "pump-feed", "name Fuel pump = Main fuel pump in the tank" },
        { "pump-feed", "place K2 = boot side, 4 min" },
        { "pump-feed", "place k2 = under the bonnet, 2 min" },
        { "pump-feed", "place K2 = spare wheel well, unknown" },
        { "pump-feed", "slot K2 = R7" },
        { "pump-feed", "slot K2 = unknown" },
        { "pump-feed", "price M1 = 90 to 240" },
        { "pump-feed", "open tank = 40 min" },
        { "pump-feed", "colour K2.87~C1.2a = GN/WH" },
        { "pump-feed", "colour K2.87~C1.2a = unknown" },
        { "pump-feed", "gauge K2.87~C1.2a = 14AWG" },
        { "pump-feed", "gauge K2.87~C1.2a = about 1.5 mm2" },
        { "pump-feed", "gauge K2.87~C1.2a = unknown" },
        { "pump-feed", "length C1.2 to K2.87 = 12ft" },
        { "pump-feed", "length K2.87~C1.2a = about 3,5 m" },
        { "pump-feed", "length K2~C1 = unknown" },
        { "pump-feed", "connector C7 in K2.87~C1.2a at rear seat after 40 % named Sill plug" },
        { "pump-feed", "connector in K2.87~C1.2a" },
        { "pump-feed", "splice SP2 in C3~G2 at under the carpet, 6 min" },
        { "pump-feed", "without relay K1 despite the amps" },
        { "pump-feed", "without relay K2 despite the amps" },
        { "pump-feed", "relay K9 before M1 at boot side named Second pump relay" },
        { "pump-feed", "relay before INJ1" },
        { "pump-feed", "ground side M1" },
        { "pump-feed", "ground side L1" },
        { "cooling-fan", "id FAN = M7" },
        { "cooling-fan", "without relay K7 despite the amps" },
        { "cooling-fan", "relay K9 before FAN" },
        { "cooling-fan", "ground side HORN" },
        { "cooling-fan", "connector in FSP~C8.1a after 50 %" },
        { "headlamps", "without relay K8 despite the amps" },
        { "headlamps", "without relay K9 despite the amps" },
        { "headlamps", "relay before LH.56b" },
        { "headlamps", "relay before PL at left wing" },
        { "horn", "without relay K7 despite the amps" },
        { "horn", "ground side HH" },
        { "horn", "relay before WP" },
        { "horn", "id S1 = S9" },
    };

    public static TheoryData<string, string, string> Impossible => new()
    {
        { "pump-feed", "slot K22 = R7", "adapt.no-part" },
        { "pump-feed", "length K2.88~C1.2a = 3m", "adapt.no-wire" },
        { "pump-feed", "length G2~K2 = 3m", "adapt.no-wire" },
        { "pump-feed", "gauge MP~ECU = 900mm2", "adapt.refused-by-lint" },
        { "pump-feed", "colour K2.87~C1.2a = XY", "adapt.bad-colour" },
        { "pump-feed", "place K2 = bootside", "adapt.new-place" },
        { "pump-feed", "open cellar = 3 min", "adapt.no-place" },
        { "pump-feed", "id K2 = K1", "adapt.id-taken" },
        { "pump-feed", "id K2 = wire", "sheet.bad-part-name" },
        { "pump-feed", "id BODY = SHELL", "adapt.body-keeps-name" },
        { "pump-feed", "connector M1 in K2.87~C1.2a", "adapt.id-taken" },
        { "pump-feed", "connector in K2.87~C1.2a after 100 %", "adapt.bad-share" },
        { "pump-feed", "without relay F19", "adapt.no-relay" },
        { "pump-feed", "relay before F19", "adapt.no-load" },
        { "headlamps", "relay before LH", "adapt.which-terminal" },
        { "headlamps", "ground side PL", "adapt.contact-shared" },
        { "headlamps", "ground side LH.56b", "adapt.one-ground-for-two" },
        { "pump-feed", "ground side INJ1", "adapt.feeds-more" },
        { "cooling-fan", "ground side FAN", "adapt.feeds-more" },
        { "cooling-fan", "without relay K6", "adapt.feeds-more" },
        { "headlamps-ground-side", "without relay K1", "adapt.relay-ground-side" },
        { "headlamps-ground-side", "without relay K2", "adapt.relay-breaks" },
        { "pump-feed", "without relay K1", "adapt.over-limit" },
        { "pump-feed", "without relay K2", "adapt.over-limit" },
        { "horn", "without relay K7", "adapt.over-limit" },
        { "power-window", "without relay K1", "adapt.over-limit" },
        { "accessory-socket", "without relay K75", "adapt.over-limit" },
        { "seat-heater", "without relay K1", "adapt.over-limit" },
        { "split-charge", "without relay K1", "adapt.relay-on-generator" },
        { "split-charge", "without relay K2 despite the amps", "adapt.relay-on-generator" },
        { "pump-feed", "slot F19 = B8", "adapt.slot-taken-free" },
        { "motorcycle-start", "slot F2 = 3", "adapt.slot-taken" },
        { "split-charge", "slot K1 = R2", "adapt.slot-none-free" },
        { "horn", "ground side CL", "adapt.already-ground-side" },
        { "horn", "name horn = Tooter", "adapt.no-part" },
    };

    [Theory]
    [MemberData(nameof(Possible))]
    public void A_possible_change_leaves_a_valid_sheet_and_its_parent_as_it_was(string sheet, string text)
    {
        var parent = ShippedSheets.Load(sheet);
        var before = CircuitDump.Of(parent);
        var done = Adapted.One(parent, text);

        Assert.Equal(before, CircuitDump.Of(parent));
        Assert.NotEmpty(CircuitDifference.Between(parent, done.Circuit!));
        Assert.All(done.Assumptions.Concat(done.Warnings), m => Assert.DoesNotContain(m.Code, Adapted.Texts.Say(m), StringComparison.Ordinal));
        Assert.Equal(parent.Complaints.Length, done.Circuit!.Complaints.Length);
    }

    [Theory]
    [MemberData(nameof(Impossible))]
    public void An_impossible_change_is_refused_with_the_way_to_mend_it(string sheet, string text, string code)
    {
        var problem = Adapted.Refused(sheet, text);

        Assert.Equal(code, problem.Code);
        Assert.DoesNotContain(code, Adapted.Texts.Say(problem), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("slot K22 = R7", "\"K2\"")]
    [InlineData("name Feul pump = x", "\"Fuel pump\"")]
    [InlineData("length K2.78~C1.2a = 3m", "\"K2.87~C1.2a\"")]
    [InlineData("place K2 = boot sied", "\"boot side\"")]
    public void What_is_misspelt_gets_a_hint(string text, string hint)
    {
        Assert.Contains($"Did you mean {hint}?", Adapted.Texts.Say(Adapted.Refused("pump-feed", text)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("M1", "P1")]
    [InlineData("ECU", "ECM")]
    [InlineData("IGN", "Q1")]
    [InlineData("S1", "Crash")]
    [InlineData("ENG", "BLOCK")]
    [InlineData("C1", "X14")]
    public void A_renamed_part_has_its_new_name_everywhere(string old, string present)
    {
        var parent = ShippedSheets.Load("pump-feed");
        var circuit = Adapted.One(parent, $"id {old} = {present}").Circuit!;

        Assert.DoesNotMatch(new Regex($@"(?<![\w-]){old}(?![\w-])"), SheetWriter.Write(circuit));
        var difference = Assert.Single(CircuitDifference.Between(parent, circuit));
        Assert.Equal("diff.part-renamed", difference.Code);
        Assert.Equal(parent.Wires.Length, circuit.Wires.Length);
    }

    [Theory]
    [InlineData("colour K2.87~C1.2a = unknown", "adapt.assumed-colour")]
    [InlineData("gauge K2.87~C1.2a = unknown", "adapt.assumed-gauge")]
    [InlineData("length K2.87~C1.2a = ?", "adapt.assumed-length")]
    [InlineData("slot K2 = unknown", "adapt.assumed-slot")]
    [InlineData("place K2 = unknown", "adapt.assumed-same-place")]
    [InlineData("place K2 = lorry bed, unknown", "adapt.assumed-minutes")]
    [InlineData("price K2 = unknown", "adapt.assumed-price")]
    [InlineData("name K2 = unknown", "adapt.assumed-name")]
    [InlineData("open tank = unknown", "adapt.assumed-minutes-stay")]
    public void What_is_not_known_is_assumed_and_said(string text, string code) =>
        Assert.Contains(Adapted.One(ShippedSheets.Load("pump-feed"), text).Assumptions, a => a.Code == code);

    [Fact]
    public void Unknown_values_of_a_wire_stay_and_are_marked_as_guesses()
    {
        var wire = Wire(Adapted.Of("pump-feed", "gauge K2~C1 = unknown", "length K2~C1 = unknown", "colour K2~C1 = unknown"), "K2.87~C1.2a");

        Assert.Equal((2.5, 2.8, "2.8m", null), (wire.Gauge.SquareMillimetres, wire.Length, wire.LengthWritten, wire.Colour));
        Assert.True(wire is { GaugeGuessed: true, LengthGuessed: true });
        var known = Wire(Adapted.Of("pump-feed", "gauge K2~C1 = unknown", "gauge K2~C1 = 4mm2"), "K2.87~C1.2a");
        Assert.False(known.GaugeGuessed);
    }

    [Fact]
    public void A_load_in_fuel_keeps_its_caution_wherever_it_is_said_to_be()
    {
        var circuit = Adapted.Of("pump-feed", "name M1 = Pumpe", "place M1 = Tankraum, 8 min");

        Assert.Contains("fuel vapour", circuit["M1"].Notes.Cautions);
        Assert.Empty(Adapted.Of("pump-feed", "place C3 = rear seat")["C3"].Notes.Cautions);
    }

    [Fact]
    public void A_path_that_a_relay_divides_stays_whole_on_both_sides()
    {
        var paths = Adapted.Of("pump-feed", "relay K9 before M1").Paths.Select(SheetWriter.Path).ToList();

        Assert.Contains(paths, p => p.StartsWith("K2.87 -> ", StringComparison.Ordinal) && p.EndsWith(" -> S1 -> wire 2.5mm2 about 4m YE/RD -> K9.86", StringComparison.Ordinal));
        Assert.Contains("K9.87 -> wire 2.5mm2 about 4m YE/RD -> C3.4 -> M1.pos", paths);
    }

    [Fact]
    public void A_connector_divides_its_wire_by_the_share()
    {
        var circuit = Adapted.Of("pump-feed", "connector C7 in K2.87~C1.2a at rear seat after 25 %");

        var (before, behind) = (Wire(circuit, "K2.87~C7.1a"), Wire(circuit, "C7.1b~C1.2a"));
        Assert.Equal(("0.7m", "2.1m"), (before.LengthWritten, behind.LengthWritten));
        Assert.False(before.LengthGuessed || behind.LengthGuessed);
        Assert.Equal(("YE", "YE"), (before.Colour, behind.Colour));
        Assert.Equal("rear seat", circuit["C7"].Notes.Place);
        Assert.Equal(["1"], circuit.Cavities("C7"));
    }

    [Fact]
    public void Where_nobody_knows_the_share_both_pieces_are_guesses()
    {
        var circuit = Adapted.Of("cooling-fan", "splice SP2 in K6~FSP");

        Assert.True(Wire(circuit, "K6.87~SP2").LengthGuessed && Wire(circuit, "SP2~FSP").LengthGuessed);
        Assert.Equal("radiator", circuit["SP2"].Notes.Place);
    }

    [Fact]
    public void Without_its_relay_a_load_takes_the_place_of_the_coil()
    {
        var circuit = Adapted.Of("pump-feed", "without relay K2 despite the amps");

        Assert.Null(circuit.Find("K2"));
        Assert.DoesNotContain(circuit.Wires, w => w.Id.Contains("K2", StringComparison.Ordinal));
        // The wire that only fed the coil is gone; the output now bears the pump.
        Assert.DoesNotContain(circuit.Wires, w => w.From == new TerminalName("MP") && w.Spec.Colour == "BU/BK");
        var output = ((Module)circuit["ECU"]).Outputs.Single(o => o.Name == "pump-drive");
        Assert.True(output.LimitAmps > 5.5);
    }

    [Fact]
    public void What_only_a_coil_needed_goes_with_its_relay()
    {
        var circuit = Adapted.Of("pump-feed", "without relay K1 despite the amps");

        Assert.Null(circuit.Find("G1"));
        Assert.NotNull(circuit.Find("F11"));
        Assert.NotNull(circuit.Find("MAIN"));
    }

    [Fact]
    public void Fuses_and_wires_that_were_chosen_for_a_coil_are_taken_as_larger()
    {
        var circuit = Adapted.Of("headlamps", "without relay K8 despite the amps");

        Assert.Equal(15, ((Fuse)circuit["F26"]).RatingAmps);
        var wire = circuit.Wires.Single(w => w.From == new TerminalName("LS", "56b")).Spec;
        Assert.Equal(1.5, wire.Gauge.SquareMillimetres);
        Assert.True(wire.GaugeGuessed);
    }

    [Fact]
    public void Loads_behind_switches_and_outputs_count_for_the_fuse_that_fed_the_coil()
    {
        var windows = Adapted.Of("power-window", "without relay K1 despite the amps");
        Assert.True(((Fuse)windows["F3"]).RatingAmps >= 16);

        var outlets = Adapted.Of("accessory-socket", "without relay K75 despite the amps");
        Assert.True(((Fuse)outlets["F75"]).RatingAmps >= 12);
    }

    [Fact]
    public void A_battery_isolator_switches_no_load()
    {
        var circuit = Adapted.Of("starter-24v", "ground side WL");

        Assert.Contains(circuit.Wires, w => w.From == new TerminalName("C5", "2a") && w.To == new TerminalName("WLS", "2"));
        Assert.Contains(circuit.Wires, w => w.From == new TerminalName("WLS", "1") && w.To == new TerminalName("G2"));
    }

    [Fact]
    public void New_wires_are_as_long_as_their_places_are_apart()
    {
        var circuit = Adapted.Of("trailer-7pin", "relay K9 before TFG at trailer front");

        var feed = circuit.Wires.Single(w => w.To == new TerminalName("K9", "30")).Spec;
        var apart = circuit.FindPlace("trailer front")!.Reach - circuit.FindPlace(circuit[circuit.Wires.Single(w => w.Spec == feed).From.Part].Notes.Place)!.Reach;
        Assert.True(apart > 3);
        Assert.InRange(feed.Length, apart, apart + 2);
        Assert.True(feed.LengthGuessed);
    }

    [Fact]
    public void Before_a_thin_switch_bears_a_load_its_amps_and_limit_are_said()
    {
        var said = Adapted.Texts.Say(Adapted.Refused("horn", "without relay K7"));

        Assert.Contains("S1", said, StringComparison.Ordinal);
        Assert.Contains("5 A", said, StringComparison.Ordinal);
        Assert.Contains("despite the amps", said, StringComparison.Ordinal);
        Assert.Contains("1 A at most", Adapted.Texts.Say(Adapted.Refused("pump-feed", "without relay K2")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_taken_slot_is_refused_with_the_free_ones_and_can_be_freed_first()
    {
        var said = Adapted.Texts.Say(Adapted.Refused("pump-feed", "slot K2 = 11"));

        Assert.Contains("F11", said, StringComparison.Ordinal);
        Assert.Contains("R1, R2, R3, R5, 13, 14", said, StringComparison.Ordinal);
        var swapped = Adapted.Of("pump-feed", "slot F11 = unknown", "slot F12 = 11", "slot F11 = 12");
        Assert.Equal(("12", "11"), (swapped["F11"].Notes.Slot, swapped["F12"].Notes.Slot));
    }

    /// <summary>A slot's name means a hole of its own box.</summary>
    [Fact]
    public void A_part_that_moves_to_another_box_has_no_slot_there_until_one_is_said()
    {
        var done = Adapted.One(ShippedSheets.Load("horn"), "place F6 = kick panel");
        Assert.Null(done.Circuit!["F6"].Notes.Slot);
        Assert.Contains(done.Assumptions, a => a.Code == "adapt.assumed-slot");
        Assert.Equal("9", Adapted.Of("horn", "place F6 = kick panel", "slot F6 = 9")["F6"].Notes.Slot);

        var stays = Adapted.One(ShippedSheets.Load("horn"), "place F6 = engine bay box, 2 min");
        Assert.Equal("6", stays.Circuit!["F6"].Notes.Slot);
    }

    [Theory]
    [InlineData("pink", "PK")]
    [InlineData("schwarz", "BK")]
    [InlineData("red with white stripe", "RD/WH")]
    [InlineData("gelb/schwarz", "YE/BK")]
    [InlineData("yebk", "YEBK")]
    public void A_colour_is_understood_as_a_table_of_wires_has_it(string said, string code)
    {
        var circuit = Adapted.Of("pump-feed", $"colour K2~C1 = {said}");
        Assert.Equal(code, Wire(circuit, "K2.87~C1.2a").Colour);
    }

    [Fact]
    public void Changes_are_made_one_after_another_until_one_is_refused()
    {
        var parent = ShippedSheets.Load("pump-feed");
        string[] texts = ["connector C7 in K2~C1 at boot side", "colour K2~C7 = RD", "slot C8 = 1"];
        var good = SheetAdapter.Apply(parent, texts.Take(2).Select(Adapted.Change));
        var bad = SheetAdapter.Apply(parent, texts.Select(Adapted.Change));

        Assert.Equal("RD", Wire(good.Circuit!, "K2.87~C7.1a").Colour);
        Assert.Equal("adapt.no-part", bad.Problem!.Code);
    }

    private static PathWire Wire(Circuit circuit, string id) => circuit.Wires.Single(w => w.Id == id).Spec;
}
