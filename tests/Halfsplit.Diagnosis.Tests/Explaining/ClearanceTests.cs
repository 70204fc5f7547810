using System.Globalization;
using Halfsplit.Diagnosis.Explaining;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Explaining;

public sealed class ClearanceTests
{
    private const string Posts = "volts BAT.pos BAT.neg | key off";
    private const string Unloaded = "volts C3.4b BODY | key on; remove K2; jumper K2.30,K2.87";

    private static ResistanceLimit Feed(Clearance clearance) =>
        Assert.Single(clearance.NotCleared, l => l.Stretches.Any(s => s.To == "C3.4b"));

    [Fact]
    public void Battery_volts_on_an_unloaded_feed_leave_about_eight_kilohms()
    {
        var investigation = Readings.Of("pump-feed", "M1:open", "work of M1 | priming", Posts, Unloaded);
        var limit = Feed(investigation.ClearanceOf("2")!);

        // The divider: 12.57 V over the meter's 10 MΩ, and the sheet's leak of 1 GΩ at each terminal behind the joint. One count
        // of a 6000 count display is 10 mV there.
        var stretch = limit.Stretches.Single(s => s.To == "C3.4b");
        var nodes = stretch.Branches.SelectMany(b => new[] { investigation.Network.Branches[b].From, investigation.Network.Branches[b].To })
            .Distinct().Count();
        var amps = (12.57 / 10e6) + (nodes * 12.57 / 1e9);
        Assert.False(limit.IsLoaded);
        Assert.InRange(limit.Amps, 0, 1e-4);
        Assert.Equal(0.01 / amps, limit.SameOhms!.Value, 0.06 * limit.SameOhms!.Value);
        Assert.InRange(limit.SameOhms!.Value, 6500, 8300);
        Assert.Contains(investigation.ClearanceOf("2")!.Reasons, r => r.Code == "clearance.unloaded");
    }

    [Theory]
    [InlineData("F19.2")]
    [InlineData("S1.2~C3.4a")]
    public void A_car_with_just_under_the_limit_shows_the_same_and_one_with_twice_as_much_does_not(string joint)
    {
        var investigation = Readings.Of("pump-feed", "M1:open", "work of M1 | priming", Posts, Unloaded);
        var limit = Feed(investigation.ClearanceOf("2")!).SameOhms!.Value;
        var without = Readings.Number("pump-feed", Unloaded, "M1:open");
        string Joint(double ohms) => string.Create(CultureInfo.InvariantCulture, $"{joint}:resistive:{ohms}");

        Assert.Contains(joint, investigation.ClearanceOf("2")!.NotCleared.SelectMany(l => l.Stretches).SelectMany(s => s.Targets));
        Assert.DoesNotContain("K2", investigation.ClearanceOf("2")!.NotCleared.SelectMany(l => l.Stretches).SelectMany(s => s.Targets));
        Assert.InRange(without - Readings.Number("pump-feed", Unloaded, "M1:open", Joint(0.9 * limit)), 0, 0.0101);
        Assert.True(without - Readings.Number("pump-feed", Unloaded, "M1:open", Joint(2 * limit)) > 0.0101);
    }

    [Fact]
    public void A_drop_under_load_leaves_milliohms()
    {
        const string Drop = "volts F1.2p F19.1p | key on";
        var clearance = Readings.Of("pump-feed", "M1:open", "work of M1 | priming", Posts, Drop).ClearanceOf("2")!;

        var limit = Assert.Single(clearance.Proven, l => l.Stretches.Any(s => s.Targets.Contains("K1")));
        Assert.True(limit.IsLoaded);
        Assert.InRange(limit.Amps, 1, 2);
        Assert.InRange(limit.HiddenOhms, 0.001, 0.05);
        Assert.DoesNotContain(clearance.NotCleared, l => l.Stretches.Any(s => s.Targets.Contains("K1")));
        // Far over the limit the drop is another one.
        var with = Readings.Number("pump-feed", Drop, "M1:open", "K1:contact-resistive:0.2");
        Assert.True(with - Readings.Number("pump-feed", Drop, "M1:open") > 0.1);
    }

    [Fact]
    public void A_beep_leaves_some_tens_of_ohms()
    {
        var clearance = Readings.Of(
            "pump-feed", "M1:open", "work of M1 | priming", Posts, "continuity C3.3a BODY | key off; unplug C3").ClearanceOf("2")!;

        var limit = Assert.Single(clearance.NotCleared, l => l.Stretches.Any(s => s.Targets.Contains("C3.3a~G2")));
        Assert.InRange(limit.Ohms, 30, 100);
        Assert.Contains(clearance.Reasons, r => r.Code == "clearance.beep");
    }

    [Fact]
    public void A_click_judges_no_contacts()
    {
        var clearance = Readings.Of("pump-feed", "M1:open", "work of M1 | priming", Posts, "click of K2 | priming").ClearanceOf("2")!;

        Assert.Equal("clearance.click", clearance.Reasons[0].Code);
        Assert.Contains(clearance.Cleared, m => m.Suspect.Id == "K2 coil open");
        Assert.DoesNotContain(clearance.Cleared, m => m.Suspect.Id == "K2 contact open");
    }

    [Fact]
    public void What_is_cleared_fell_because_of_the_reading()
    {
        var clearance = Readings.Of("pump-feed", "M1:open", "work of M1 | priming", Posts, "work of L1 | key on").ClearanceOf("2")!;

        Assert.Contains(clearance.Cleared, m => m.Suspect.Id == "G2 open");
        Assert.All(clearance.Cleared, m => Assert.True(m.Before >= 0.005 && m.After < m.Before / 4));
    }

    [Fact]
    public void A_silent_load_clears_no_resistance_and_what_is_no_reading_has_no_clearance()
    {
        var investigation = Readings.Of("pump-feed", "M1:open", "work of M1 | priming");
        var clearance = investigation.ClearanceOf("0")!;

        Assert.Empty(clearance.NotCleared);
        Assert.Empty(clearance.Proven);
        Assert.Null(investigation.ClearanceOf("7"));
    }

    [Fact]
    public void A_reading_that_fits_no_likely_car_proves_nothing()
    {
        var investigation = Readings.Of("pump-feed", "M1:open", "work of M1 | priming", Posts, "work of L1 | key on", Unloaded);
        var slipped = investigation.FindCheck("volts F1.2p F19.1p | key on")!;
        // No current flows that way: not even a joint that comes and goes shows this.
        investigation.Record("slip", slipped, new ReadingParse.Number(-4.2, Quantity.Volts, 0.01));

        var clearance = investigation.ClearanceOf("slip")!;
        Assert.Equal("clearance.in-doubt", Assert.Single(clearance.Reasons).Code);
        Assert.Empty(clearance.Proven);
        Assert.Empty(clearance.NotCleared);
    }
}
