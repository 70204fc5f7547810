using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>A box drawn with letters, for a terminal: a row a line, the wanted slots between pointers.</summary>
public static class BoxPicture
{
    /// <param name="grid">The box.</param>
    /// <param name="wanted">Names of slots.</param>
    public static ImmutableArray<string> Lines(BoxGrid grid, IEnumerable<string> wanted)
    {
        ArgumentNullException.ThrowIfNull(grid);
        var pointed = wanted.ToHashSet(StringComparer.Ordinal);
        var width = grid.Rows.SelectMany(r => r).Max(s => s.Length);
        return
        [
            .. grid.Rows.Select(row => string.Concat(row.Select(slot => slot switch
            {
                BoxGrid.Gap => new string(' ', width + 3),
                _ when pointed.Contains(slot) => $">{Centred(slot, width)}< ",
                _ => $"[{Centred(slot, width)}] ",
            })).TrimEnd()),
        ];
    }

    private static string Centred(string text, int width) => text.PadLeft(text.Length + ((width - text.Length) / 2)).PadRight(width);
}
