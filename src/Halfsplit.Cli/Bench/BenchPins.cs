using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Relays;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Pins;

namespace Halfsplit.Cli.Bench;

/// <summary>Which pin is which: of a relay, of a connector. And what to do with a relay once that is known.</summary>
public static class BenchPins
{
    /// <summary>So many assignments are listed.</summary>
    private const int Shown = 4;

    private const double WorthShowing = 0.01, WorthCounting = 0.001;

    public static int Relay(Terminal terminal, RelaySettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var pins = Names(settings.Pins);
        if (pins.Length is < RelayPuzzle.FewestPins or > RelayPuzzle.MostPins || pins.Distinct(StringComparer.Ordinal).Count() != pins.Length)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.bad-pins", settings.Pins));
        }

        var (ofSearch, least) = RelayPuzzle.ExpectedMeasurements(pins.Length);
        return Find(
            terminal, settings, RelayPuzzle.Of(pins), settings.Readings, new Message("bench.relay-title", pins.Length), [new Message("bench-caution.coil")],
            search => [.. search.Details.Select(d => new AnswerLine("across-coil", new Message("bench.odds-of", PinText.Detail(d.Detail), Odds.Say(d.Odds))))],
            [
                new Message("bench.relay-expected", new Figure(ofSearch, "0.0"), new Figure(least, "0.0")), new Message("bench.relay-resistor"),
                new Message("bench.pins-assumed"),
            ]);
    }

    public static int Cavities(Terminal terminal, CavitySettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var functions = ImmutableArray.CreateBuilder<CavityFunction>();
        foreach (var text in settings.Functions)
        {
            if (CavityFunction.Parse(text, out var problem) is not { } function)
            {
                return terminal.Fail(ExitCode.Usage, settings.Json, problem!);
            }

            functions.Add(function);
        }

        var cavities = Names(settings.Cavities);
        if (cavities.Length is 0 or > CavityPuzzle.MostCavities || functions.Count == 0 || functions.Count > cavities.Length
            || cavities.Distinct(StringComparer.Ordinal).Count() != cavities.Length
            || functions.Select(f => f.Name).Distinct(StringComparer.Ordinal).Count() != functions.Count)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.bad-cavities", CavityPuzzle.MostCavities));
        }

        return Find(
            terminal, settings, CavityPuzzle.Of(cavities, functions.ToImmutable()), settings.Readings,
            new Message("bench.cavities-title", cavities.Length), [new Message("bench.cavities-caution")], _ => [], [new Message("bench.pins-assumed")]);
    }

    public static int Coil(Terminal terminal, CoilSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, CoilPower.Of(settings.Ohms, settings.SupplyVolts, settings.RatedVolts).Then(CoilPower.Answer));
    }

    public static int Contact(Terminal terminal, ContactSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return AnswerPage.Show(terminal, settings, ContactDrop.Of(settings.Millivolts * 1e-3, settings.Amps).Then(ContactDrop.Answer));
    }

    private static int Find(
        Terminal terminal, Cli.Settings.VerbSettings settings, PinPuzzle puzzle, string[] readings, Message title, ImmutableArray<Message> cautions,
        Func<PinSearch, ImmutableArray<AnswerLine>> more, ImmutableArray<Message> notes)
    {
        var search = PinSearch.Begin(puzzle);
        foreach (var text in readings)
        {
            if (PinReadingText.Parse(text, puzzle, out var problem) is not { } reading)
            {
                return terminal.Fail(ExitCode.Usage, settings.Json, problem!);
            }

            search = search.With(reading.Test, reading.Value);
        }

        var assignments = search.Assignments;
        var lines = assignments.Where(a => a.Odds > WorthShowing).Take(Shown)
            .Select(a => new AnswerLine("perhaps", new Message("bench.odds-of", PinText.Of(a), Odds.Say(a.Odds))));
        var next = search.Next;
        return AnswerPage.Show(terminal, settings, Outcome.Of(new Answer(
            title, cautions, readings.Length == 0 ? [] : [.. lines, .. more(search)],
            [
                search.Settled is { } settled ? new Message("bench.pins-settled", PinText.Of(settled))
                    : assignments[0] is { Settles.Length: 0, Odds: > 0.5 } ? new Message("bench.pins-nothing-fits")
                    : new Message("bench.pins-open", assignments.Count(a => a.Settles.Length > 0 && a.Odds > WorthCounting)),
                .. next is null ? ImmutableArray<Message>.Empty : [new Message("bench.pins-next", PinText.Of(next), next.Id)],
            ],
            notes)));
    }

    private static ImmutableArray<string> Names(string text) =>
        [.. text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
}
