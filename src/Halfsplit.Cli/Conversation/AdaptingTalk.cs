using System.Globalization;
using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Verbs;

namespace Halfsplit.Cli.Conversation;

/// <summary>Asks what differs in a car from a sheet, one change at a time, until nothing more does.</summary>
public sealed class AdaptingTalk(Terminal terminal, Circuit parent)
{
    private readonly List<SheetChange> _changes = [];

    private bool _quit, _ended;

    /// <summary>The sheet with the changes so far.</summary>
    public Circuit Circuit { get; private set; } = parent;

    /// <summary>What was changed, in its order.</summary>
    public IReadOnlyList<SheetChange> Changes => _changes;

    /// <summary>Talks to the end. False when the person quits and nothing shall be written.</summary>
    public bool Run()
    {
        Menu();
        while (true)
        {
            if (Ask() is not { } line)
            {
                return !_quit;
            }

            if (line.Length == 0)
            {
                return true;
            }

            // At the menu a question mark can only ask what there is.
            if (TalkCommand.Read(line) is { Name: "help", Rest: "" } || TalkCommand.IsUnknown(line))
            {
                Menu();
                continue;
            }

            One(line);
            if (_quit || _ended)
            {
                return !_quit;
            }

            terminal.Blank();
            terminal.Line(new Message("adapting.more"));
        }
    }

    private void Menu()
    {
        terminal.Line(new Message("adapting.heading", Circuit.Title), Page.Heading);
        List([.. Does.Select(d => terminal.Say(d.Code))]);
        terminal.Line(new Message("adapting.how"));
    }

    private (string Code, Action Ask)[] Does =>
    [
        ("adapting.do-notes", Notes),
        ("adapting.do-wire", WireValues),
        ("adapting.do-connector", () => Insert(isConnector: true)),
        ("adapting.do-splice", () => Insert(isConnector: false)),
        ("adapting.do-without", WithoutRelay),
        ("adapting.do-relay", MoreRelay),
        ("adapting.do-ground", GroundSide),
        ("adapting.do-id", Id),
        ("adapting.do-title", Title),
    ];

    private void One(string line)
    {
        if (Number(line) is { } number)
        {
            if (number >= 1 && number <= Does.Length)
            {
                Does[number - 1].Ask();
            }
            else
            {
                terminal.Line(new Message("adapting.no-choice", line, Does.Length), Page.Caution);
            }
        }
        else if (ChangeText.Parse(line, out var problem) is { } change)
        {
            Apply(change);
        }
        else
        {
            terminal.Line(problem!, Page.Caution);
        }
    }

    private void Notes()
    {
        if (ChoosePart() is not { } part)
        {
            return;
        }

        var notes = part.Notes;
        Keep("adapting.ask-name", notes.Name, (text, unknown) => new NamePart(part.Id, unknown ? null : text));
        while (Place("adapting.ask-place", notes.Place ?? Nothing) is { } place)
        {
            if (Apply(new PlacePart(part.Id, place.Choice)))
            {
                break;
            }
        }

        Keep("adapting.ask-slot", Circuit.Find(part.Id)?.Notes.Slot, (text, unknown) => new SlotPart(part.Id, unknown ? null : text));
        Keep(
            "adapting.ask-price",
            notes.Price is { } price ? string.Create(CultureInfo.InvariantCulture, $"{price.Low} to {price.High}") : terminal.Say("adapting.usual"),
            (text, unknown) => unknown ? new PricePart(part.Id, null)
                : ChangeText.ReadPrice(text, out var problem) is { } range ? new PricePart(part.Id, range) : Wrong(problem!));
    }

    private void Id()
    {
        if (ChoosePart() is { } part)
        {
            Keep("adapting.ask-id", part.Id, (text, _) => new RenamePart(part.Id, text));
        }
    }

    private void Title() => Keep("adapting.ask-title", Circuit.Title, (text, unknown) => new TitleSheet(unknown ? Circuit.Title : text));

    private void WireValues()
    {
        if (ChooseWire() is not { } wire)
        {
            return;
        }

        var spec = wire.Spec;
        var was = spec.Gauge.AwgText is { } awg ? awg + "AWG" : string.Create(CultureInfo.InvariantCulture, $"{spec.Gauge.SquareMillimetres}mm2");
        Keep("adapting.ask-colour", spec.Colour, (text, unknown) => new ColourWire(wire.Id, unknown ? null : text));
        Keep("adapting.ask-gauge", was, (text, unknown) => unknown ? new GaugeWire(wire.Id, null)
            : ChangeText.ReadGauge(text, out var problem) is { } read ? new GaugeWire(wire.Id, read.Gauge, read.GaugeGuessed) : Wrong(problem!));
        Keep("adapting.ask-length", spec.LengthWritten, (text, unknown) => unknown ? new LengthWire(wire.Id, null)
            : ChangeText.ReadLength(text, out var problem) is { } read ? new LengthWire(wire.Id, read.LengthWritten, read.LengthGuessed) : Wrong(problem!));
    }

    private void Insert(bool isConnector)
    {
        if (ChooseWire() is not { } wire)
        {
            return;
        }

        // Each answer is tried at once, so that a wrong one does not lose those before it.
        SheetChange? Change(string? id, string? name, PlaceChoice? place, string? share, out Message? problem)
        {
            // The words of the change say the share, so that one reader reads it.
            var text = (isConnector ? "connector in " : "splice in ") + wire.Id + (IsSaid(share) ? " after " + share : "");
            return ChangeText.Parse(text, out problem) switch
            {
                InsertConnector connector => connector with { Id = Said(id), Name = Said(name), Place = place },
                InsertSplice splice => splice with { Id = Said(id), Name = Said(name), Place = place },
                _ => null,
            };
        }

        Message? WhatIsWrong(string? id, string? share) =>
            Change(id, null, null, share, out var problem) is { } change ? SheetAdapter.Apply(Circuit, change).Problem : problem;

        if (WhatIsWrong(null, null) is { } cannot)
        {
            terminal.Line(cannot, Page.Caution);
            return;
        }

        var id = AskUntil(() => Ask("adapting.ask-new-id", FreeId(isConnector ? "C" : "SP")), text => WhatIsWrong(text, null));
        var name = Ask("adapting.ask-new-name");
        var place = Place("adapting.ask-new-place", null);
        var share = AskUntil(() => Ask("adapting.ask-share"), text => WhatIsWrong(id, text));
        if (!_quit && !_ended && Change(id, name, place?.Choice, share, out _) is { } change)
        {
            Apply(change);
        }
    }

    /// <summary>Asks again as long as something is wrong with the answer.</summary>
    private string? AskUntil(Func<string?> ask, Func<string?, Message?> wrong)
    {
        var answer = ask();
        while (!_quit && !_ended && wrong(answer) is { } problem)
        {
            terminal.Line(problem, Page.Caution);
            answer = ask();
        }

        return answer;
    }

    private void WithoutRelay()
    {
        var relays = Circuit.Parts.OfType<Relay>().ToList();
        if (Choose("adapting.which-relay", [.. relays.Select(r => (r.Id, Named(r)))], WrongPart) is { } relay)
        {
            Apply(new RemoveRelay(relay));
        }
    }

    private void MoreRelay()
    {
        if (ChooseLoad() is not { } load)
        {
            return;
        }

        Message? WhatIsWrong(string? id) => SheetAdapter.Apply(Circuit, new AddRelay(load, Said(id), null, null)).Problem;
        if (WhatIsWrong(null) is { } cannot)
        {
            terminal.Line(cannot, Page.Caution);
            return;
        }

        var id = AskUntil(() => Ask("adapting.ask-new-id", FreeId("K")), WhatIsWrong);
        var name = Ask("adapting.ask-new-name");
        var place = Place("adapting.ask-new-place", null);
        if (!_quit && !_ended)
        {
            Apply(new AddRelay(load, Said(id), Said(name), place?.Choice));
        }
    }

    private void GroundSide()
    {
        if (ChooseLoad() is { } load)
        {
            Apply(new SwitchGroundSide(load));
        }
    }

    /// <summary>Makes the change and says what became of it; false where it is refused.</summary>
    private bool Apply(SheetChange change)
    {
        var done = SheetAdapter.Apply(Circuit, change);
        if (done.Circuit is null)
        {
            terminal.Line(done.Problem!, Page.Caution);
            if (change is RemoveRelay { DespiteAmps: false } relay && SheetAdapter.Apply(Circuit, relay with { DespiteAmps = true }).Circuit is not null
                && Ask("adapting.ask-despite") is { } answer && TalkCommand.IsYes(answer))
            {
                return Apply(relay with { DespiteAmps = true });
            }

            return false;
        }

        var differences = CircuitDifference.Between(Circuit, done.Circuit);
        foreach (var difference in differences)
        {
            terminal.Line(new Message("adapting.changed", difference), null, 2, 4);
        }

        if (differences.IsEmpty && done.Assumptions.IsEmpty)
        {
            terminal.Line(new Message("adapting.same"), null, 2);
            return true;
        }

        Adapt.Tell(terminal, done.Assumptions, done.Warnings);
        Circuit = done.Circuit;
        _changes.Add(change);
        return true;
    }

    /// <summary>Asks for a value that Enter keeps, again where the answer can't be taken.</summary>
    private void Keep(string question, string? present, Func<string, bool, SheetChange?> change)
    {
        while (!_quit && !_ended && Ask(question, present ?? Nothing) is { Length: > 0 } text)
        {
            if (change(text, TalkCommand.IsUnknown(text)) is { } made && Apply(made))
            {
                return;
            }
        }
    }

    private SheetChange? Wrong(Message problem)
    {
        terminal.Line(problem, Page.Caution);
        return null;
    }

    /// <summary>A place of the sheet or a new one; null where the person leaves it as it is.</summary>
    private (PlaceChoice? Choice, bool IsSaid)? Place(string question, string? present)
    {
        if (_quit || _ended)
        {
            return null;
        }

        List([.. Circuit.Places.Select(p => p.Name)]);
        while ((present is null ? Ask(question) : Ask(question, present)) is { Length: > 0 } text)
        {
            if (TalkCommand.IsUnknown(text))
            {
                return (null, true);
            }

            if (Number(text) is { } number)
            {
                if (number >= 1 && number <= Circuit.Places.Length)
                {
                    return (new PlaceChoice(Circuit.Places[number - 1].Name), true);
                }

                terminal.Line(new Message("adapting.no-such-number", text, Circuit.Places.Length), Page.Caution);
            }
            else if (ChangeText.ReadPlace(text, out var problem) is not { } choice)
            {
                terminal.Line(problem!, Page.Caution);
            }
            else if (choice.Minutes is not null || choice.MinutesUnknown || Circuit.Places.Any(p => Same(p.Name, choice.Name)))
            {
                return (choice, true);
            }
            else if (New(choice.Name) is { } made)
            {
                return (made, true);
            }
        }

        return null;
    }

    /// <summary>A place that the sheet has not, unless it was misspelt.</summary>
    private PlaceChoice? New(string name)
    {
        if (Spelling.Nearest(name, Circuit.Places.Select(p => p.Name)) is { } near)
        {
            if (Ask("adapting.ask-meant", near, name) is not { } answer)
            {
                return null;
            }

            if (TalkCommand.IsYes(answer))
            {
                return new PlaceChoice(near);
            }
        }

        while (Ask("adapting.ask-minutes", name) is { } minutes)
        {
            if (!IsSaid(minutes))
            {
                return new PlaceChoice(name, null, MinutesUnknown: true);
            }

            if (ChangeText.ReadPlace($"{name}, {minutes}", out var problem) is { Minutes: not null } choice)
            {
                return choice;
            }

            terminal.Line(problem ?? new Message("sheet.not-a-number", minutes, "3 min"), Page.Caution);
        }

        return null;
    }

    /// <summary>A part by its name or from a list, asked again where there is none; null where the person leaves it.</summary>
    private Part? ChoosePart()
    {
        while (Ask("adapting.which-part") is { Length: > 0 } text)
        {
            var named = IsList(text) ? Choose("adapting.which-of", [.. Circuit.Parts.Select(p => (p.Id, Named(p)))], WrongPart) : text;
            if (named is null)
            {
                return null;
            }

            if (NameSearch.Part(Circuit, named, out var problem) is { } part)
            {
                return part;
            }

            terminal.Line(problem!, Page.Caution);
        }

        return null;
    }

    /// <summary>A wire by its ends, or one of those at a part or of all, asked again where there is none; null where the person leaves it.</summary>
    private Wire? ChooseWire()
    {
        while (Ask("adapting.which-wire") is { Length: > 0 } text)
        {
            if (NameSearch.Wire(Circuit, text, out var problem) is { } named)
            {
                return named;
            }

            var part = NameSearch.Part(Circuit, text, out _);
            if (part is not null || IsList(text))
            {
                var wires = Circuit.Wires.Where(w => part is null || w.From.Part == part.Id || w.To.Part == part.Id).ToList();
                if (wires.Count == 0)
                {
                    problem = new Message("adapting.no-wires", part?.Id ?? text);
                }
                else if (Choose("adapting.which-of", [.. wires.Select(w => (w.Id, $"{w.Id} {w.Spec.Colour ?? "?"}"))], WrongWire) is not { } chosen)
                {
                    return null;
                }
                else if (NameSearch.Wire(Circuit, chosen, out problem) is { } wire)
                {
                    return wire;
                }
            }

            terminal.Line(problem!, Page.Caution);
        }

        return null;
    }

    private Message? WrongPart(string name) => NameSearch.Part(Circuit, name, out var problem) is null ? problem : null;

    private Message? WrongWire(string name) => NameSearch.Wire(Circuit, name, out var problem) is null ? problem : null;

    private static bool IsList(string text) => TalkCommand.Read(text) is { Name: "list", Rest: "" };

    /// <summary>A load, or the terminal of one that is fed at several.</summary>
    private string? ChooseLoad() => Choose("adapting.which-load", [.. Circuit.Parts.OfType<Load>().SelectMany(load =>
    {
        var fed = load.Terminals.Where(t => t != load.Across.Neg).ToList();
        return fed.Count == 1 ? [(load.Id, Named(load))] : fed.Select(t => ($"{load.Id}.{t}", $"{load.Id}.{t} ({load.Notes.Name ?? load.Id})"));
    })], text => WrongPart(text) is { } problem && WrongPart(TerminalName.Parse(text).Part) is not null ? problem : null);

    /// <summary>One of a numbered list, or what was typed, asked again where that is wrong; null for none.</summary>
    private string? Choose(string question, IReadOnlyList<(string Value, string Label)> options, Func<string, Message?> wrong)
    {
        List([.. options.Select(o => o.Label)]);
        while (Ask(question) is { Length: > 0 } text)
        {
            if (Number(text) is not { } number || options.Any(o => Same(o.Value, text)))
            {
                if (wrong(text) is not { } problem)
                {
                    return text;
                }

                terminal.Line(problem, Page.Caution);
            }
            else if (number >= 1 && number <= options.Count)
            {
                return options[number - 1].Value;
            }
            else
            {
                terminal.Line(new Message("adapting.no-choice", text, options.Count), Page.Caution);
            }
        }

        return null;
    }

    private void List(IReadOnlyList<string> lines)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            terminal.Line(string.Create(CultureInfo.InvariantCulture, $"{i + 1}. {lines[i]}"), null, 2, 3);
        }
    }

    /// <summary>Asks; null when the person quits or the input has ended.</summary>
    private string? Ask(string? question = null, params object[] arguments)
    {
        if (_quit || _ended)
        {
            return null;
        }

        if (question is not null)
        {
            terminal.Line(new Message(question, arguments));
        }

        var line = Prompt.Ask(terminal);
        _ended = line is null;
        _quit = line is not null && TalkCommand.Read(line) is { Name: "quit", Rest: "" };
        if (_ended)
        {
            terminal.Line(new Message("talk.input-ended"), Page.Caution);
        }

        return _quit ? null : line;
    }

    private string Nothing => terminal.Say("adapting.nothing");

    private string FreeId(string prefix)
    {
        for (var n = 1; ; n++)
        {
            var id = prefix + n.ToString(CultureInfo.InvariantCulture);
            if (Circuit.Find(id) is null)
            {
                return id;
            }
        }
    }

    private static string Named(Part part) => part.Notes.Name is { } name ? $"{part.Id} ({name})" : part.Id;

    private static bool IsSaid(string? text) => !string.IsNullOrEmpty(text) && !TalkCommand.IsUnknown(text);

    private static string? Said(string? text) => IsSaid(text) ? text : null;

    private static int? Number(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
