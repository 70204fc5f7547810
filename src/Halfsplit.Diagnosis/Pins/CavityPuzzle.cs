using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>A connector whose cavities nobody knows: every way to give the functions to the cavities.</summary>
public static class CavityPuzzle
{
    /// <summary>With more there are too many ways to look at on a phone.</summary>
    public const int MostCavities = 8;

    /// <summary>What a cavity without a function is called.</summary>
    public const string Empty = "empty";

    /// <summary>The least spread of volts; less is lost in ghosts and ground drops.</summary>
    private static readonly double LeastVolts = PinDefaults.Of("pin.spread-volts");

    /// <summary>The least spread of ohms, in decades: leads and tolerances.</summary>
    private static readonly double LeastDecades = PinDefaults.Of("pin.spread-decades");

    /// <summary>A cavity with nothing in it, or a wire tied to nothing, shows a ghost of a few tenths of a volt.</summary>
    private static readonly double GhostVolts = PinDefaults.Of("pin.ghost-volts");

    /// <param name="cavities">All different; as many as functions, or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">No cavities, too many, two of one name, or more functions than cavities.</exception>
    public static PinPuzzle Of(ImmutableArray<string> cavities, ImmutableArray<CavityFunction> functions)
    {
        if (cavities.Length is 0 or > MostCavities || functions.Length > cavities.Length || functions.Length == 0
            || cavities.Distinct(StringComparer.Ordinal).Count() != cavities.Length)
        {
            throw new ArgumentOutOfRangeException(nameof(cavities));
        }

        var all = functions.AddRange(Enumerable.Repeat(new CavityFunction(Empty, null, null), cavities.Length - functions.Length));
        var numbers = cavities.Select((c, i) => (c, i)).ToDictionary(x => x.c, x => x.i, StringComparer.Ordinal);
        // Worked out once: there are thousands of orders.
        var expected = all.Distinct().ToDictionary(
            f => f, f => (Volts: Expect(IsEmpty(f) ? null : f, PinSetting.Volts), Ohms: Expect(IsEmpty(f) ? null : f, PinSetting.Ohms)));
        var hypotheses = Orders(all).Select(order =>
        {
            var roles = cavities.Select((c, i) => new PinRole(c, order[i].Name)).ToImmutableArray();
            var shows = order.Select(f => expected[f]).ToImmutableArray();
            return new PinHypothesis(
                string.Join(", ", roles.Select(r => $"{r.Pin} {r.Role}")), 1, roles, "",
                test => test.Second != PinTest.Body || !numbers.TryGetValue(test.First, out var cavity) ? PinExpectation.Anything
                    : test.Setting == PinSetting.Volts ? shows[cavity].Volts
                    : test.Setting == PinSetting.Ohms ? shows[cavity].Ohms
                    : PinExpectation.Anything,
                _ => true);
        });
        return new PinPuzzle(
            cavities, [.. hypotheses],
            [.. cavities.Select(c => new PinTest(PinSetting.Volts, c, PinTest.Body)), .. cavities.Select(c => new PinTest(PinSetting.Ohms, c, PinTest.Body))]);
    }

    private static bool IsEmpty(CavityFunction function) => function is { Volts: null, Ohms: null };

    private static PinExpectation Expect(CavityFunction? function, PinSetting setting) => (function, setting) switch
    {
        (null, PinSetting.Volts) => PinExpectation.Volts(0, GhostVolts),
        (null, PinSetting.Ohms) => PinExpectation.Open,
        ({ Volts: { } volts }, PinSetting.Volts) => PinExpectation.Volts(volts.Middle, Math.Max((volts.High - volts.Low) / 4, LeastVolts)),
        ({ Ohms: { } ohms }, PinSetting.Ohms) => Ohms(ohms),
        _ => PinExpectation.Anything,
    };

    private static PinExpectation Ohms(ValueRange ohms)
    {
        var (low, high) = (PinExpectation.Place(ohms.Low, true), PinExpectation.Place(ohms.High, true));
        return PinExpectation.Ohms(Math.Pow(10, (low + high) / 2), Math.Max((high - low) / 4, LeastDecades));
    }

    private static IEnumerable<ImmutableArray<CavityFunction>> Orders(ImmutableArray<CavityFunction> rest)
    {
        if (rest.Length == 0)
        {
            yield return [];
        }

        for (var i = 0; i < rest.Length; i++)
        {
            if (rest.IndexOf(rest[i]) < i)
            {
                // The same function again: its orders have been told.
                continue;
            }

            foreach (var order in Orders(rest.RemoveAt(i)))
            {
                yield return order.Insert(0, rest[i]);
            }
        }
    }
}
