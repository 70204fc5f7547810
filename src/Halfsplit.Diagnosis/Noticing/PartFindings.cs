using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>
/// What the bench can find of a part, and how far it can be believed (<c>data/part-findings.csv</c>): evidence like what was noticed, of
/// the part as the complaint found it.
/// </summary>
public static class PartFindings
{
    private static readonly FrozenDictionary<string, NoticedKind> ByName;

    static PartFindings()
    {
        All = [.. DataFile.Read(typeof(PartFindings).Assembly, "part-findings.csv").Select(row => new NoticedKind(
            row.Text("name"), NoticedTable.AboutOf(row.Text("about")), false, row.Text("sign"), row.Number("if_so"), row.Number("otherwise"),
            row.Text("group"), row.Text("includes"), row.Text("source"))
        {
            IsFromBench = true,
            InsteadOf = row.Text("instead_of") switch
            {
                "" => null,
                "bench-relay" => CheckSubject.BenchRelay,
                var other => throw new InvalidOperationException($"part-findings.csv names no check: {other}."),
            },
        })];
        ByName = All.ToFrozenDictionary(k => k.Name, StringComparer.Ordinal);
    }

    /// <summary>In the order of the table.</summary>
    public static ImmutableArray<NoticedKind> All { get; }

    /// <summary>The row of this name; null if there is none.</summary>
    public static NoticedKind? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return ByName.GetValueOrDefault(name);
    }

    /// <summary>The parts that a finding can be about, in the order of the sheet.</summary>
    /// <param name="partKinds">Kinds of parts that it can have been; empty for any.</param>
    public static ImmutableArray<string> PartsOf(Circuit circuit, Complaint complaint, NoticedKind kind, ImmutableArray<string> partKinds = default)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(kind);
        var things = NoticedChoice.ThingsOf(circuit, complaint, kind);
        return partKinds.IsDefaultOrEmpty ? things : [.. things.Where(t => circuit.Find(t) is { } part && partKinds.Contains(part.Kind))];
    }

    /// <summary>As the job file keeps it; null where this program or sheet knows no such thing.</summary>
    public static Noticed? Find(Circuit circuit, Complaint complaint, string name, string part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Find(name) is { } kind && NoticedChoice.ThingsOf(circuit, complaint, kind).Contains(part) ? new Noticed(kind, part) : null;
    }

    /// <summary>A finding on the part that a person names; either case will do, and the only part of its sort need not be named.</summary>
    /// <returns>What was found, or the problem.</returns>
    /// <param name="partKinds">Kinds of parts that it can have been; empty for any.</param>
    public static (Noticed? What, Message? Problem) On(
        Circuit circuit, Complaint complaint, NoticedKind kind, string? part, ImmutableArray<string> partKinds = default)
    {
        var parts = PartsOf(circuit, complaint, kind, partKinds);
        if (parts.Length == 0)
        {
            return (null, new Message("found.no-such-sort", kind.Name));
        }

        var named = string.IsNullOrEmpty(part)
            ? parts.Length == 1 ? parts[0] : null
            : parts.FirstOrDefault(p => string.Equals(p, part, StringComparison.OrdinalIgnoreCase));
        return named is not null ? (new Noticed(kind, named), null)
            : string.IsNullOrEmpty(part) ? (null, new Message("found.name-one", string.Join(", ", parts)))
            : (null, new Message("found.no-such-part", part, Spelling.Hint(part, parts), string.Join(", ", parts)));
    }

    /// <summary>Understands <c>NAME:PART</c>, as <see cref="Noticed.ToString"/> writes it.</summary>
    /// <returns>What was found, or the problem.</returns>
    public static (Noticed? What, Message? Problem) Read(Circuit circuit, Complaint complaint, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var name = (colon < 0 ? text : text[..colon]).Trim();
        return Find(name) is { } kind
            ? On(circuit, complaint, kind, colon < 0 ? null : text[(colon + 1)..].Trim())
            : (null, new Message("found.unknown", name, Spelling.Hint(name, All.Select(k => k.Name).ToList())));
    }
}
