using System.Collections.Immutable;
using System.Text;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Simulation.Arrangements;

/// <summary>A fused jumper wire between two terminals.</summary>
public readonly record struct Jumper(TerminalName From, TerminalName To);

/// <summary>What the car is doing, and what is unplugged, removed, jumpered and opened.</summary>
/// <param name="Condition">Name of a condition of the sheet.</param>
/// <param name="Unplugged">Connectors whose halves are apart.</param>
/// <param name="Removed">Relays and fuses pulled from their sockets.</param>
/// <param name="Jumpers">Jumper wires in place.</param>
/// <param name="Opened">Places opened up.</param>
public sealed record Arrangement(
    string Condition,
    ImmutableSortedSet<string> Unplugged,
    ImmutableSortedSet<string> Removed,
    ImmutableArray<Jumper> Jumpers,
    ImmutableSortedSet<string> Opened)
{
    private string? _key;

    /// <summary>Everything in place, in this condition.</summary>
    public Arrangement(string condition)
        : this(condition, Names(), Names(), [], Names()) { }

    /// <summary>
    /// The electrical part of the arrangement as text: two arrangements with the same key read the same.
    /// Places opened do not count.
    /// </summary>
    public string Key => _key ??= MakeKey();

    public Arrangement Unplug(string connector) => this with { Unplugged = Unplugged.Add(connector), _key = null };

    public Arrangement Remove(string part) => this with { Removed = Removed.Add(part), _key = null };

    public Arrangement WithJumper(TerminalName from, TerminalName to) =>
        this with { Jumpers = Jumpers.Add(new Jumper(from, to)), _key = null };

    public Arrangement In(string condition) => this with { Condition = condition, _key = null };

    public bool Equals(Arrangement? other) =>
        other is not null && Key == other.Key && Opened.SetEquals(other.Opened);

    public override int GetHashCode() => Key.GetHashCode(StringComparison.Ordinal);

    public override string ToString() => Key;

    private static ImmutableSortedSet<string> Names() => ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    private string MakeKey()
    {
        var text = new StringBuilder(Condition);
        foreach (var name in Unplugged)
        {
            text.Append("; unplug ").Append(name);
        }

        foreach (var name in Removed)
        {
            text.Append("; remove ").Append(name);
        }

        foreach (var jumper in Jumpers)
        {
            text.Append("; jumper ").Append(jumper.From).Append(',').Append(jumper.To);
        }

        return text.ToString();
    }
}
