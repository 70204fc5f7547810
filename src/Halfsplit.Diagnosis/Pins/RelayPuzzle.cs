using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>
/// A relay of which nothing is known: four or five pins, a coil with nothing, a resistor or a diode across it, and a contact that makes,
/// breaks or changes over, or makes two at once, joined or each on its own.
/// </summary>
public static class RelayPuzzle
{
    public const string Coil = "coil", CoilPlus = "coil-plus", CoilMinus = "coil-minus", Common = "common", Make = "make", Break = "break";
    public const string Bare = "bare", Resistor = "resistor", Diode = "diode", OpenCoil = "open-coil";

    /// <summary>What is left of a relay with an open coil: pins that lead nowhere, and perhaps a contact that is closed at rest.</summary>
    public const string Nowhere = "nowhere", Closed = "closed";

    private static readonly double BareOhms = Row("bare-ohms"), DampedOhms = Row("damped-ohms"), CoilDecades = Row("coil-decades");

    /// <summary>A closed contact reads what the leads resist.</summary>
    private static readonly double ClosedOhms = Row("closed-ohms"), ClosedDecades = Row("closed-decades");

    /// <summary>Volts of the meter's diode setting, with about 1 mA flowing.</summary>
    private static readonly double CoilDiodeVolts = Row("coil-diode-volts"), CoilDiodeSpread = Row("coil-diode-spread"),
        ClosedDiodeVolts = Row("closed-diode-volts"), ClosedDiodeSpread = Row("closed-diode-spread");

    private static readonly double CoilIsSilent = Row("coil-is-silent"), ClickIsHeard = Row("click-heard");

    /// <summary>How common each is.</summary>
    private static readonly double MakeWeight = Row("make-weight"), BreakWeight = Row("break-weight"), ChangeoverWeight = Row("changeover-weight"),
        TwinWeight = Row("twin-weight"), DoubleWeight = Row("double-weight"), BareWeight = Row("bare-weight"), ResistorWeight = Row("resistor-weight"), DiodeWeight = Row("diode-weight"),
        OpenCoilShare = Row("open-coil-share");

    public const int FewestPins = 4, MostPins = 5;

    /// <summary>
    /// Measurements that <see cref="PinSearch"/> takes on average where no reading slips, and the least that any order can; recomputed by a
    /// test by trying every order, which takes seconds.
    /// </summary>
    /// <param name="pins">Four or five.</param>
    public static (double OfSearch, double Least) ExpectedMeasurements(int pins) => pins == FewestPins ? (5.36, 4.55) : (7.56, 6.99);

    private static double Row(string name) => PinDefaults.Of($"relay.{name}");

    /// <param name="pins">The names of the pins, all different.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not four or five pins, or two of one name.</exception>
    public static PinPuzzle Of(params ImmutableArray<string> pins)
    {
        if (pins.Length is < FewestPins or > MostPins || pins.Distinct(StringComparer.Ordinal).Count() != pins.Length)
        {
            throw new ArgumentOutOfRangeException(nameof(pins));
        }

        var contacts = (pins.Length == FewestPins ? FourPins(pins) : FivePins(pins)).ToList();
        return new PinPuzzle(pins, [.. contacts.SelectMany(Damped), .. Dead(pins, OpenCoilShare * contacts.Sum(c => c.Weight))], [.. Offered(pins)]);
    }

    /// <summary>Two pins that touch at rest, or once the relay has pulled in.</summary>
    private sealed record Link(string First, string Second, bool AtRest, bool PulledIn)
    {
        public bool Joins(PinTest test) => (test.First == First && test.Second == Second) || (test.First == Second && test.Second == First);
    }

    private sealed record Inside(string CoilFirst, string CoilSecond, ImmutableArray<Link> Links, ImmutableArray<PinRole> Roles, double Weight)
    {
        public bool IsCoil(string first, string second) =>
            (first == CoilFirst && second == CoilSecond) || (first == CoilSecond && second == CoilFirst);
    }

    private static IEnumerable<Inside> FourPins(ImmutableArray<string> pins)
    {
        foreach (var (first, second, rest) in Coils(pins))
        {
            yield return new Inside(first, second, [new Link(rest[0], rest[1], false, true)], [new(rest[0], Make), new(rest[1], Make)], MakeWeight);
            yield return new Inside(first, second, [new Link(rest[0], rest[1], true, false)], [new(rest[0], Break), new(rest[1], Break)], BreakWeight);
        }
    }

    private static IEnumerable<Inside> FivePins(ImmutableArray<string> pins)
    {
        foreach (var (first, second, rest) in Coils(pins))
        {
            foreach (var common in rest)
            {
                var others = rest.Remove(common);
                foreach (var make in others)
                {
                    var brk = others.Remove(make)[0];
                    yield return new Inside(
                        first, second, [new Link(common, make, false, true), new Link(common, brk, true, false)],
                        [new(common, Common), new(make, Make), new(brk, Break)], ChangeoverWeight);
                }

                yield return new Inside(
                    first, second,
                    [new Link(common, others[0], false, true), new Link(common, others[1], false, true), new Link(others[0], others[1], true, true)],
                    [new(common, Common), new(others[0], Make), new(others[1], Make)], TwinWeight);
            }

            // Two make contacts on their own: all three pins meet once it has pulled in, and nothing tells which is common.
            yield return new Inside(
                first, second, [new Link(rest[0], rest[1], false, true), new Link(rest[0], rest[2], false, true), new Link(rest[1], rest[2], false, true)],
                [.. rest.Select(pin => new PinRole(pin, Make))], DoubleWeight);
        }
    }

    private static IEnumerable<(string First, string Second, ImmutableArray<string> Others)> Coils(ImmutableArray<string> pins)
    {
        for (var i = 0; i < pins.Length; i++)
        {
            for (var j = i + 1; j < pins.Length; j++)
            {
                yield return (pins[i], pins[j], pins.RemoveAt(j).RemoveAt(i));
            }
        }
    }

    /// <summary>A relay whose coil is open: of four pins nothing is left to find, of five the contact that is closed at rest.</summary>
    private static IEnumerable<PinHypothesis> Dead(ImmutableArray<string> pins, double weight)
    {
        var pairs = pins.Length == FewestPins ? [("", "")] : Coils(pins).Select(c => (c.First, c.Second)).ToList();
        foreach (var (first, second) in pairs)
        {
            var roles = pins.Select(p => new PinRole(p, p == first || p == second ? Closed : Nowhere)).ToImmutableArray();
            var inside = new Inside("", "", [new Link(first, second, true, true)], roles, weight / pairs.Count);
            yield return Hypothesis(inside, roles, null, OpenCoil, BareOhms, 1);
        }
    }

    /// <summary>The same relay with nothing, a resistor, or a diode either way round across its coil.</summary>
    private static IEnumerable<PinHypothesis> Damped(Inside inside)
    {
        yield return Hypothesis(inside, null, Bare, BareOhms, BareWeight);
        yield return Hypothesis(inside, null, Resistor, DampedOhms, ResistorWeight);
        yield return Hypothesis(inside, inside.CoilFirst, Diode, BareOhms, DiodeWeight);
        yield return Hypothesis(inside, inside.CoilSecond, Diode, BareOhms, DiodeWeight);
    }

    private static PinHypothesis Hypothesis(Inside inside, string? plus, string detail, double coilOhms, double weight)
    {
        ImmutableArray<PinRole> coil = plus is null
            ? [new(inside.CoilFirst, Coil), new(inside.CoilSecond, Coil)]
            : [new(inside.CoilFirst, inside.CoilFirst == plus ? CoilPlus : CoilMinus), new(inside.CoilSecond, inside.CoilSecond == plus ? CoilPlus : CoilMinus)];
        var roles = coil.AddRange(inside.Roles).Sort((a, b) => string.CompareOrdinal(a.Pin, b.Pin));
        return Hypothesis(inside, roles, plus, detail, coilOhms, weight);
    }

    private static PinHypothesis Hypothesis(
        Inside inside, ImmutableArray<PinRole> roles, string? plus, string detail, double coilOhms, double weight) => new(
        string.Join(", ", roles.Select(r => $"{r.Pin} {r.Role}")), inside.Weight * weight, roles, detail,
        test => Expect(inside, plus, coilOhms, test), test => Allows(inside, test));

    /// <summary>Under power only what hangs on nothing live may be measured with ohms: the contacts of a relay whose coil is known.</summary>
    private static bool Allows(Inside inside, PinTest test) => test.Power is not { } power
        || (inside.IsCoil(power.Plus, power.Minus) && !OnCoil(inside, test.First) && !OnCoil(inside, test.Second));

    private static bool OnCoil(Inside inside, string pin) => pin == inside.CoilFirst || pin == inside.CoilSecond;

    private static PinExpectation Expect(Inside inside, string? plus, double coilOhms, PinTest test)
    {
        if (!Allows(inside, test))
        {
            return PinExpectation.Anything;
        }

        var pulledIn = test.Power is { } power && (plus is null || plus == power.Plus);
        var closed = inside.Links.Any(l => l.Joins(test) && (pulledIn ? l.PulledIn : l.AtRest));
        var coil = inside.IsCoil(test.First, test.Second);
        return test.Setting switch
        {
            PinSetting.Ohms => closed ? PinExpectation.Ohms(ClosedOhms, ClosedDecades)
                : coil ? PinExpectation.Ohms(coilOhms, CoilDecades) : PinExpectation.Open,
            PinSetting.Continuity => closed ? PinExpectation.Says(PinWord.Beeps, 1, PinWord.Silent)
                : PinExpectation.Says(PinWord.Silent, coil ? CoilIsSilent : 1, PinWord.Beeps),
            // A milliamp lifts a coil to less than a tenth of a volt: the diode across it never conducts.
            PinSetting.Diode => closed ? PinExpectation.Volts(ClosedDiodeVolts, ClosedDiodeSpread)
                : coil ? PinExpectation.Volts(CoilDiodeVolts, CoilDiodeSpread) : PinExpectation.Open,
            PinSetting.Power => closed || (coil && plus is not null && plus != test.First) ? PinExpectation.Says(PinWord.Bright, 1, PinWord.Dark)
                : coil ? PinExpectation.Says(PinWord.Clicks, ClickIsHeard, PinWord.Dark) : PinExpectation.Says(PinWord.Dark, 1, PinWord.Clicks),
            _ => PinExpectation.Anything,
        };
    }

    private static IEnumerable<PinTest> Offered(ImmutableArray<string> pins)
    {
        var pairs = Coils(pins).Select(c => (c.First, c.Second)).ToList();
        var ordered = pairs.SelectMany(p => new[] { p, (p.Second, p.First) }).ToList();
        return pairs.Select(p => new PinTest(PinSetting.Ohms, p.First, p.Second))
            .Concat(ordered.Select(p => new PinTest(PinSetting.Power, p.Item1, p.Item2)))
            .Concat(ordered.SelectMany(power => pairs
                .Where(p => p.First != power.Item1 && p.First != power.Item2 && p.Second != power.Item1 && p.Second != power.Item2)
                .Select(p => new PinTest(PinSetting.Ohms, p.First, p.Second, new PinPower(power.Item1, power.Item2)))));
    }
}
