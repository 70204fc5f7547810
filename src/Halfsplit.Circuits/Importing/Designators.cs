using System.Collections.Frozen;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Sheets.Kinds;

namespace Halfsplit.Circuits.Importing;

/// <summary>What the names of parts usually mean (<c>data/designators.csv</c>): F a fuse, K a relay.</summary>
internal static class Designators
{
    private static readonly FrozenDictionary<string, string> ByLetters = Rows("designator"), ByWord = Rows("word"), Places = Rows("place");

    /// <summary>The kind that the letters before a name's first digit stand for; null where they stand for none.</summary>
    public static string? KindOf(string part) =>
        ByLetters.GetValueOrDefault(PlainText.Of(string.Concat(part.TakeWhile(c => !char.IsAsciiDigit(c))).TrimEnd('-', '_')));

    /// <summary>The sheet's word for a kind that a person wrote: its own, or one of the usual words in either language.</summary>
    public static string? KindNamed(string text)
    {
        var plain = PlainText.Of(text);
        return PartKinds.All.FirstOrDefault(k => k.Word == plain)?.Word ?? ByWord.GetValueOrDefault(plain);
    }

    /// <summary>What a bare word or terminal number is: <c>BODY</c>, <c>BAT.pos</c>; null for any other.</summary>
    public static string? PlaceOf(string text) => Places.GetValueOrDefault(WithSigns(text));

    private static FrozenDictionary<string, string> Rows(string match) => DataFile.Read("designators.csv")
        .Where(r => r.Text("match") == match)
        .ToFrozenDictionary(r => match == "place" ? WithSigns(r.Text("text")) : PlainText.Of(r.Text("text")), r => r.Text("means"), StringComparer.Ordinal);

    /// <summary>Of B+ and B- the sign matters; "Kl. 30" is KL30.</summary>
    private static string WithSigns(string text) =>
        string.Concat(text.ToUpperInvariant().Where(c => char.IsLetterOrDigit(c) || c is '+' or '-'));
}
