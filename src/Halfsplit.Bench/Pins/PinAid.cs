using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Relays;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Pins;
using Halfsplit.Diagnosis;

namespace Halfsplit.Bench.Pins;

/// <summary>Which pin is which, of a relay or of a connector, and what to measure next.</summary>
public static class PinAid
{
    /// <summary>So many assignments are listed.</summary>
    private const int Shown = 4;

    private const double WorthShowing = 0.01;

    /// <param name="pins">The names of the pins, with commas or blanks between.</param>
    /// <param name="readings">What was measured, in any order, as <see cref="PinReadingText"/> reads it.</param>
    public static Outcome<Answer> Relay(string pins, IReadOnlyList<string> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var names = Names(pins);
        if (names.Length is < RelayPuzzle.FewestPins or > RelayPuzzle.MostPins || !AreDifferent(names))
        {
            return Outcome.Wrong<Answer>(new Message("bench.bad-pins", pins));
        }

        var (ofSearch, least) = RelayPuzzle.ExpectedMeasurements(names.Length);
        return Search(RelayPuzzle.Of(names), readings).Then(search => Answer(
            search, readings.Count > 0, new Message("bench.relay-title", names.Length), [CoilPower.Caution],
            [.. search.Details.Select(d => new AnswerLine("across-coil", new Message("bench.odds-of", PinText.Detail(d.Detail), OddsMessage.Of(d.Odds))))],
            [
                new Message("bench.relay-expected", new Figure(ofSearch, "0.0"), new Figure(least, "0.0")), new Message("bench.relay-resistor"),
                Assumed,
            ]) with
        {
            Found = readings.Count > 0 ? FoundOf(search) : null,
        });
    }

    /// <param name="cavities">The names of the cavities, with commas or blanks between.</param>
    /// <param name="functions">What one of them shows, each, as <see cref="CavityFunction"/> reads it.</param>
    public static Outcome<Answer> Cavities(string cavities, IReadOnlyList<string> functions, IReadOnlyList<string> readings)
    {
        ArgumentNullException.ThrowIfNull(functions);
        ArgumentNullException.ThrowIfNull(readings);
        var known = ImmutableArray.CreateBuilder<CavityFunction>();
        foreach (var text in functions)
        {
            if (CavityFunction.Parse(text, out var problem) is not { } function)
            {
                return Outcome.Wrong<Answer>(problem!);
            }

            known.Add(function);
        }

        var names = Names(cavities);
        return names.Length is 0 or > CavityPuzzle.MostCavities || known.Count == 0 || known.Count > names.Length
            || !AreDifferent(names) || !AreDifferent([.. known.Select(f => f.Name)])
            ? Outcome.Wrong<Answer>(new Message("bench.bad-cavities", CavityPuzzle.MostCavities))
            : Search(CavityPuzzle.Of(names, known.ToImmutable()), readings).Then(search => Answer(
                search, readings.Count > 0, new Message("bench.cavities-title", names.Length), [new Message("bench.cavities-caution")], [],
                [Assumed]));
    }

    private static Message Assumed => new("bench.pins-assumed", new Measure(100 * PinDefaults.Of("pin.slip"), Unit.Percent).Say());

    private static Outcome<PinSearch> Search(PinPuzzle puzzle, IReadOnlyList<string> readings)
    {
        var search = PinSearch.Begin(puzzle);
        foreach (var text in readings)
        {
            if (PinReadingText.Parse(text, puzzle, out var problem) is not { } reading)
            {
                return Outcome.Wrong<PinSearch>(problem!);
            }

            search = search.With(reading.Test, reading.Value);
        }

        return Outcome.Of(search);
    }

    private static Answer Answer(
        PinSearch search, bool hasBegun, Message title, ImmutableArray<Message> cautions, ImmutableArray<AnswerLine> more, ImmutableArray<Message> notes)
    {
        var assignments = search.Assignments;
        var lines = assignments.Where(a => a.Odds > WorthShowing).Take(Shown)
            .Select(a => new AnswerLine("perhaps", new Message("bench.odds-of", PinText.Of(a), OddsMessage.Of(a.Odds))));
        var next = search.Next;
        return new Answer(
            title, cautions, hasBegun ? [.. lines, .. more] : [],
            [
                search.Settled is { } settled ? new Message("bench.pins-settled", PinText.Of(settled))
                    : assignments[0] is { Settles.Length: 0, Odds: > 0.5 } ? new Message("bench.pins-nothing-fits")
                    : new Message("bench.pins-open", search.Possible),
                .. search.Misfits.Select(m => new Message("bench.pins-misfit", m.Test.Id)),
                .. next is null ? ImmutableArray<Message>.Empty : [new Message("bench.pins-next", PinText.Of(next), next.Id)],
            ],
            notes)
        {
            NextReading = next?.Id,
        };
    }

    /// <summary>An open coil, or a good one once a click or its ohms have settled where it is.</summary>
    private static string? FoundOf(PinSearch search)
    {
        var sure = BenchDefaults.Table["odds.sure"];
        var open = search.Details.Where(d => d.Detail == RelayPuzzle.OpenCoil).Sum(d => d.Odds);
        return open >= sure ? "relay-coil-open" : search.Settled is not null && open <= 1 - sure ? "relay-coil-good" : null;
    }

    private static bool AreDifferent(ImmutableArray<string> names) => names.Distinct(StringComparer.Ordinal).Count() == names.Length;

    private static ImmutableArray<string> Names(string text) =>
        [.. text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
}
