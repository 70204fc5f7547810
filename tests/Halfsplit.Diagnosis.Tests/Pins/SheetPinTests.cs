using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Pins;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Pins;

/// <summary>Cavities of shipped sheets, shuffled where nobody sees it and measured with a meter that is a little off.</summary>
public sealed class SheetPinTests
{
    /// <summary>Cavities of the parts that are played.</summary>
    private const int Most = 6;

    private static readonly Dictionary<string, Circuit> Known = new(StringComparer.Ordinal);

    public static TheoryData<string> Sheets() => [.. ShippedSheets.Names];

    private static Circuit Sheet(string name)
    {
        lock (Known)
        {
            return Known.TryGetValue(name, out var circuit) ? circuit : Known[name] = ShippedSheets.Load(name);
        }
    }

    private static IEnumerable<(string Part, char Half, int Cavities)> PartsOf(Circuit circuit) =>
        circuit.Parts.Where(p => p.Notes.Probe && p is Relay or Connector)
            .Select(p => (p.Id, 'a', p is Connector ? circuit.Cavities(p.Id).Count() : p.Terminals.Length))
            .Where(p => p.Item3 is > 1 and <= Most);

    private static SheetPins Of(Circuit circuit, string part, char half = 'a', string[]? cavities = null, string[]? conditions = null)
    {
        var pins = SheetPuzzle.Of(circuit, part, half, [.. cavities ?? []], [.. conditions ?? []], out var problem);
        Assert.True(pins is not null, problem?.ToString());
        return pins;
    }

    /// <summary>What a person with a meter reads; from the simulation alone, without what the search expects.</summary>
    private sealed class Bench(Circuit circuit, SheetPins pins, int seed)
    {
        private readonly CircuitSimulator _simulator = new(NetworkCompiler.Compile(circuit));
        private readonly Random _chance = new(seed);

        /// <summary>The function hidden behind each cavity.</summary>
        public Dictionary<string, PinFunction> Hidden { get; } = Shuffle(pins, new Random(seed));

        public PinValue Read(PinTest test)
        {
            var off = new Arrangement(test.Condition ?? pins.Rest);
            off = pins.Part is Connector ? off.Unplug(pins.Part.Id) : off.Remove(pins.Part.Id);
            var instrument = test.Setting == PinSetting.Volts ? Instrument.Volts : Instrument.Ohms;
            var read = _simulator.Read(off, [], new Probe(instrument, Hidden[test.First].Terminal, new TerminalName(Metal.Body)));
            Assert.True(read.Abstains != Abstention.LiveCircuit, $"{test.Id} asks for ohms where volts lie");
            if (read.Abstains != Abstention.None || read.IsOverLimit(instrument))
            {
                return PinValue.Of(instrument == Instrument.Ohms ? double.PositiveInfinity : 0);
            }

            var noise = Math.Sqrt(-2 * Math.Log(1 - _chance.NextDouble())) * Math.Cos(2 * Math.PI * _chance.NextDouble());
            var value = read.Value + (noise * (Meter.Default.OffsetSpread(instrument, read.Value) + (Math.Abs(read.Value) * Meter.Default.GainAccuracy)));
            return PinValue.Of(instrument == Instrument.Ohms ? Math.Max(0, value) : value);
        }

        private static Dictionary<string, PinFunction> Shuffle(SheetPins pins, Random chance)
        {
            var order = pins.Functions.ToArray();
            chance.Shuffle(order);
            return pins.Puzzle.Pins.Zip(order).ToDictionary(p => p.First, p => p.Second, StringComparer.Ordinal);
        }
    }

    /// <summary>Every cavity's role holds the function behind it: alone, or with those that nothing parts from it.</summary>
    private static bool IsRight(SheetPins pins, Bench bench, PinOdds found) => found.Roles.Length > 0 && found.Roles.All(r =>
        r.Role == string.Join("/", pins.Alike.Select(a => a.Names).FirstOrDefault(a => a.Contains(bench.Hidden[r.Pin].Name), [bench.Hidden[r.Pin].Name])));

    [Theory]
    [MemberData(nameof(Sheets))]
    public void A_hidden_assignment_is_found_by_the_measurements_asked_for(string sheet)
    {
        var circuit = Sheet(sheet);
        foreach (var (part, half, cavities) in PartsOf(circuit))
        {
            var pins = Of(circuit, part, half);
            var bench = new Bench(circuit, pins, seed: 7 + cavities);
            var search = PinSearch.Begin(pins.Puzzle);
            while (search.Next is { } next)
            {
                search = search.With(next, bench.Read(next));
                Assert.True(search.Readings.Length <= 3 * cavities, $"{sheet} {part} asks without end");
            }

            var first = search.Assignments[0];
            Assert.True(
                IsRight(pins, bench, first),
                $"{sheet} {part}: {first.Settles} {first.Odds:0.000}, hidden {string.Join(", ", bench.Hidden.Select(h => $"{h.Key} {h.Value.Name}"))}; {string.Join("; ", search.Readings.Select(r => $"{r.Test.Id} = {r.Value.Number}"))}");
            Assert.True(search.Settled is not null, $"{sheet} {part}: {first.Settles} only {first.Odds:0.000} after {search.Readings.Length}");
        }
    }

    /// <summary>The same answers in any order, and as many as there are, say the same.</summary>
    [Fact]
    public void The_order_of_the_readings_does_not_matter()
    {
        var circuit = Sheet("pump-feed");
        var pins = Of(circuit, "K2");
        var bench = new Bench(circuit, pins, 3);
        var readings = pins.Puzzle.Offered.Where(t => t.Setting == PinSetting.Volts).Select(t => (t, bench.Read(t))).ToList();
        var (forth, back) = (PinSearch.Begin(pins.Puzzle), PinSearch.Begin(pins.Puzzle));
        forth = readings.Aggregate(forth, (s, r) => s.With(r.t, r.Item2));
        back = Enumerable.Reverse(readings).Aggregate(back, (s, r) => s.With(r.t, r.Item2));

        Assert.Equal(forth.Assignments.Select(a => a.Settles), back.Assignments.Select(a => a.Settles));
        Assert.All(forth.Assignments.Zip(back.Assignments), p => Assert.Equal(p.First.Odds, p.Second.Odds, 1e-9));
    }

    /// <summary>Two wires to the same ground, or to two open ends, look the same: that is said and not guessed.</summary>
    [Fact]
    public void What_cannot_be_told_apart_is_said()
    {
        var circuit = Sheet("headlamps");
        // Both filaments' feeds show the same in "main beam"; with ohms only one of them could be told, if at all.
        var pins = Of(circuit, "C10", conditions: ["main beam"]);

        Assert.Contains(pins.Alike, a => a.Names.SequenceEqual(["1", "2"]) && a.PartedIn == "dipped beam");
        Assert.All(pins.Puzzle.Hypotheses, h => Assert.Contains(h.Roles, r => r.Role == "1/2"));
        Assert.Empty(Of(circuit, "C10", conditions: ["main beam", "dipped beam"]).Alike);
    }

    [Fact]
    public void The_conditions_that_part_the_cavities_are_found() =>
        Assert.Empty(Of(Sheet("headlamps"), "C10").Alike);

    [Fact]
    public void A_cavity_more_than_functions_is_empty()
    {
        var pins = Of(Sheet("pump-feed"), "C3", cavities: ["1", "2", "3"]);

        Assert.All(pins.Puzzle.Hypotheses, h => Assert.Equal(3, h.Roles.Length));
        Assert.Contains(pins.Puzzle.Hypotheses.SelectMany(h => h.Roles), r => r.Role.Contains(CavityPuzzle.Empty, StringComparison.Ordinal));
    }

    /// <summary>One cavity needs no finding out, unless the real connector has more; a sheet may have nothing to be found at all.</summary>
    [Fact]
    public void Where_there_is_nothing_to_find_out_it_is_said()
    {
        var horn = Sheet("horn");
        Assert.Null(SheetPuzzle.Of(horn, "C7", 'a', [], [], out var problem));
        Assert.Equal("pins.one-cavity", problem?.Code);
        Assert.NotNull(SheetPuzzle.Of(horn, "C7", 'a', ["A", "B"], [], out _));

        const string Bare = "sheet: 1\ntitle: Bare\nparts: { BAT: { kind: battery }, L1: { kind: lamp, watts: 5 W } }\nwiring: [BAT.pos -> L1 -> BAT.neg]\n";
        Assert.Null(SheetPuzzle.Of(SheetReader.Read(Bare).Circuit!, "L1", 'a', [], [], out problem));
        Assert.Equal("pins.no-parts", problem?.Code);
    }

    [Theory]
    [InlineData("Q9", "", 'a', "", "pins.no-part")]
    [InlineData("M1", "", 'a', "", "pins.no-part")]
    [InlineData("C3", "x", 'a', "", "pins.no-condition")]
    [InlineData("C3", "", 'c', "", "pins.bad-half")]
    [InlineData("C3", "", 'a', "1", "pins.bad-names")]
    [InlineData("C3", "", 'a', "1,1", "pins.bad-names")]
    [InlineData("C3", "", 'a', "1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21,22,23,24,25,26,27,28,29,30,31,32,33,34,35,36,37,38,39,40,41,42,43,44,45,46,47,48,49,50,51,52,53,54,55,56,57,58,59,60,61,62,63,64,65,66,67,68,69,70,71,72,73,74,75,76,77,78,79,80,81,82,83,84,85,86,87,88,89,90,91,92,93,94,95,96,97,98,99,100,101,102,103,104,105,106,107,108,109,110,111,112,113,114,115,116,117,118,119,120,121,122,123,124,125,126,127,128,129,130,131,132,133,134,135,136,137,138,139,140,141,142,143,144,145,146,147,148,149,150,151,152,153,154,155,156,157,158,159,160,161,162,163,164,165,166,167,168,169,170,171,172,173,174,175,176,177,178,179,180,181,182,183,184,185,186,187,188,189,190,191,192,193,194,195,196,197,198,199,200,201,202,203,204,205", "pins.too-many")]
    public void What_is_no_puzzle_is_told(string part, string condition, char half, string cavities, string code)
    {
        Assert.Null(SheetPuzzle.Of(
            Sheet("pump-feed"), part, half, [.. cavities.Split(',', StringSplitOptions.RemoveEmptyEntries)], condition.Length == 0 ? [] : [condition], out var problem));
        Assert.Equal(code, problem?.Code);
    }

    [Theory]
    [InlineData("volts A body = 12", "pins.say-condition")]
    [InlineData("volts A body in the moon = 12", "pins.not-in")]
    [InlineData("ohms A body in key on = 12", "pins.not-in")]
    [InlineData("volts A body in DIPPED BEAM = 12", null)]
    [InlineData("Spannung A Karosserie bei main beam = 12,1 V", null)]
    [InlineData("ohms A body = OL", null)]
    [InlineData("ohms a Masse = 0.3", null)]
    [InlineData("huh", "pins.bad-cavity-reading")]
    [InlineData("volts A body in main beam = OL", "pins.bad-cavity-reading")]
    [InlineData("volts A body in main beam 12.1", "pins.bad-cavity-reading")]
    [InlineData("volts A B in main beam = 3", "pins.only-body")]
    [InlineData("volts body A in main beam = 3", "pins.only-body")]
    [InlineData("beep A body = beeps", "pins.only-body")]
    public void A_reading_names_its_condition(string text, string? code)
    {
        var pins = Of(Sheet("headlamps"), "C10", conditions: ["main beam", "dipped beam"]);
        var read = PinReadingText.Parse(text, pins.Puzzle, out var problem);

        Assert.Equal(code, problem?.Code);
        Assert.Equal(code is null, read is not null);
    }

    /// <summary>On average over all assignments and the parts small enough to try every order, hardly more than the best order takes.</summary>
    [Fact]
    public void The_search_takes_few_more_measurements_than_the_best_order()
    {
        var (ofSearch, least, parts) = (0.0, 0.0, 0);
        foreach (var sheet in ShippedSheets.Names)
        {
            foreach (var (part, half, _) in PartsOf(Sheet(sheet)).Where(p => p.Cavities <= 4))
            {
                var puzzle = Of(Sheet(sheet), part, half).Puzzle;
                ofSearch += BestPlay.OfSearch(puzzle);
                least += BestPlay.Least(puzzle);
                parts++;
            }
        }

        Assert.True(parts > 20);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{parts} parts: {ofSearch / parts:0.00} of the search, {least / parts:0.00} at best"));
        Assert.InRange(ofSearch / parts, least / parts, 1.15 * least / parts);
    }

    [Theory]
    [InlineData("power A B = clicks", "pins.no-power")]
    [InlineData("ohms A B with C D = 0.3", "pins.no-power")]
    [InlineData("volts A body in key on = -600", "pins.too-many-volts")]
    public void Nothing_is_powered_in_the_car_and_no_wiring_shows_hundreds_of_volts(string reading, string problem)
    {
        var pins = Of(Sheet("pump-feed"), "K2", conditions: ["key on"]);

        Assert.Null(PinReadingText.Parse(reading, pins.Puzzle, out var said));
        Assert.Equal(problem, said!.Code);
    }

    [Fact]
    public void Capitals_do_not_matter_and_a_body_is_a_body_in_every_language()
    {
        var pins = Of(Sheet("headlamps"), "C10", conditions: ["main beam"]);

        Assert.Equal(new PinTest(PinSetting.Ohms, "B", PinTest.Body), PinReadingText.Parse("ohms b MASSE = 0.3", pins.Puzzle, out _)!.Value.Test);
    }

    /// <summary>What is written as an example can itself be typed.</summary>
    [Fact]
    public void A_reading_that_is_not_understood_is_answered_with_forms_that_are()
    {
        var pins = Of(Sheet("headlamps"), "C10", conditions: ["main beam", "dipped beam"]);
        Assert.Null(PinReadingText.Parse("huh", pins.Puzzle, out var problem));

        foreach (var form in problem!.Arguments.Skip(1))
        {
            Assert.NotNull(PinReadingText.Parse($"{form} = 12.1", pins.Puzzle, out _));
        }
    }

    /// <summary>Thousands of assignments have tiny odds each, and all of them are possible.</summary>
    [Fact]
    public void Many_assignments_are_counted_as_well_as_few()
    {
        var pins = Of(Sheet("trailer-7pin"), "X", conditions: ["indicating left", "indicating right", "braking", "tail lamps", "running in fog"]);
        var search = PinSearch.Begin(pins.Puzzle);
        Assert.True(pins.Puzzle.Hypotheses.Length > 1000);
        Assert.Equal(pins.Puzzle.Hypotheses.Length, search.Possible);

        var bench = new Bench(Sheet("trailer-7pin"), pins, 5);
        var next = search.Next!;
        Assert.InRange(search.With(next, bench.Read(next)).Possible, 2, pins.Puzzle.Hypotheses.Length - 1);
    }

    [Fact]
    public void A_reading_against_the_settled_assignment_is_named_until_it_fits()
    {
        var pins = Of(Sheet("pump-feed"), "K2");
        var search = PinSearch.Begin(pins.Puzzle);
        var bench = new Bench(Sheet("pump-feed"), pins, 11);
        while (search.Next is { } next)
        {
            search = search.With(next, bench.Read(next));
        }

        Assert.NotNull(search.Settled);
        Assert.Empty(search.Misfits);
        var open = bench.Hidden.Single(h => h.Value.Forecasts.Any(f => ReferenceEquals(f.Expected, PinExpectation.Open))).Key;
        var slipped = new PinTest(PinSetting.Ohms, open, PinTest.Body);
        var contradicted = search.With(slipped, PinValue.Of(1.5));

        Assert.Equal([slipped], contradicted.Misfits.Select(m => m.Test));
        Assert.Empty(contradicted.With(slipped, PinValue.Of(double.PositiveInfinity)).Misfits);
    }

    [Fact]
    public void A_condition_is_named_where_another_would_part_more_and_none_where_none_would()
    {
        var circuit = Sheet("trailer-7pin");
        var here = Of(circuit, "X", conditions: ["braking"]).Alike;
        Assert.NotEmpty(here);
        Assert.All(here, a => Assert.NotEqual("braking", a.PartedIn));
        Assert.Contains(here, a => a.PartedIn is not null);

        // Both cavities hang on the main relay's output, each through a fuse of its own: they show the same whatever the car does.
        Assert.Equal(["86", "30"], Assert.Single(Of(Sheet("pump-feed"), "K2").Alike, a => a.PartedIn is null).Names);
    }
}
