using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Cli.Cars;

/// <summary>
/// Finds what a typed name means in a circuit. What is not found becomes a problem that says what there is; case does
/// not matter where only one thing can be meant.
/// </summary>
public sealed class Names(CircuitSimulator simulator)
{
    private readonly List<Message> _problems = [];

    private Circuit Circuit => simulator.Network.Circuit;

    /// <summary>Everything that was not found.</summary>
    public IReadOnlyList<Message> Problems => _problems;

    /// <summary>A terminal. A cavity without its half means half a, which is the same while the connector is mated.</summary>
    public TerminalName? Terminal(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var name = TerminalName.Parse(text.Trim());
        var all = Circuit.Terminals;
        foreach (var terminal in all)
        {
            if (Same(terminal.ToString(), name.ToString()))
            {
                return terminal;
            }
        }

        foreach (var terminal in all)
        {
            if (Circuit.Find(terminal.Part) is Connector && Same(terminal.ToString(), name + "a"))
            {
                return terminal;
            }
        }

        var part = Circuit.Parts.FirstOrDefault(p => Same(p.Id, name.Part));
        var own = all.Where(t => t.Part == part?.Id).Select(t => t.ToString()).ToList();
        return part is null
            ? Missing<TerminalName?>("cli.no-terminal", text, all.Select(t => t.ToString()))
            : Missing<TerminalName?>("cli.no-terminal-of", text, own, part.Id, string.Join(", ", own));
    }

    /// <summary>Two terminals with a comma between.</summary>
    public (TerminalName First, TerminalName Second)? Pair(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Split(',') is not [var first, var second])
        {
            _problems.Add(new Message("cli.not-a-pair", text));
            return null;
        }

        var (from, to) = (Terminal(first), Terminal(second));
        return from is { } one && to is { } other ? (one, other) : null;
    }

    /// <summary>True where nothing lies between two terminals.</summary>
    public bool IsSamePoint(TerminalName first, TerminalName second) =>
        simulator.Network.NodeOf(first) == simulator.Network.NodeOf(second);

    public string? Condition(string text) =>
        Circuit.FindCondition(text)?.Name ?? Listed("cli.no-condition", text, Circuit.Conditions.Select(c => c.Name));

    public string? Connector(string text) => One("cli.no-connector", text, Circuit.Parts.OfType<Connector>());

    /// <summary>A relay or fuse that can be pulled.</summary>
    public string? Pluggable(string text) => One("cli.no-pluggable", text, Circuit.Parts.Where(p => p.IsPluggable));

    public string? Load(string text) => One("cli.no-load", text, Circuit.Parts.OfType<Load>());

    public string? Wire(string text)
    {
        var ids = Circuit.Wires.Select(w => w.Id).ToList();
        return ids.Find(id => Same(id, text)) ?? Listed("cli.no-wire", text, ids);
    }

    /// <summary>A place, or a part that cannot be reached.</summary>
    public string? PlaceOrPart(string text)
    {
        var all = Circuit.Places.Select(p => p.Name).Concat(Circuit.Parts.Select(p => p.Id)).ToList();
        return all.Find(n => Same(n, text)) ?? Listed("cli.no-place", text, Circuit.Places.Select(p => p.Name));
    }

    /// <summary>A fault that the circuit can have; a mode with degrees gets its middle one if none is said.</summary>
    public Fault? Fault(string text)
    {
        if (!Simulation.Faults.Fault.TryParse(text, out var fault))
        {
            _problems.Add(new Message("cli.bad-fault", text));
            return null;
        }

        var modes = FaultCatalog.For(simulator);
        var owned = modes.Where(m => Same(m.Part, fault.Part)).ToList();
        if (owned.Count == 0)
        {
            return Listed("cli.no-fault-part", fault.Part, modes.Select(m => m.Part).Distinct()) is null ? null : fault;
        }

        var mode = owned.Find(m => Same(m.Mode, fault.Mode));
        if (mode is null)
        {
            var names = owned.Select(m => m.Mode).ToList();
            _problems.Add(new Message(
                "cli.no-fault-mode", owned[0].Part, fault.Mode, string.Join(", ", names), Spelling.Hint(fault.Mode, names)));
            return null;
        }

        if (fault.Severity is not null && mode.Severities.Length == 0 && !mode.Mode.StartsWith("short-to", StringComparison.Ordinal))
        {
            _problems.Add(new Message("cli.no-severity", $"{mode.Part}:{mode.Mode}"));
            return null;
        }

        return new Fault(
            mode.Part, mode.Mode,
            fault.Severity ?? (mode.Severities.Length > 0 ? mode.Severities[mode.Severities.Length / 2] : null));
    }

    /// <summary>The arrangement; names may stand in one text with commas between.</summary>
    public Arrangement? Arrangement(
        string? condition, IEnumerable<string> unplugged, IEnumerable<string> removed, IEnumerable<string> jumpers)
    {
        if (condition is null)
        {
            _problems.Add(new Message("cli.say-condition", string.Join(", ", Circuit.Conditions.Select(c => c.Name))));
            return null;
        }

        if (Condition(condition) is not { } known)
        {
            return null;
        }

        var arrangement = new Arrangement(known);
        foreach (var name in unplugged.SelectMany(u => u.Split(',')))
        {
            arrangement = Connector(name.Trim()) is { } connector ? arrangement.Unplug(connector) : arrangement;
        }

        foreach (var name in removed.SelectMany(r => r.Split(',')))
        {
            arrangement = Pluggable(name.Trim()) is { } part ? arrangement.Remove(part) : arrangement;
        }

        foreach (var jumper in jumpers)
        {
            if (Pair(jumper) is not { } pair)
            {
                continue;
            }

            if (IsSamePoint(pair.First, pair.Second))
            {
                _problems.Add(new Message("cli.same-point", pair.First, pair.Second));
                continue;
            }

            arrangement = arrangement.WithJumper(pair.First, pair.Second);
        }

        return arrangement;
    }

    public void Add(Message problem) => _problems.Add(problem);

    private string? One(string code, string text, IEnumerable<Part> parts)
    {
        var ids = parts.Select(p => p.Id).ToList();
        return ids.Find(id => Same(id, text)) ?? Listed(code, text, ids);
    }

    private string? Listed(string code, string text, IEnumerable<string> known)
    {
        var names = known.ToList();
        return Missing<string?>(code, text, names, string.Join(", ", names));
    }

    private T? Missing<T>(string code, string text, IEnumerable<string> known, params string[] more)
    {
        _problems.Add(new Message(code, (object[])[text, Spelling.Hint(text, known), .. more]));
        return default;
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
