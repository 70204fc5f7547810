using System.Collections.Immutable;
using CsCheck;
using Halfsplit.Diagnosis.Pins;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Pins;

public sealed class CavityPinTests
{
    private static readonly ImmutableArray<CavityFunction> Pump =
        [Function("feed: 11-14 V 1000-1000000 ohm"), Function("ground: 0-0.2 V 0-2 ohm"), Function("sender: 3-6 V 50..300 ohm"), Function("sender ground: 0-0.2 V 0-2 ohm")];

    private static readonly ImmutableArray<string> Cavities = ["1", "2", "3", "4"];

    // Common practice: at a pump's connector one cavity shows 11 to 12 V, the others some tens of millivolts; the ground has continuity to the body.
    [Fact]
    public void The_feed_and_the_ground_are_found_by_volts_and_ohms()
    {
        var puzzle = CavityPuzzle.Of(Cavities, [Pump[0], Pump[1]]);
        var search = Read(puzzle, "volts 3 body = 11.8", "volts 1 body = 0.03", "ohms 1 body = 0.4", "ohms 2 body = OL");

        Assert.Equal("1 ground, 2 empty, 3 feed, 4 empty", search.Settled?.Settles);
    }

    [Fact]
    public void What_no_measurement_parts_is_not_settled_and_nothing_is_asked_in_vain()
    {
        var search = PinSearch.Begin(CavityPuzzle.Of(Cavities, Pump));
        while (search.Next is { } next)
        {
            // Feed at 1, sender at 2, the two grounds at 3 and 4.
            var cavity = int.Parse(next.First, System.Globalization.CultureInfo.InvariantCulture);
            search = search.With(next, PinValue.Of(next.Setting == PinSetting.Volts ? new[] { 12, 4.5, 0.02, 0.02 }[cavity - 1] : new[] { 50_000, 120, 0.4, 0.5 }[cavity - 1]));
            Assert.True(search.Readings.Length <= 8);
        }

        Assert.Null(search.Settled);
        Assert.InRange(search.Assignments[0].Odds, 0.45, 0.55);
        Assert.All(search.Assignments.Take(2), a => Assert.Contains("1 feed, 2 sender", a.Settles, StringComparison.Ordinal));
    }

    /// <summary>What a meter shows at a real connector of that kind: no number is one that the functions name.</summary>
    [Fact]
    public void Any_assignment_that_can_be_told_is_found_by_the_questions_asked() => Gen.Int[0, 1000].Sample(seed =>
    {
        var functions = ImmutableArray.Create(Function("feed: 11-14 V"), Function("ground: 0-0.1 V 0-2 ohm"), Function("sender: 4-6 V"), Function("heater: 0-0.1 V 20-60 ohm"));
        var real = new (string Name, double Volts, double Ohms)[] { ("feed", 12.1, 740), ("ground", 0.02, 0.7), ("sender", 5.03, 2300), ("heater", 0.03, 33) };
        new Random(seed).Shuffle(real);
        var search = PinSearch.Begin(CavityPuzzle.Of(Cavities, functions));
        while (search.Next is { } next)
        {
            var there = real[Cavities.IndexOf(next.First)];
            search = search.With(next, PinValue.Of(next.Setting == PinSetting.Volts ? there.Volts : there.Ohms));
            Assert.True(search.Readings.Length <= 8);
        }

        Assert.Equal(string.Join(", ", real.Select((r, i) => $"{Cavities[i]} {r.Name}")), search.Settled?.Settles);
    });

    [Fact]
    [Trait("Pace", "slow")]
    public void Eight_different_cavities_are_found()
    {
        ImmutableArray<CavityFunction> functions =
        [
            Function("feed: 12-13 V"), Function("ground: 0-0.1 V 0-2 ohm"), Function("sender: 4-6 V"), Function("heater: 0-0.1 V 20-60 ohm"),
            Function("signal: 8-9 V"), Function("motor: 0-0.1 V 150..250 ohm"), Function("valve: 0-0.1 V 1000..1500 ohm"), Function("pull-up: 1.5-2.5 V"),
        ];
        var puzzle = CavityPuzzle.Of(["1", "2", "3", "4", "5", "6", "7", "8"], functions);
        Assert.Equal(40_320, puzzle.Hypotheses.Length);
        var hidden = puzzle.Hypotheses[31_415];
        var search = PinSearch.Begin(puzzle);
        while (search.Next is { } next)
        {
            search = search.With(next, hidden.Expects(next) is PinExpectation.Near near
                ? PinValue.Of(near.InDecades ? Math.Pow(10, near.Mean) : near.Mean)
                : PinValue.Of(double.PositiveInfinity));
            Assert.True(search.Readings.Length <= 16);
        }

        Assert.Equal(hidden.Settles, search.Settled?.Settles);
    }

    [Fact]
    public void Equal_empty_cavities_are_counted_once() =>
        Assert.Equal(8 * 7, CavityPuzzle.Of(["1", "2", "3", "4", "5", "6", "7", "8"], [Pump[0], Pump[1]]).Hypotheses.Length);

    [Fact]
    public void The_search_is_near_the_best_order()
    {
        var puzzle = CavityPuzzle.Of(["1", "2", "3"], [Function("feed: 11-14 V"), Function("ground: 0-0.1 V 0-2 ohm"), Function("sender: 4-6 V")]);
        var (ofSearch, least) = (BestPlay.OfSearch(puzzle), BestPlay.Least(puzzle));

        // Three cavities: one reading names its cavity, a second parts the other two.
        Assert.Equal(2, least, 1e-9);
        Assert.InRange(ofSearch, least, least + 1);
    }

    [Theory]
    [InlineData("feed")]
    [InlineData("feed: ")]
    [InlineData("feed: 14-11 V")]
    public void What_is_no_function_is_told(string text)
    {
        Assert.Null(CavityFunction.Parse(text, out var problem));
        Assert.Equal("pins.bad-function", problem?.Code);
    }

    private static CavityFunction Function(string text) => CavityFunction.Parse(text, out _)!;

    private static PinSearch Read(PinPuzzle puzzle, params string[] readings) => readings.Aggregate(PinSearch.Begin(puzzle), (search, text) =>
    {
        var reading = PinReadingText.Parse(text, puzzle, out var problem);
        Assert.True(reading is not null, problem?.ToString());
        return search.With(reading.Value.Test, reading.Value.Value);
    });
}
