using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Pins;
using Halfsplit.Diagnosis.Safety;

namespace Halfsplit.Cli.Output;

/// <summary>Which cavity is which: what the sheet says of each, and how the search stands.</summary>
public static class PinsPage
{
    /// <summary>So many assignments are listed.</summary>
    private const int Shown = 4;

    private const double WorthShowing = 0.01;

    /// <summary>The part, the cautions, the way to it, and what each function should show.</summary>
    public static void Begin(Terminal terminal, Circuit circuit, SheetPins pins, char half)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(pins);
        var part = pins.Part;
        terminal.Line(new Message("pins.title", Describe.Seated(circuit, part.Id), pins.Puzzle.Pins.Length), Page.Heading);
        terminal.Line(terminal.Say("bench.caution", new Message("bench.cavities-caution")), Page.Caution, 2, 2);
        foreach (var caution in circuit.Cautions.Concat(circuit.FindPlace(part.Notes.Place)?.Cautions ?? []).Concat(part.Notes.Cautions).Distinct(StringComparer.Ordinal))
        {
            terminal.Line(terminal.Say("bench.caution", Cautions.Of(caution)), Page.Caution, 2, 2);
        }

        terminal.Line(
            part is Connector ? new Message("pins.begin-connector", pins.Rest, part.Id, half.ToString()) : new Message("pins.begin-relay", pins.Rest, part.Id),
            null, 2, 2);
        terminal.Line(new Message("pins.names", string.Join(", ", pins.Puzzle.Pins)), null, 2, 2);
        BoxPage.Draw(terminal, circuit, [part.Id]);
        terminal.Line(terminal.Say("pins.should"), Page.Heading);
        foreach (var function in pins.Functions)
        {
            terminal.Row(function.Name, string.Join("; ", function.Forecasts.Select(f => terminal.Say(PinText.Of(f)))));
        }

        foreach (var alike in pins.Alike)
        {
            var names = string.Join(", ", alike.Names.Select(n => n == CavityPuzzle.Empty ? terminal.Say("pins.role-empty") : n));
            terminal.Line(alike.PartedIn is { } condition ? new Message("pins.alike-here", names, condition) : new Message("pins.alike", names), Page.Caution, 2, 2);
        }

        terminal.Line(terminal.Say("bench.note", new Message("pins.healthy")), null, 0, 2);
        terminal.Blank();
    }

    /// <summary>How it stands now, and what to measure next.</summary>
    public static void Stand(Terminal terminal, SheetPins pins, PinSearch search, bool isTalk)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(pins);
        ArgumentNullException.ThrowIfNull(search);
        var assignments = search.Assignments;
        if (search.Readings.Length > 0)
        {
            foreach (var assignment in assignments.Where(a => a.Odds > WorthShowing).Take(Shown))
            {
                terminal.Line(terminal.Say("bench.odds-of", PinText.Of(assignment), OddsText.Of(assignment.Odds)), null, 2, 4);
            }
        }

        var next = search.Next;
        terminal.Line(
            search.Settled is { } settled ? new Message(
                settled.Roles.Select(r => r.Role).Distinct(StringComparer.Ordinal).Count() > 1 ? "pins.settled" : "pins.all-alike", PinText.Of(settled))
                : assignments[0] is { Settles.Length: 0, Odds: > 0.5 } ? new Message("pins.nothing-fits")
                : next is null ? new Message("pins.no-more", search.Possible)
                : new Message("bench.pins-open", search.Possible),
            Page.Heading, 0, 2);
        foreach (var misfit in search.Misfits)
        {
            terminal.Line(new Message("bench.pins-misfit", misfit.Test.Id), Page.Caution, 0, 2);
        }

        if (next is not null)
        {
            terminal.Line(isTalk ? new Message("pins.next-talk", PinText.Of(next)) : new Message("bench.pins-next", PinText.Of(next), next.Id), Page.Heading, 0, 2);
        }
    }
}
