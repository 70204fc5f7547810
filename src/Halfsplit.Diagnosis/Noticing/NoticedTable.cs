using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>
/// The tables of what people notice: likelihoods in <c>data/complaint-evidence.csv</c>, shares in <c>data/complaint-signs.csv</c>; for
/// what the bench finds of parts (<see cref="PartFindings"/>) shares in <c>data/part-signs.csv</c>.
/// </summary>
public static class NoticedTable
{
    private static readonly FrozenDictionary<string, NoticedKind> ByName;

    private static readonly FrozenDictionary<string, double> Shares = new[] { "complaint-signs.csv", "part-signs.csv" }
        .SelectMany(file => DataFile.Read(typeof(NoticedTable).Assembly, file))
        .ToFrozenDictionary(
            row => Key(row.Text("sign"), row.Text("kind"), row.Text("mode")), row => row.Number("share"), StringComparer.Ordinal);

    static NoticedTable()
    {
        All = [.. DataFile.Read(typeof(NoticedTable).Assembly, "complaint-evidence.csv").Select(row =>
        {
            var about = row.Text("about");
            return new NoticedKind(
                row.Text("name"), AboutOf(about.TrimEnd('?')), about.EndsWith('?'), row.Text("sign"), row.Number("if_so"),
                row.Number("otherwise"), row.Text("group"), row.Text("includes"), row.Text("source"));
        })];
        ByName = All.ToFrozenDictionary(k => k.Name, StringComparer.Ordinal);
    }

    /// <summary>All that can be noticed, in the order of the table.</summary>
    public static ImmutableArray<NoticedKind> All { get; }

    /// <summary>The row of this name; null if there is none.</summary>
    public static NoticedKind? Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return ByName.GetValueOrDefault(name);
    }

    /// <summary>The share of faults of this kind and mode that show a sign: the most exact row counts; 0 where there is none.</summary>
    internal static double ShareOf(string sign, string kind, string mode)
    {
        foreach (var key in (ReadOnlySpan<string>)[Key(sign, kind, mode), Key(sign, kind, "*"), Key(sign, "*", mode), Key(sign, "*", "*")])
        {
            if (Shares.TryGetValue(key, out var share))
            {
                return share;
            }
        }

        return 0;
    }

    private static string Key(string sign, string kind, string mode) => $"{sign}/{kind}/{mode}";

    internal static NoticedAbout AboutOf(string word) => word switch
    {
        "none" => NoticedAbout.Nothing,
        "fuse" => NoticedAbout.Fuse,
        "relay" => NoticedAbout.Relay,
        "load" => NoticedAbout.Load,
        "ground" => NoticedAbout.Ground,
        "joint" => NoticedAbout.Joint,
        "part" => NoticedAbout.Part,
        "place" => NoticedAbout.Place,
        "output" => NoticedAbout.Output,
        "module" => NoticedAbout.Module,
        "battery" => NoticedAbout.Battery,
        "alternator" => NoticedAbout.Alternator,
        "motor" => NoticedAbout.Motor,
        "diode" => NoticedAbout.Diode,
        _ => throw new InvalidOperationException($"A table of evidence names a thing of no sort: {word}."),
    };
}
