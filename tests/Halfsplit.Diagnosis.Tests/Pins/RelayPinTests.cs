using System.Collections.Immutable;
using CsCheck;
using Halfsplit.Diagnosis.Pins;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Pins;

public sealed class RelayPinTests
{
    private static readonly PinPuzzle Four = RelayPuzzle.Of("1", "2", "3", "4"), Five = RelayPuzzle.Of("30", "85", "86", "87", "87a");

    // Common practice: a four-pin relay has one pair that makes it click, and the others meet only while it is powered.
    [Fact]
    public void A_four_pin_relay_is_found_as_the_trade_does()
    {
        var search = Read(Four, "ohms 1 3 = OL", "ohms 2 4 = 85", "power 2 4 = clicks", "power 4 2 = clicks");

        Assert.Equal("1 make, 2 coil, 3 make, 4 coil", search.Settled?.Settles);
    }

    [Theory]
    [InlineData("power 2 4 = bright", "power 4 2 = clicks", "1 make, 2 coil-minus, 3 make, 4 coil-plus")]
    [InlineData("power 4 2 = bright", "power 2 4 = clicks", "1 make, 2 coil-plus, 3 make, 4 coil-minus")]
    public void A_diode_shows_under_power_and_which_way_round(string power, string reversed, string found) =>
        Assert.Equal(found, Read(Four, "ohms 2 4 = 92", "ohms 1 3 = OL", power, reversed).Settled?.Settles);

    // DIN 72552 as common practice has it: 30 common, 87 makes, 87a breaks, 85 and 86 the coil.
    [Fact]
    public void A_changeover_relay_is_found_with_the_names_printed_on_it()
    {
        var search = Read(
            Five, "ohms 85 86 = 76", "ohms 30 87a = 0.2", "power 85 86 = clicks", "power 86 85 = clicks", "ohms 30 87 with 85 86 = 0.2",
            "ohms 30 87a with 85 86 = OL");

        Assert.Equal("30 common, 85 coil, 86 coil, 87 make, 87a break", search.Settled?.Settles);
    }

    public static TheoryData<string, int> Relays => new(
        from relay in RealRelay.Kinds
        from pins in Enumerable.Range(0, 6)
        select new TheoryDataRow<string, int>(relay, pins));

    /// <summary>The relay is wired up by hand, and knows nothing of what the search expects.</summary>
    [Theory]
    [MemberData(nameof(Relays))]
    public void Whatever_relay_it_is_the_questions_asked_find_it(string kind, int seed)
    {
        var relay = RealRelay.Of(kind, seed);
        var search = PinSearch.Begin(RelayPuzzle.Of(relay.Pins));
        while (search.Next is { } next)
        {
            search = search.With(next, relay.Read(next));
            Assert.True(search.Readings.Length < 15, kind);
        }

        Assert.Equal(relay.Roles, search.Settled?.Settles);
    }

    [Fact]
    public void Odds_sum_to_one_and_the_order_of_readings_does_not_matter() => Gen.Select(
        Gen.Int[0, RealRelay.FivePins.Length - 1], Gen.Int[0, Five.Offered.Length - 1].Array[1, 6], Gen.Int[0, 1000]).Sample((kind, tests, seed) =>
        {
            var relay = RealRelay.Of(RealRelay.FivePins[kind], seed, Five.Pins);
            var readings = tests.Select(t => (Test: Five.Offered[t], Value: relay.Read(Five.Offered[t]))).ToArray();
            var straight = readings.Aggregate(PinSearch.Begin(Five), (s, r) => s.With(r.Test, r.Value)).Assignments;
            new Random(seed).Shuffle(readings);
            var mixed = readings.Aggregate(PinSearch.Begin(Five), (s, r) => s.With(r.Test, r.Value)).Assignments;

            Assert.Equal(1, straight.Sum(o => o.Odds), 1e-9);
            Assert.All(straight, o => Assert.Equal(o.Odds, mixed.Single(m => m.Settles == o.Settles).Odds, 1e-9));
            Assert.All(straight, o => Assert.True(o.Odds < 1));
        });

    [Fact]
    public void One_slipped_reading_is_outvoted()
    {
        // Pins 1 and 2 were named by mistake in the first reading.
        var search = Read(Four, "ohms 1 2 = 85", "ohms 2 4 = 85", "ohms 1 2 = OL", "ohms 1 3 = OL", "power 2 4 = clicks", "power 4 2 = clicks", "ohms 1 3 with 2 4 = 0.2");

        Assert.Equal("1 make, 2 coil, 3 make, 4 coil", search.Settled?.Settles);
    }

    [Fact]
    public void A_relay_whose_coil_is_open_is_told()
    {
        var search = Read(Four, "ohms 1 2 = OL", "ohms 1 3 = OL", "ohms 1 4 = OL", "ohms 2 3 = OL", "ohms 2 4 = OL", "ohms 3 4 = OL", "power 1 2 = dark", "power 3 4 = dark");

        Assert.Equal("1 nowhere, 2 nowhere, 3 nowhere, 4 nowhere", search.Settled?.Settles);
        Assert.Equal("open-coil", search.Details[0].Detail);
    }

    [Fact]
    public void What_is_no_relay_fits_nothing()
    {
        var search = Read(Four, "ohms 1 2 = 2000", "ohms 1 3 = 2000", "ohms 1 4 = 2000", "ohms 2 3 = 2000");

        Assert.Null(search.Settled);
        Assert.Equal("", search.Assignments[0].Settles);
    }

    [Fact]
    public void Ohms_under_power_wait_until_the_coil_is_known()
    {
        var relay = RealRelay.Of("changeover", 1, Five.Pins);
        for (var search = PinSearch.Begin(Five); search.Next is { } next; search = search.With(next, relay.Read(next)))
        {
            Assert.True(next.Power is null || search.Assignments.Where(a => IsCoil(a, next.Power.Value)).Sum(a => a.Odds) > 0.85, next.Id);
        }

        static bool IsCoil(PinOdds assignment, PinPower power) =>
            assignment.Roles.Count(r => (r.Pin == power.Plus || r.Pin == power.Minus) && r.Role.StartsWith("coil", StringComparison.Ordinal)) == 2;
    }

    [Fact]
    public void A_resistor_cannot_be_told_by_ohms_and_the_search_does_not_pretend()
    {
        var details = Read(Four, "ohms 2 4 = 85", "ohms 1 3 = OL", "power 2 4 = clicks", "power 4 2 = clicks").Details.ToDictionary(d => d.Detail, d => d.Odds);

        Assert.InRange(details["bare"], 0.3, 0.7);
        Assert.InRange(details["resistor"], 0.3, 0.7);
        Assert.True(details["diode"] < 0.05);
    }

    [Fact]
    public void Four_pins_take_the_measurements_that_are_printed()
    {
        Assert.Equal(RelayPuzzle.ExpectedMeasurements(4), (Math.Round(BestPlay.OfSearch(Four), 2), Math.Round(BestPlay.Least(Four), 2)));
    }

    [Fact]
    [Trait("Pace", "slow")]
    public void Five_pins_take_the_measurements_that_are_printed()
    {
        Assert.Equal(RelayPuzzle.ExpectedMeasurements(5), (Math.Round(BestPlay.OfSearch(Five), 2), Math.Round(BestPlay.Least(Five), 2)));
    }

    [Theory]
    [InlineData("ohms 1 2")]
    [InlineData("ohms 1 2 = many")]
    [InlineData("power 1 2 = 12")]
    [InlineData("beep 1 2 = clicks")]
    [InlineData("ohms 1 9 = 3")]
    [InlineData("ohms 1 1 = 3")]
    [InlineData("ohms 1 2 = -3")]
    public void What_is_no_measurement_is_told(string text)
    {
        Assert.Null(PinReadingText.Parse(text, Four, out var problem));
        Assert.NotNull(problem);
    }

    private static PinSearch Read(PinPuzzle puzzle, params string[] readings) => readings.Aggregate(PinSearch.Begin(puzzle), (search, text) =>
    {
        var reading = PinReadingText.Parse(text, puzzle, out var problem);
        Assert.True(reading is not null, problem?.ToString());
        return search.With(reading.Value.Test, reading.Value.Value);
    });
}
