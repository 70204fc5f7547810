namespace Halfsplit.Circuits.Tests.Sheets;

/// <summary>
/// A small right sheet to make wrong ones from. The sign § in an insertion marks where the problem is expected to be
/// found; it is taken out before the sheet is read.
/// </summary>
internal sealed record MarkedSheet(string Text, int Line, int Column)
{
    public const string Right = """
        sheet: 1
        title: One lamp behind a switch
        conditions:
          key off: {}
          key on: { IGN: on, ECU.glow: low }
        places:
          fuse box: { open: 1 min }
        complaints:
          lamp dark: { load: L1, is: dead, in: key on }
        parts:
          BAT: { kind: battery }
          F1: { kind: fuse, rating: 10 A, place: fuse box, slot: A1 }
          IGN: { kind: switch }
          S1: { kind: splice }
          L1: { kind: lamp, watts: 21 W }
          G1: { kind: ground }
          ECU: { kind: module, feeds: [15], grounds: [31], outputs: { glow: { side: low } } }
          LED: { kind: led }
        wiring:
          - BODY -> wire 16mm2 0.4m BK -> BAT.neg
          - BAT.pos -> wire 2.5mm2 1m RD -> F1 -> wire 1.5mm2 1m RD -> IGN -> wire 1mm2 1m YE -> S1
          - S1 -> wire 1mm2 1m YE -> L1
          - L1.2 -> wire 1mm2 0.5m BN -> G1
          - S1 -> wire 1mm2 1m YE/BK -> ECU.15
          - ECU.31 -> wire 1mm2 1m BN -> G1
          - S1 -> wire 1mm2 0.2m YE -> LED -> wire 1mm2 0.2m BU -> ECU.glow

        """;

    /// <summary>The right sheet with a line added at the end of each of some sections.</summary>
    public static MarkedSheet Add(params (string Section, string Line)[] additions)
    {
        var all = Right.Split('\n').ToList();
        foreach (var (section, line) in additions)
        {
            var at = all.FindIndex(l => l.StartsWith(section + ":", StringComparison.Ordinal)) + 1;
            while (at < all.Count && all[at].StartsWith(' '))
            {
                at++;
            }

            all.Insert(at, "  " + line);
        }

        return Whole(string.Join('\n', all));
    }

    /// <summary>The right sheet with a line added at the end of a section.</summary>
    public static MarkedSheet Add(string section, string line) => Add((section, line));

    /// <summary>The right sheet with pieces of text replaced.</summary>
    public static MarkedSheet Swap(params (string Old, string New)[] swaps)
    {
        var text = Right;
        foreach (var (old, replacement) in swaps)
        {
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, replacement, StringComparison.Ordinal);
        }

        return Whole(text);
    }

    /// <summary>The right sheet with one piece of text replaced.</summary>
    public static MarkedSheet Swap(string old, string replacement) => Swap((old, replacement));

    /// <summary>A text of its own.</summary>
    public static MarkedSheet Whole(string marked)
    {
        var at = marked.IndexOf('§', StringComparison.Ordinal);
        Assert.True(at >= 0, "The sheet has no mark.");
        var before = marked[..at];
        var line = before.Count(c => c == '\n') + 1;
        return new MarkedSheet(marked.Remove(at, 1), line, at - before.LastIndexOf('\n'));
    }
}
