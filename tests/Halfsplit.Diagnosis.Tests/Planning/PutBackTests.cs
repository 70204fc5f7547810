using System.Collections.Immutable;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Simulation.Arrangements;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

/// <summary>What has to be put back follows from how the car stands.</summary>
public sealed class PutBackTests
{
    private static readonly Circuits.Model.Circuit Pump = ShippedSheets.Load("pump-feed");

    private static Position Standing(Arrangement arrangement, params string[] opened) => new(
        arrangement with { Opened = [.. opened] }, null, null);

    [Fact]
    public void A_car_that_nobody_touched_needs_only_a_last_look() =>
        Assert.Equal(["last-look"], PutBack.ListOf(Pump, Position.Start(Pump), Handled.Nothing).Select(i => i.Id));

    [Fact]
    public void Jumpers_relays_connectors_and_places_come_back_in_that_order()
    {
        var place = Pump.Places.First(p => p.OpenMinutes > 0);
        var stands = Standing(
            new Arrangement("key on").Remove("K2").Remove("F19").Unplug("C3").WithJumper(new("K2", "30"), new("K2", "87")), place.Name);

        var list = PutBack.ListOf(Pump, stands, Handled.Nothing);

        Assert.Equal(
            ["condition", "jumper-off K2.30 K2.87", "refit F19", "refit K2", "plug C3", $"close {place.Name}", "last-look"],
            list.Select(i => i.Id));
        Assert.Equal(place.OpenMinutes / 2, list.Single(i => i.Id.StartsWith("close", StringComparison.Ordinal)).Minutes, 6);
        Assert.Equal(PutBack.MinutesOf(Pump, stands), list.Sum(i => i.Minutes), 6);
    }

    [Fact]
    public void A_fuse_is_named_with_its_rating_whether_it_is_still_out_or_back_already()
    {
        var handled = Handled.Nothing with { Removed = ["F19"], Unplugged = ["C3"], CodesMayBeSet = true, BatteryLifted = true };
        var rating = ((Circuits.Model.Fuse)Pump["F19"]).RatingAmps;

        var out_ = PutBack.ListOf(Pump, Standing(new Arrangement("key off").Remove("F19")), handled);
        var back = PutBack.ListOf(Pump, Position.Start(Pump), handled);

        Assert.Contains(rating, out_.Single(i => i.Id == "refit F19").Text.Arguments);
        Assert.Contains(rating, back.Single(i => i.Id == "seated F19").Text.Arguments);
        Assert.Equal(["seated F19", "latched C3", "battery-clamp", "codes", "last-look"], back.Select(i => i.Id));
        Assert.All(out_.Concat(back), i => Assert.False(string.IsNullOrWhiteSpace(new Circuits.Messages.TextCatalog(Circuits.Messages.Language.English, DiagnosisTexts.Source).Say(i.Text))));
    }
}
