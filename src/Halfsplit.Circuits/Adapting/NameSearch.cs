using System.Globalization;
using Halfsplit.Circuits.Adapting.Wiring;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Adapting;

/// <summary>Finds the parts and wires that a change names.</summary>
public static class NameSearch
{
    /// <summary>
    /// The part of this name in the circuit, or the only one of this name in plain words; capitals don't matter where only
    /// one can be meant.
    /// </summary>
    public static Part? Part(Circuit circuit, string name, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(name);
        problem = null;
        name = name.Trim();
        if (circuit.Find(name) is { } exact)
        {
            return exact;
        }

        var near = circuit.Parts.Where(p => Same(p.Id, name)).ToList();
        near = near.Count > 0 ? near : [.. circuit.Parts.Where(p => p.Notes.Name is { } plain && Same(plain, name))];
        if (near.Count == 1)
        {
            return near[0];
        }

        problem = near.Count > 1
            ? new Message("adapt.several-parts", name, string.Join(", ", near.Select(p => p.Id)))
            : new Message("adapt.no-part", name, Spelling.Hint(name, circuit.Parts.SelectMany(p => new[] { p.Id, p.Notes.Name ?? "" })));
        return null;
    }

    /// <summary>
    /// The wire of this name, or the only one between these ends: <c>K2.87~C1.2a</c>, <c>C1.2 to K2.87</c>, <c>K2~C1</c>.
    /// </summary>
    public static Wire? Wire(Circuit circuit, string name, out Message? problem)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(name);
        problem = null;
        name = name.Trim();
        var found = circuit.Wires.Where(w => w.Id == name).ToList();
        found = found.Count > 0 ? found : [.. circuit.Wires.Where(w => Same(w.Id, name))];
        if (found.Count == 0 && Ends(name) is var (first, second))
        {
            found = [.. circuit.Wires.Where(w =>
                (IsAt(w.From, first) && IsAt(w.To, second)) || (IsAt(w.From, second) && IsAt(w.To, first)))];
        }

        if (found.Count != 1)
        {
            problem = found.Count > 1
                ? new Message("adapt.several-wires", name, string.Join(", ", found.Select(w => w.Id)))
                : new Message("adapt.no-wire", name, Spelling.Hint(name, circuit.Wires.Select(w => w.Id)));
            return null;
        }

        if (!circuit.Paths.Any(p => p.Items.Any(i => ReferenceEquals(i, found[0].Spec))))
        {
            problem = new Message("adapt.strap-assumed", found[0].Id);
            return null;
        }

        return found[0];
    }

    /// <summary>The load's terminal that is fed: its only one, or the one that is named, as <c>LH.56b</c>.</summary>
    internal static TerminalName? FedTerminal(Circuit circuit, string name, out Message? problem)
    {
        var terminal = TerminalName.Parse(name.Trim());
        var named = terminal.Name.Length > 0 && circuit.Find(terminal.Part) is Load;
        if (Part(circuit, named ? terminal.Part : name, out problem) is not { } part)
        {
            return null;
        }

        if (part is not Load load)
        {
            problem = new Message(
                "adapt.no-load", part.Id, string.Join(", ", circuit.Parts.OfType<Load>().Select(l => l.Id)));
            return null;
        }

        var fed = load.Terminals.Where(t => t != load.Across.Neg).ToList();
        if (named ? fed.Contains(terminal.Name) : fed.Count == 1)
        {
            return new TerminalName(load.Id, named ? terminal.Name : fed[0]);
        }

        problem = new Message("adapt.which-terminal", load.Id, string.Join(", ", fed.Select(t => $"{load.Id}.{t}")));
        return null;
    }

    /// <summary>A name for a part that is put in; null for one that is taken or can be none.</summary>
    internal static string? NewId(AdaptingDraft draft, string? id, string prefix, out Message? problem)
    {
        problem = null;
        if (id is null)
        {
            return draft.FreeId(prefix);
        }

        if (!SheetNames.IsPart(id))
        {
            problem = new Message("sheet.bad-part-name", id);
        }
        else if (draft.Parts.Find(p => Same(p.Id, id)) is { } taken)
        {
            problem = new Message("adapt.id-taken", taken.Id, draft.FreeId(prefix));
        }

        return problem is null ? id : null;
    }

    private static (string First, string Second)? Ends(string name)
    {
        var ends = name.Split('~', StringSplitOptions.TrimEntries);
        ends = ends.Length == 2 ? ends : name.Split(" to ", StringSplitOptions.TrimEntries);
        return ends.Length == 2 && ends.All(e => e.Length > 0) ? (ends[0], ends[1]) : null;
    }

    /// <summary>True for the terminal, for its part, and for its cavity without the half.</summary>
    private static bool IsAt(TerminalName terminal, string end)
    {
        var whole = terminal.ToString();
        return Same(whole, end) || Same(terminal.Part, end) || (whole.Length > 0 && whole[^1] is 'a' or 'b' && Same(whole[..^1], end));
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
