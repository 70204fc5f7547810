using System.Collections.Immutable;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Circuits.Shelf;

/// <summary>What people complain of that is in no circuit of the shelf, and which of the bench's aids serves it: a battery that goes flat over night.</summary>
public static class ShelfElsewhere
{
    private static readonly ImmutableArray<(ImmutableArray<string> Words, string Aid)> Rows =
        [.. DataFile.Read("shelf-elsewhere.csv").Select(r => (SearchWords.Cut(r.Text("words")), r.Text("aid")))];

    /// <summary>The name of the bench's aid; null where the shelf is the place to look.</summary>
    public static string? Aid(string question)
    {
        var asked = SearchWords.Cut(question);
        return Rows.FirstOrDefault(r => r.Words.All(asked.Contains)).Aid;
    }
}
