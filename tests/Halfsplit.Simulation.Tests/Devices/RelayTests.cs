using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Devices;

public sealed class RelayTests
{
    private static SmallSheet Coil(string battery, string contacts = "make", string suppression = "none") => SmallSheet.Of(
        $"""
        BAT: {"{"} kind: battery, rests at: {battery}, internal resistance: 0.0001 ohm {"}"}
        S1: {"{"} kind: switch {"}"}
        K1: {"{"} kind: relay, coil: 85 ohm, pulls in: 7 V, drops out: 2 V, contacts: {contacts}, suppression: {suppression} {"}"}
        R1: {"{"} kind: resistor, ohms: 85 ohm {"}"}
        H1: {"{"} kind: heater, watts: 60 W at 12 V {"}"}
        """,
        """
        BAT.pos -> S1 -> K1.86
        BAT.pos -> R1 -> K1.86
        K1.85 -> BODY
        BAT.pos -> K1.30
        K1.87 -> H1 -> BODY
        """,
        """
        off: {}
        on: { after: off, S1: on }
        held: { after: on }
        """);

    [Fact]
    public void It_pulls_in_at_one_voltage_and_holds_at_a_lower_one()
    {
        // The resistor as large as the coil leaves it 6 V: too little to pull in, enough to hold.
        var sheet = Coil("12 V");

        Assert.False(sheet.In("off").IsPulledIn("K1"));
        Assert.True(sheet.In("on").IsPulledIn("K1"));
        Assert.True(sheet.In("held").IsPulledIn("K1"), "6 V hold what 6 V do not pull in");
        Assert.Equal(6.0, sheet.In("held").Across("K1.86p", "K1.85p"), 2);
    }

    [Fact]
    public void Its_contacts_follow()
    {
        var sheet = Coil("12 V");

        Assert.Equal(5.0, sheet.In("on").AmpsOf("H1"), 1);
        Assert.Equal(0.0, sheet.In("off").AmpsOf("H1"), 3);
        Assert.Equal(0.0, sheet.In("on", "K1:stuck").AmpsOf("H1"), 3);
        Assert.Equal(5.0, sheet.In("off", "K1:welded").AmpsOf("H1"), 1);
        Assert.True(sheet.In("on", "K1:contact-open").IsPulledIn("K1"), "it clicks all the same");
        Assert.Equal(0.0, sheet.In("on", "K1:contact-open").AmpsOf("H1"), 3);
        Assert.Equal(12.0 / (2.4 + 0.6), sheet.In("on", "K1:contact-resistive:0.6").AmpsOf("H1"), 1);
    }

    [Theory]
    [InlineData("changeover", "off", false, true)]
    [InlineData("changeover", "on", true, false)]
    [InlineData("break", "off", false, true)]
    [InlineData("break", "on", false, false)]
    public void Changeover_and_break_contacts_close_at_rest(string contacts, string condition, bool make, bool rest)
    {
        var made = contacts == "break" ? "" : "K1.87 -> H1 -> BODY";
        var sheet = SmallSheet.Of(
            $"""
            S1: {"{"} kind: switch {"}"}
            K1: {"{"} kind: relay, contacts: {contacts} {"}"}
            H1: {"{"} kind: heater, watts: 60 W at 12 V {"}"}
            H2: {"{"} kind: heater, watts: 60 W at 12 V {"}"}
            """,
            $"""
            BAT.pos -> S1 -> K1.86
            K1.85 -> BODY
            BAT.pos -> K1.30
            K1.87a -> H2 -> BODY
            {(made.Length > 0 ? made : "BAT.pos -> H1 -> BODY")}
            """,
            "off: {}\non: { S1: on }");
        var point = sheet.In(condition);

        if (contacts != "break")
        {
            Assert.Equal(make, point.AmpsOf("H1") > 4);
        }

        Assert.Equal(rest, point.AmpsOf("H2") > 4);
    }

    [Fact]
    public void A_relay_that_cuts_its_own_coil_chatters_and_says_so()
    {
        var sheet = SmallSheet.Of(
            """
            K1: { kind: relay, contacts: changeover }
            H1: { kind: heater, watts: 5 W at 12 V }
            """,
            """
            BAT.pos -> K1.30
            K1.87a -> K1.86
            K1.85 -> BODY
            K1.87 -> H1 -> BODY
            """);
        var point = sheet.In();

        Assert.False(point.IsSteady);
        Assert.Equal(["K1"], point.Chatter);
    }

    [Fact]
    public void A_fuse_melts_although_another_part_chatters()
    {
        const string Chattering = """
            BAT.pos -> K1.30
            K1.87a -> K1.86
            K1.85 -> BODY
            K1.87 -> H1 -> BODY
            BAT.pos -> F1 -> H2 -> BODY
            """;
        static string Parts(string heater) => $$"""
            K1: { kind: relay, contacts: changeover }
            H1: { kind: heater, watts: 5 W at 12 V }
            F1: { kind: fuse, rating: 5 A }
            H2: { kind: heater, watts: {{heater}} at 12 V }
            """;

        var overloaded = SmallSheet.Of(Parts("600 W"), Chattering).In();
        Assert.Equal(["F1"], overloaded.BlownFuses);
        Assert.Equal(["K1"], overloaded.Chatter);
        Assert.Empty(SmallSheet.Of(Parts("30 W"), Chattering).In().BlownFuses);
    }

    [Fact]
    public void A_contact_that_chatters_on_a_short_melts_its_fuse()
    {
        var point = SmallSheet.Of(
            """
            K1: { kind: relay, contacts: changeover }
            F1: { kind: fuse, rating: 5 A }
            H1: { kind: heater, watts: 600 W at 12 V }
            """,
            """
            BAT.pos -> K1.30
            K1.87a -> K1.86
            K1.85 -> BODY
            K1.87 -> F1 -> H1 -> BODY
            """).In();

        Assert.Equal(["F1"], point.BlownFuses);
    }

    [Fact]
    public void A_coil_reads_in_parallel_with_its_suppression_resistor()
    {
        // Published datasheet of a plug-in relay: 76 ohm coil with 680 ohm inside reads 68 ohm at its pins.
        var sheet = SmallSheet.Of(
            "K1: { kind: relay, coil: 76 ohm, suppression: resistor 680 ohm }\nS1: { kind: switch }",
            "BAT.pos -> S1 -> K1.86\nK1.85 -> BODY\nBAT.pos -> K1.30\nK1.87 -> BODY",
            "off: {}");
        var read = sheet.Reading(new Arrangement("off").Remove("K1"), Instrument.Ohms, "K1.86p", "K1.85p");

        Assert.Equal(68.4, read.SourceOhms, 1);
    }

    [Fact]
    public void A_suppression_diode_the_wrong_way_round_shorts_the_coil()
    {
        // A switch reverses the coil's feed, as a motor reversing circuit might.
        var sheet = SmallSheet.Of(
            """
            F1: { kind: fuse, rating: 5 A }
            S1: { kind: switch, positions: { right: [1-3, 2-4], wrong: [1-4, 2-3] }, rest: right }
            K1: { kind: relay, suppression: diode }
            H1: { kind: heater, watts: 5 W at 12 V }
            """,
            """
            BAT.pos -> F1 -> wire 1mm2 1m RD -> S1.1
            S1.2 -> wire 1mm2 1m BN -> BODY
            S1.3 -> K1.86
            S1.4 -> K1.85
            BAT.pos -> K1.30
            K1.87 -> H1 -> BODY
            """,
            "right: {}\nwrong: { S1: wrong }");

        // The car lives through all conditions, so its fuse is gone for good once the diode has conducted.
        Assert.Contains("F1", sheet.Simulator.Blown([]));
        Assert.Contains("F1", sheet.In("wrong").BlownFuses);
    }
}
