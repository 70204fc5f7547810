using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Safety;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>
/// The cavities of a relay's socket or of a connector on a sheet, as a puzzle: nobody knows which is which, and what each should show
/// comes from the simulation. Functions that nothing on offer parts are taken together, and said.
/// </summary>
public static class SheetPuzzle
{
    /// <summary>With more ways to give the functions to the cavities there is too much to look at on a phone: those of eight cavities, all different.</summary>
    public const int MostWays = 40_320;

    /// <summary>Conditions in which volts are measured: more are not worth the walk.</summary>
    private const int MostConditions = 2;

    /// <summary>Means that many spreads apart are told apart by one reading.</summary>
    private const double Apart = 4;

    /// <summary>A cavity with nothing in it shows a ghost of a few tenths of a volt.</summary>
    private const double GhostVolts = 0.3;

    /// <param name="circuit">The circuit.</param>
    /// <param name="id">A relay or a connector.</param>
    /// <param name="half">Of a connector: the half whose cavities are measured, <c>a</c> or <c>b</c>.</param>
    /// <param name="cavities">Names that the person gives them; empty: A, B, C and so on. One more than functions is an empty cavity.</param>
    /// <param name="conditions">In which volts are measured; empty: those that tell most.</param>
    /// <param name="problem">Why there is no puzzle.</param>
    public static SheetPins? Of(
        Circuit circuit, string id, char half, ImmutableArray<string> cavities, ImmutableArray<string> conditions, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        problem = Wrong(circuit, id, half, conditions);
        if (problem is not null)
        {
            return null;
        }

        var part = circuit[id];
        var named = part is Connector
            ? circuit.Cavities(id).Select(c => (Name: c, Terminal: new TerminalName(id, c + half))).ToList()
            : [.. part.Terminals.Select(t => (Name: t, Terminal: new TerminalName(id, t)))];
        cavities = cavities.IsEmpty ? [.. Enumerable.Range(0, named.Count).Select(Letter)] : cavities;
        if (cavities.Length < named.Count || cavities.Distinct(StringComparer.Ordinal).Count() != cavities.Length
            || cavities.Any(c => c.Length == 0 || c == PinTest.Body || c.Any(char.IsWhiteSpace) || c.Contains('=', StringComparison.Ordinal)))
        {
            problem = new Message("pins.bad-names", id, named.Count);
            return null;
        }

        if (cavities.Length == 1)
        {
            problem = new Message("pins.one-cavity", id);
            return null;
        }

        var forecaster = new PinForecaster(circuit, part);
        conditions = conditions.IsEmpty
            ? Choose(circuit, forecaster, [.. named.Select(n => n.Terminal)])
            : [.. conditions.Select(c => circuit.FindCondition(c)!.Name).Distinct(StringComparer.Ordinal)];
        var functions = named.Select(n => new PinFunction(
            n.Name, n.Terminal, [.. conditions.Select(c => forecaster.Volts(n.Terminal, c)), forecaster.Ohms(n.Terminal)])).ToImmutableArray();
        var spare = new PinFunction(CavityPuzzle.Empty, null,
            [.. conditions.Select(Ghost), new PinForecast(PinSetting.Ohms, null, false, PinExpectation.Open)]);
        var all = functions.AddRange(Enumerable.Repeat(spare, cavities.Length - functions.Length));
        var classes = Classes(all);
        if (Ways(classes) > MostWays)
        {
            problem = new Message("pins.too-many", id, cavities.Length, MostWays);
            return null;
        }

        var others = circuit.Conditions.OrderBy(c => c.NeedsHelper).Select(c => c.Name).Except(conditions, StringComparer.Ordinal).ToList();
        var alike = classes.Select(c => c.DistinctBy(f => f.Name).ToList()).Where(c => c.Count > 1)
            .Select(c => new AlikePins([.. c.Select(f => f.Name)], PartedIn(forecaster, others, c)));
        return new SheetPins(part, Puzzle(cavities, conditions, classes), functions, [.. alike], conditions, forecaster.Rest);
    }

    private static Message? Wrong(Circuit circuit, string id, char half, ImmutableArray<string> conditions)
    {
        var fit = circuit.Parts.Where(p => p is Relay or Connector).Select(p => p.Id).ToList();
        return fit.Count == 0 ? new Message("pins.no-parts")
            : circuit.Find(id) is not (Relay or Connector) ? new Message("pins.no-part", id, string.Join(", ", fit), Spelling.Hint(id, fit))
            : !circuit[id].Notes.Probe || Cautions.ForbidProbing(circuit, circuit[id]) ? new Message("pins.never", id)
            : half is not ('a' or 'b') ? new Message("pins.bad-half", half.ToString())
            : circuit[id] is Connector && !circuit.Cavities(id).Any() ? new Message("pins.no-cavities", id)
            : conditions.FirstOrDefault(c => circuit.FindCondition(c) is null) is { } unknown
                ? new Message("pins.no-condition", unknown, string.Join(", ", circuit.Conditions.Select(c => c.Name)))
                : null;
    }

    private static string Letter(int number) => number < 26 ? ((char)('A' + number)).ToString() : Letter((number / 26) - 1) + Letter(number % 26);

    /// <summary>
    /// The conditions in which volts part the most pairs of cavities: the best, and one more where it parts pairs that neither the
    /// first nor ohms part. Conditions that one person can hold come before the others; those that need the engine or a load are left out.
    /// </summary>
    private static ImmutableArray<string> Choose(Circuit circuit, PinForecaster forecaster, ImmutableArray<TerminalName> terminals)
    {
        var candidates = circuit.Conditions.Where(c => !c.EngineTurns && c.Needs.IsEmpty && c.AlternatorVolts is null).OrderBy(c => c.NeedsHelper).Select(c => c.Name).ToList();
        var parted = candidates.ToDictionary(c => c, c => Parted([.. terminals.Select(t => forecaster.Volts(t, c))]), StringComparer.Ordinal);
        var known = Parted([.. terminals.Select(forecaster.Ohms)]);
        var chosen = ImmutableArray.CreateBuilder<string>();
        while (chosen.Count < MostConditions)
        {
            var left = candidates.Except(chosen).ToList();
            if (left.Count == 0)
            {
                break;
            }

            // Volts come first, so that ohms are never measured where volts lie: the first condition is chosen by volts alone.
            var best = left.MaxBy(c => chosen.Count == 0 ? parted[c].Count : parted[c].Except(known).Count())!;
            if (chosen.Count > 0 && !parted[best].Except(known).Any())
            {
                break;
            }

            chosen.Add(best);
            known.UnionWith(parted[best]);
        }

        return chosen.Count > 0 ? chosen.ToImmutable() : [forecaster.Rest];
    }

    /// <summary>The condition in which volts part the most pairs of the functions.</summary>
    private static string? PartedIn(PinForecaster forecaster, List<string> conditions, List<PinFunction> functions)
    {
        var best = conditions
            .Select(c => (Condition: c, Pairs: Parted(functions.ConvertAll(f => f.Terminal is { } terminal ? forecaster.Volts(terminal, c) : Ghost(c))).Count))
            .MaxBy(p => p.Pairs);
        return best.Pairs > 0 ? best.Condition : null;
    }

    private static PinForecast Ghost(string condition) => new(PinSetting.Volts, condition, false, PinExpectation.Volts(0, GhostVolts));

    private static HashSet<(int First, int Second)> Parted(List<PinForecast> forecasts)
    {
        var pairs = new HashSet<(int First, int Second)>();
        for (var i = 0; i < forecasts.Count; i++)
        {
            for (var j = i + 1; j < forecasts.Count; j++)
            {
                if (AreApart(forecasts[i].Expected, forecasts[j].Expected))
                {
                    pairs.Add((i, j));
                }
            }
        }

        return pairs;
    }

    private static bool AreApart(PinExpectation one, PinExpectation other) => (one, other) switch
    {
        (PinExpectation.Near a, PinExpectation.Near b) => Math.Abs(a.Mean - b.Mean) > Apart * Math.Sqrt(((a.Spread * a.Spread) + (b.Spread * b.Spread)) / 2),
        (PinExpectation.Near, _) => ReferenceEquals(other, PinExpectation.Open),
        (_, PinExpectation.Near) => ReferenceEquals(one, PinExpectation.Open),
        _ => false,
    };

    /// <summary>Functions that are linked by pairs that nothing parts are one class: a member of it may be taken for another.</summary>
    private static List<List<PinFunction>> Classes(ImmutableArray<PinFunction> functions)
    {
        var classes = new List<List<PinFunction>>();
        foreach (var function in functions)
        {
            var joined = classes.FindAll(c => c.Exists(f => !f.Forecasts.Zip(function.Forecasts).Any(p => AreApart(p.First.Expected, p.Second.Expected))));
            var merged = joined.SelectMany(c => c).Append(function).ToList();
            var at = joined.Count > 0 ? classes.IndexOf(joined[0]) : classes.Count;
            classes.RemoveAll(joined.Contains);
            classes.Insert(at, merged);
        }

        return classes;
    }

    private static double Ways(List<List<PinFunction>> classes)
    {
        var (ways, placed) = (1.0, 0);
        foreach (var size in classes.Select(c => c.Count))
        {
            for (var i = 1; i <= size; i++)
            {
                ways *= (double)++placed / i;
            }
        }

        return Math.Round(ways);
    }

    private static PinPuzzle Puzzle(ImmutableArray<string> cavities, ImmutableArray<string> conditions, List<List<PinFunction>> classes)
    {
        var roles = classes.ConvertAll(c => string.Join("/", c.Select(f => f.Name).Distinct(StringComparer.Ordinal)));
        var expected = classes.ConvertAll(c => Enumerable.Range(0, c[0].Forecasts.Length).Select(f => Together([.. c.Select(m => m.Forecasts[f])])).ToImmutableArray());
        var numbers = cavities.Select((c, i) => (c, i)).ToDictionary(x => x.c, x => x.i, StringComparer.Ordinal);
        PinForecast? Forecast(int[] way, PinTest test) =>
            test.Second == PinTest.Body && test.Power is null && numbers.TryGetValue(test.First, out var cavity)
                ? expected[way[cavity]].FirstOrDefault(f => f.Setting == test.Setting && (test.Setting != PinSetting.Volts || f.Condition == test.Condition))
                : null;
        var hypotheses = AllWays([.. classes.Select(c => c.Count)], new int[cavities.Length], 0).Select(way => new PinHypothesis(
            string.Join(", ", way.Select((c, i) => $"{cavities[i]} {roles[c]}")), 1, [.. way.Select((c, i) => new PinRole(cavities[i], roles[c]))], "",
            test => Forecast(way, test)?.Expected ?? PinExpectation.Anything,
            test => test.Setting == PinSetting.Volts || Forecast(way, test) is { IsLive: false }));
        return new PinPuzzle(
            cavities, [.. hypotheses],
            [
                .. conditions.SelectMany(c => cavities.Select(p => new PinTest(PinSetting.Volts, p, PinTest.Body, Condition: c))),
                .. cavities.Select(p => new PinTest(PinSetting.Ohms, p, PinTest.Body)),
            ]);
    }

    /// <summary>What any member of a class may show: the middle of their means, with a spread that reaches them all.</summary>
    private static PinForecast Together(ImmutableArray<PinForecast> members)
    {
        var first = members[0] with { IsLive = members.Any(m => m.IsLive) };
        var near = members.Select(m => m.Expected).OfType<PinExpectation.Near>().ToList();
        if (members.All(m => m.Expected == first.Expected))
        {
            return first;
        }

        if (near.Count < members.Length)
        {
            return first with { Expected = PinExpectation.Anything };
        }

        var (low, high) = (near.Min(n => n.Mean), near.Max(n => n.Mean));
        return first with { Expected = near[0] with { Mean = (low + high) / 2, Spread = near.Max(n => n.Spread) + ((high - low) / 2) } };
    }

    /// <summary>Every way to give the classes to the cavities, each once: members of a class are not told apart.</summary>
    private static IEnumerable<int[]> AllWays(int[] left, int[] way, int cavity)
    {
        if (cavity == way.Length)
        {
            yield return [.. way];
            yield break;
        }

        for (var c = 0; c < left.Length; c++)
        {
            if (left[c] == 0)
            {
                continue;
            }

            left[c]--;
            way[cavity] = c;
            foreach (var whole in AllWays(left, way, cavity + 1))
            {
                yield return whole;
            }

            left[c]++;
        }
    }
}
