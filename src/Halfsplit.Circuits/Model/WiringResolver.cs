using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Circuits.Model;

/// <summary>A mistake in a wiring path.</summary>
/// <param name="Path">Index of the path.</param>
/// <param name="Item">Index of the item in the path.</param>
/// <param name="Message">What is wrong and how to mend it.</param>
public sealed record WiringProblem(int Path, int Item, Message Message);

/// <summary>An item of a path with its terminals: the path comes to one and leaves by the other, or by the same.</summary>
/// <param name="Wire">The wire it comes by; null where it touches the item before, or is the first.</param>
internal readonly record struct PathStep(PathWire? Wire, TerminalName Entry, TerminalName Leave);

/// <summary>Turns wiring paths into wires and joints between named terminals.</summary>
internal sealed class WiringResolver
{
    private readonly Dictionary<string, Part> _parts;
    private readonly ImmutableArray<Wire>.Builder _wires = ImmutableArray.CreateBuilder<Wire>();
    private readonly ImmutableArray<Joint>.Builder _joints = ImmutableArray.CreateBuilder<Joint>();
    private readonly ImmutableArray<WiringProblem>.Builder _problems = ImmutableArray.CreateBuilder<WiringProblem>();
    private readonly List<TerminalName> _halves = [];
    private readonly HashSet<TerminalName> _knownHalves = [];
    private readonly HashSet<string> _wireIds = new(StringComparer.Ordinal);

    /// <summary>The number of the next wire between the same ends, so that thousands of them cost no search.</summary>
    private readonly Dictionary<string, int> _copies = new(StringComparer.Ordinal);

    /// <summary>The steps of the paths, where somebody asked for them.</summary>
    private ImmutableArray<PathStep>.Builder? _steps;

    public WiringResolver(IEnumerable<Part> parts)
    {
        _parts = parts.ToDictionary(p => p.Id, StringComparer.Ordinal);
    }

    public ImmutableArray<Wire> Wires => _wires.ToImmutable();
    public ImmutableArray<Joint> Joints => _joints.ToImmutable();
    public ImmutableArray<WiringProblem> Problems => _problems.ToImmutable();

    /// <summary>Connector halves in the order the wiring mentions their cavities.</summary>
    public IReadOnlyList<TerminalName> Halves => _halves;

    /// <summary>The steps of one path; null if there is a mistake in it.</summary>
    public static ImmutableArray<PathStep>? Trace(IEnumerable<Part> parts, WiringPath path)
    {
        var resolver = new WiringResolver(parts) { _steps = ImmutableArray.CreateBuilder<PathStep>() };
        resolver.Add(0, path);
        return resolver._problems.Count == 0 ? resolver._steps.ToImmutable() : null;
    }

    public void Add(int pathIndex, WiringPath path)
    {
        TerminalName? exit = null;
        PathWire? wire = null;
        var items = path.Items;
        for (var i = 0; i < items.Length; i++)
        {
            if (items[i] is PathWire w)
            {
                if (wire is not null || i == 0)
                {
                    Problem(pathIndex, i, wire is not null ? "wiring.two-wires" : "wiring.starts-with-wire");
                }

                wire = w;
                continue;
            }

            var first = (PathPart)items[i];
            TerminalName entry, leave;
            if (first.Terminal is not null && i + 1 < items.Length && items[i + 1] is PathPart second
                && second.Part == first.Part && second.Terminal is not null
                && RunsInside(first.Part, first.Terminal, second.Terminal))
            {
                if (!Named(pathIndex, i, first, out entry) | !Named(pathIndex, i + 1, second, out leave))
                {
                    return;
                }

                i++;
            }
            else if (!Passing(pathIndex, i, path, first, out entry, out leave))
            {
                return;
            }

            _steps?.Add(new PathStep(wire, entry, leave));
            if (exit is { } from)
            {
                Connect(from, entry, wire);
            }

            exit = leave;
            wire = null;
        }

        if (wire is not null)
        {
            Problem(pathIndex, items.Length - 1, "wiring.ends-with-wire");
        }
    }

    /// <summary>
    /// Whether something inside the part lies between two of its terminals; a bridge outside a relay or module, as from
    /// 87a to 86, joins them.
    /// </summary>
    private bool RunsInside(string part, string from, string to) => _parts.GetValueOrDefault(part) switch
    {
        Relay => IsContact(from, to) || IsContact(to, from) || (from, to) is ("86", "85") or ("85", "86"),
        Module => false,
        _ => true,
    };

    private static bool IsContact(string from, string to) => from == "30" && to.StartsWith("87", StringComparison.Ordinal);

    private void Connect(TerminalName from, TerminalName to, PathWire? wire)
    {
        if (wire is null)
        {
            _joints.Add(new Joint(from, to));
            return;
        }

        var id = wire.Name ?? $"{from}~{to}";
        var unique = id;
        for (var n = _copies.GetValueOrDefault(id, 2); !_wireIds.Add(unique); n++)
        {
            unique = $"{id}~{n}";
            _copies[id] = n + 1;
        }

        _wires.Add(new Wire(unique, from, to, wire));
    }

    private bool Passing(
        int path, int item, WiringPath whole, PathPart point, out TerminalName entry, out TerminalName leave)
    {
        entry = leave = default;
        if (!_parts.TryGetValue(point.Part, out var part))
        {
            return Problem(path, item, "wiring.unknown-part", point.Part);
        }

        if (part is Connector connector)
        {
            return ThroughConnector(path, item, whole, connector, point.Terminal, out entry, out leave);
        }

        if (point.Terminal is not null)
        {
            var known = Named(path, item, point, out entry);
            leave = entry;
            return known;
        }

        if (part.Terminals.Length == 1)
        {
            entry = leave = new TerminalName(part.Id, part.Terminals[0]);
            return true;
        }

        if (part.PassThrough is not { } through)
        {
            return Problem(path, item, "wiring.name-terminal", part.Id, string.Join(", ", part.Terminals));
        }

        entry = new TerminalName(part.Id, through.In);
        leave = new TerminalName(part.Id, through.Out);
        return true;
    }

    private bool ThroughConnector(
        int path, int item, WiringPath whole, Connector connector, string? cavity,
        out TerminalName entry, out TerminalName leave)
    {
        entry = leave = default;
        if (cavity is null)
        {
            return Problem(path, item, "wiring.name-cavity", connector.Id);
        }

        if (!Cavity(cavity, out var number, out var half))
        {
            return Problem(path, item, "wiring.bad-cavity", connector.Id, cavity);
        }

        Halve(connector.Id, number);
        if (half != '\0')
        {
            entry = leave = new TerminalName(connector.Id, cavity);
            return true;
        }

        var before = Reaches(whole, connector, item, -1);
        var after = Reaches(whole, connector, item, +1);
        if (before == after)
        {
            // A misspelt part may be the one that says which side is which; naming it is enough.
            if (!before && UnknownParts(path, item, whole))
            {
                return false;
            }

            return Problem(path, item, before ? "wiring.half-both" : "wiring.half-unknown", connector.Id, number);
        }

        entry = new TerminalName(connector.Id, number + (before ? "b" : "a"));
        leave = new TerminalName(connector.Id, number + (before ? "a" : "b"));
        return true;
    }

    /// <summary>Names the parts behind an item that don't exist; false where all do.</summary>
    private bool UnknownParts(int path, int item, WiringPath whole)
    {
        var found = false;
        for (var i = item + 1; i < whole.Items.Length; i++)
        {
            if (whole.Items[i] is PathPart point && !_parts.ContainsKey(point.Part))
            {
                found = true;
                Problem(path, i, "wiring.unknown-part", point.Part);
            }
        }

        return found;
    }

    private static bool Reaches(WiringPath whole, Connector connector, int from, int step)
    {
        for (var i = from + step; i >= 0 && i < whole.Items.Length; i += step)
        {
            if (whole.Items[i] is PathPart point && connector.BelongsToB.Contains(point.Part))
            {
                return true;
            }
        }

        return false;
    }

    private bool Named(int path, int item, PathPart point, out TerminalName terminal)
    {
        terminal = new TerminalName(point.Part, point.Terminal ?? "");
        if (!_parts.TryGetValue(point.Part, out var part))
        {
            return Problem(path, item, "wiring.unknown-part", point.Part);
        }

        if (part is Connector)
        {
            if (!Cavity(terminal.Name, out var number, out var half) || half == '\0')
            {
                return Problem(path, item, "wiring.bad-cavity", part.Id, terminal.Name);
            }

            Halve(part.Id, number);
            return true;
        }

        return part.Terminals.Contains(terminal.Name)
            || Problem(path, item, "wiring.unknown-terminal", part.Id, terminal.Name, string.Join(", ", part.Terminals));
    }

    private void Halve(string connector, string number)
    {
        var a = new TerminalName(connector, number + "a");
        if (_knownHalves.Add(a))
        {
            _halves.Add(a);
            _halves.Add(new TerminalName(connector, number + "b"));
        }
    }

    /// <summary>Cavities are digits and capitals, so that a lower-case a or b behind them can only be a half.</summary>
    private static bool Cavity(string text, out string number, out char half)
    {
        half = text.Length > 1 && text[^1] is 'a' or 'b' ? text[^1] : '\0';
        number = half == '\0' ? text : text[..^1];
        return number.Length > 0 && number.All(c => char.IsAsciiDigit(c) || char.IsAsciiLetterUpper(c));
    }

    private bool Problem(int path, int item, string code, params object[] arguments)
    {
        _problems.Add(new WiringProblem(path, item, new Message(code, arguments)));
        return false;
    }
}
