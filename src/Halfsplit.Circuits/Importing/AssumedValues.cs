using System.Collections.Immutable;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Importing;

/// <summary>What is taken for a value that a part or wire must have and no table says (<c>data/table-assumed.csv</c>).</summary>
internal static class AssumedValues
{
    private static readonly ILookup<string, (string Key, string Value)> Rows = DataFile.Read("table-assumed.csv")
        .ToLookup(r => r.Text("kind"), r => (r.Text("key"), r.Text("value")), StringComparer.Ordinal);

    public static ImmutableArray<(string Key, string Value)> Of(string kind) => [.. Rows[kind]];
}
