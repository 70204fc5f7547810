using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>A fuse and relay box as a person sees it: rows of slots, top row first, each from left to right.</summary>
/// <param name="Rows">Slot names; <see cref="Gap"/> where there is no slot, <see cref="Nameless"/> for a slot without a name.</param>
/// <param name="Seen">From where it looks like that: "lid off, from the front of the car"; null if the sheet does not say.</param>
public sealed record BoxGrid(ImmutableArray<ImmutableArray<string>> Rows, string? Seen)
{
    /// <summary>Nothing is here: it moves the slots behind it to the right, and nobody counts it.</summary>
    public const string Gap = ".";

    /// <summary>A slot is here that has no name; who counts along the row counts it.</summary>
    public const string Nameless = "_";

    /// <summary>Rows at most, and positions of one row at most; no box has more.</summary>
    public const int Most = 40;

    /// <summary>Where a slot is, as a person counts; null if the box has no slot of this name.</summary>
    public SlotSeat? Find(string? slot)
    {
        if (slot is null or Gap or Nameless)
        {
            return null;
        }

        for (var row = 0; row < Rows.Length; row++)
        {
            if (Rows[row].IndexOf(slot) is var at and >= 0)
            {
                return new SlotSeat(
                    row + 1, Rows.Length, Counted(Rows[row].AsSpan()[..(at + 1)]), Counted(Rows[row].AsSpan()),
                    Rows.All(r => Counted(r.AsSpan()) <= 1));
            }
        }

        return null;
    }

    /// <summary>The names of all slots that have one, row by row.</summary>
    public IEnumerable<string> Named() => Rows.SelectMany(r => r).Where(s => s is not (Gap or Nameless));

    private static int Counted(ReadOnlySpan<string> cells)
    {
        var count = 0;
        foreach (var cell in cells)
        {
            count += cell == Gap ? 0 : 1;
        }

        return count;
    }

    public bool Equals(BoxGrid? other) =>
        other is not null && Seen == other.Seen && Rows.Length == other.Rows.Length
        && Rows.Zip(other.Rows).All(pair => pair.First.SequenceEqual(pair.Second, StringComparer.Ordinal));

    public override int GetHashCode() => HashCode.Combine(Seen, Rows.Length);
}

/// <summary>A slot's row and its position in the row, both counted from 1, gaps left out.</summary>
/// <param name="Row">From the top.</param>
/// <param name="Rows">Rows of the box.</param>
/// <param name="Column">From the left.</param>
/// <param name="Columns">Slots of this row.</param>
/// <param name="IsColumn">True if no row of the box has more than one slot: they stand one above the other.</param>
public readonly record struct SlotSeat(int Row, int Rows, int Column, int Columns, bool IsColumn = false);
