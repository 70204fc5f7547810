using System.Collections.Immutable;
using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Conversation;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Pins;

namespace Halfsplit.Cli.Verbs;

/// <summary>Finds which cavity of a relay's socket or connector is which, from measurements in any order.</summary>
public static class Pins
{
    public static int Run(Terminal terminal, PinsSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var source = SheetSource.Find(settings.Sheet);
        if (source.Text is null || source.Read().Circuit is not { } circuit)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, source.Problem ?? new Message("cli.sheet-has-errors", source.Name));
        }

        ImmutableArray<string> cavities =
            [.. settings.Cavities.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
        var half = settings.Half.Length == 1 ? char.ToLowerInvariant(settings.Half[0]) : '?';
        var part = NameSearch.Part(circuit, settings.Part, out _)?.Id ?? settings.Part;
        Message? problem = null;
        var pins = terminal.While(() => SheetPuzzle.Of(circuit, part, half, cavities, [.. settings.Conditions], out problem));
        if (pins is null)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, problem!);
        }

        var search = PinSearch.Begin(pins.Puzzle);
        foreach (var text in settings.Readings)
        {
            if (PinReadingText.Parse(text, pins.Puzzle, out var wrong) is not { } reading)
            {
                return terminal.Fail(ExitCode.Usage, settings.Json, wrong!);
            }

            search = search.With(reading.Test, reading.Value);
        }

        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => PinsJson.Write(json, terminal, pins, search));
            return ExitCode.Good;
        }

        PinsPage.Begin(terminal, circuit, pins, half);
        PinsPage.Stand(terminal, pins, search, settings.Talk);
        if (settings.Talk)
        {
            Talk(terminal, pins, search);
        }

        return ExitCode.Good;
    }

    /// <summary>One line after another: the answer to what was asked, or any measurement in full, until it is settled and every reading fits, or the person has enough.</summary>
    private static void Talk(Terminal terminal, SheetPins pins, PinSearch search)
    {
        while ((search.Settled is null || !search.Misfits.IsEmpty) && Prompt.Ask(terminal) is { } line)
        {
            var command = TalkCommand.Read(line);
            if (command.Name == "quit")
            {
                return;
            }

            if (command.Name == "back")
            {
                search = search.Readings.Take(search.Readings.Length - 1).Aggregate(PinSearch.Begin(pins.Puzzle), (s, r) => s.With(r.Test, r.Value));
                PinsPage.Stand(terminal, pins, search, isTalk: true);
                continue;
            }

            var text = line.Contains('=', StringComparison.Ordinal) || (search.Next ?? search.Misfits.FirstOrDefault().Test) is not { } asked ? line : $"{asked.Id} = {line}";
            if (PinReadingText.Parse(text, pins.Puzzle, out var wrong) is not { } reading)
            {
                terminal.Line(wrong!, Page.Caution);
                continue;
            }

            search = search.With(reading.Test, reading.Value);
            PinsPage.Stand(terminal, pins, search, isTalk: true);
        }
    }
}
