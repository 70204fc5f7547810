namespace Halfsplit.Cli.Terminals;

/// <summary>Breaks text between words.</summary>
public static class Wrapping
{
    /// <summary>The lines of a text, none longer than the width unless a single word is. Blanks inside a line are kept.</summary>
    public static IEnumerable<string> Wrap(string text, int width, int indent = 0, int hang = 0)
    {
        ArgumentNullException.ThrowIfNull(text);
        var first = true;
        foreach (var paragraph in text.Split('\n'))
        {
            var rest = new string(' ', first ? indent : indent + hang) + paragraph.TrimEnd();
            first = false;
            while (Columns(rest) > width)
            {
                var start = rest.Length - rest.TrimStart().Length;
                var cut = rest.LastIndexOf(' ', Math.Min(width, rest.Length - 1));
                if (cut <= start)
                {
                    cut = rest.IndexOf(' ', start + 1);
                    if (cut < 0)
                    {
                        break;
                    }
                }

                yield return rest[..cut].TrimEnd();
                rest = new string(' ', indent + hang) + rest[cut..].TrimStart();
            }

            yield return rest;
        }
    }

    // Every character the program writes takes one column.
    private static int Columns(string text) => text.Length;
}
