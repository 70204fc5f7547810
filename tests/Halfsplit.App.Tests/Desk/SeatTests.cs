using Halfsplit.App.Showing;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.App.Tests.Desk;

/// <summary>Where a part sits that is looked at, with no lead to show it.</summary>
public sealed class SeatTests
{
    private static readonly Circuit Lamps = ShippedSheets.Load("headlamps");

    private static Check Look(string part) => Check.Create(
        CheckKind.Look, CheckSubject.FuseLook, new Arrangement("key off"), new Probe(Instrument.Eye, null, null, part));

    [Fact]
    public void A_fuse_to_look_at_is_shown_in_its_box()
    {
        var seat = LeadViews.Seat(Lamps, Look("F22"));

        Assert.NotNull(seat);
        Assert.Contains("middle row, second from the left", seat.Where, StringComparison.Ordinal);
        Assert.Contains("data-part=\"F22\"", seat.Picture, StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_in_no_described_box_has_none() => Assert.Null(LeadViews.Seat(Lamps, Look("LH")));

    [Fact]
    public void Where_a_lead_goes_its_own_picture_is_enough() => Assert.Null(LeadViews.Seat(Lamps, Check.Create(
        CheckKind.Reading, CheckSubject.Number, new Arrangement("key off"), new Probe(Instrument.Volts, new TerminalName("F22", "1p"), new TerminalName("BAT", "neg")))));
}
