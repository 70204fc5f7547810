using Halfsplit.Circuits.Messages;

namespace Halfsplit.Circuits.Model;

/// <summary>
/// Where a slot is, in the words of somebody who counts: "middle row, fourth from the right". Rows are counted from the nearer
/// end, slots from the nearer side; who need not count does not: "on the far right", and "in the middle" where the eye sees that.
/// </summary>
public static class SlotWords
{
    /// <summary>As many things are told apart at a glance, without counting: common experience, no published source.</summary>
    private const int AtAGlance = 5;

    /// <summary>Ordinals that have a word of their own; above, the number is said.</summary>
    private const int Ordinals = 12;

    /// <summary>The seat of a part's slot; null where its place has no grid, or the grid has no such slot.</summary>
    public static SlotSeat? Seat(Circuit circuit, Part? part)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        return part is null ? null : circuit.FindPlace(part.Notes.Place)?.Grid?.Find(part.Notes.Slot);
    }

    /// <summary>Up to as many slots side by side are "on the left" and "on the right"; of more, the outer ones are the far ones.</summary>
    private const int NoneBetween = 3;

    /// <summary>"middle row, fourth from the right"; a box of one row says no row, a row of one slot no slot.</summary>
    public static Message Say(SlotSeat seat) => seat switch
    {
        { Rows: 1, Columns: 1 } => new Message("slot.only"),
        { IsColumn: true } => Height(seat),
        { Rows: 1 } => Column(seat),
        { Columns: 1 } => new Message("slot.alone", Row(seat)),
        _ => new Message("slot.seat", Row(seat), Column(seat)),
    };

    /// <summary>True if the slot is counted from the right.</summary>
    public static bool FromRight(SlotSeat seat) => !IsMiddle(seat.Column, seat.Columns) && seat.Columns - seat.Column + 1 < seat.Column;

    private static Message Row(SlotSeat seat) => seat switch
    {
        { Row: 1 } => new Message(seat.Rows == 2 ? "slot.row-upper" : "slot.row-top"),
        { Row: 2, Rows: 2 } => new Message("slot.row-lower"),
        _ when seat.Row == seat.Rows => new Message("slot.row-bottom"),
        _ when IsMiddle(seat.Row, seat.Rows) => new Message("slot.row-middle"),
        _ when seat.Rows - seat.Row + 1 < seat.Row => new Message("slot.row-from-bottom", Ordinal(seat.Rows - seat.Row + 1)),
        _ => new Message("slot.row-from-top", Ordinal(seat.Row)),
    };

    /// <summary>In a box whose slots stand one above the other.</summary>
    private static Message Height(SlotSeat seat) => seat switch
    {
        { Row: 1 } => new Message("slot.top"),
        _ when seat.Row == seat.Rows => new Message("slot.bottom"),
        _ when IsMiddle(seat.Row, seat.Rows) => new Message("slot.middle"),
        _ when seat.Rows - seat.Row + 1 < seat.Row => new Message("slot.from-bottom", Ordinal(seat.Rows - seat.Row + 1)),
        _ => new Message("slot.from-top", Ordinal(seat.Row)),
    };

    private static Message Column(SlotSeat seat) => IsMiddle(seat.Column, seat.Columns) ? new Message("slot.middle")
        : seat.Column == 1 ? new Message(seat.Columns <= NoneBetween ? "slot.left" : "slot.far-left")
        : seat.Column == seat.Columns ? new Message(seat.Columns <= NoneBetween ? "slot.right" : "slot.far-right")
        : FromRight(seat) ? new Message("slot.from-right", Ordinal(seat.Columns - seat.Column + 1))
        : new Message("slot.from-left", Ordinal(seat.Column));

    private static bool IsMiddle(int at, int of) => of is > 1 and <= AtAGlance && of % 2 == 1 && at == (of + 1) / 2;

    private static Message Ordinal(int number) =>
        number <= Ordinals ? new Message($"slot.ordinal-{number}") : new Message("slot.ordinal", number);
}
