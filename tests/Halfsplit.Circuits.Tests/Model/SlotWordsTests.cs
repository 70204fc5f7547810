using System.Collections.Immutable;
using CsCheck;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Tests.Model;

public sealed class SlotWordsTests
{
    private static readonly TextCatalog English = new(Language.English, CircuitTexts.Source), German = new(Language.German, CircuitTexts.Source);

    private static BoxGrid Grid(params string[] rows) => new([.. rows.Select(r => r.Split(' ').ToImmutableArray())], null);

    [Theory]
    [InlineData("A1 A2 A3|B1 B2 B3 B4 B5 B6|C1", "B3", "middle row, third from the left")]
    [InlineData("A1 A2 A3|B1 B2 B3 B4 B5 B6|C1", "B4", "middle row, third from the right")]
    [InlineData("A1 A2 A3|B1 B2 B3 B4 B5 B6|C1", "A2", "top row, in the middle")]
    [InlineData("A1 A2 A3|B1 B2 B3 B4 B5 B6|C1", "C1", "bottom row, the only slot in it")]
    [InlineData("1 2 3 4 5 6 7 8 9", "5", "fifth from the left")]
    [InlineData("1 2 3 4 5 6 7 8 9", "6", "fourth from the right")]
    [InlineData("A|B|C|D|E|F", "B", "second from the top")]
    [InlineData("A|B|C|D|E|F", "D", "third from the bottom")]
    [InlineData("A|B|C|D|E", "C", "in the middle")]
    [InlineData("A|B|C|D", "A", "at the top")]
    [InlineData("A|B|C|D", "D", "at the bottom")]
    [InlineData(". A|B .", "B", "at the bottom")]
    [InlineData("R1", "R1", "the only slot")]
    [InlineData("A1 A2|B1 B2", "B2", "bottom row, on the right")]
    [InlineData(". . A1 . A2 _ A3|B1", "A3", "top row, on the far right")]
    [InlineData("1 2 3 4", "1", "on the far left")]
    [InlineData("1 2 3", "3", "on the right")]
    [InlineData("1 2 3|R1 R2 R3 R4 R5|M1|M2", "R4", "second row from the top, second from the right")]
    [InlineData(". . A1 . A2 _ A3|B1", "A2", "top row, second from the left")]
    public void A_slot_is_said_as_a_person_counts(string rows, string slot, string said) =>
        Assert.Equal(said, English.Say(SlotWords.Say(Grid(rows.Split('|')).Find(slot)!.Value)));

    [Theory]
    [InlineData("B3", "mittlere Reihe, dritte Stelle von links")]
    [InlineData("B1", "mittlere Reihe, ganz links")]
    [InlineData("B6", "mittlere Reihe, ganz rechts")]
    [InlineData("A3", "oberste Reihe, rechts")]
    [InlineData("C1", "unterste Reihe, der einzige Platz darin")]
    [InlineData("A2", "oberste Reihe, in der Mitte")]
    public void In_German_too(string slot, string said) =>
        Assert.Equal(said, German.Say(SlotWords.Say(Grid("A1 A2 A3", "B1 B2 B3 B4 B5 B6", "C1").Find(slot)!.Value)));

    [Theory]
    [InlineData("A1 A2|B1 B2 B3 B4", "B4", "untere Reihe, ganz rechts")]
    [InlineData("A1 A2|B1 B2 B3 B4", "A1", "obere Reihe, links")]
    [InlineData("1|2|3|4|5|6", "1", "ganz oben")]
    [InlineData("1|2|3|4|5|6", "3", "dritte Stelle von oben")]
    [InlineData("1|2|3|4|5|6", "5", "zweite Stelle von unten")]
    [InlineData("1|2|3|4|5|6", "6", "ganz unten")]
    public void German_knows_two_rows_from_three_and_a_row_from_a_column(string rows, string slot, string said) =>
        Assert.Equal(said, German.Say(SlotWords.Say(Grid(rows.Split('|')).Find(slot)!.Value)));

    [Theory]
    [InlineData(".")]
    [InlineData("_")]
    [InlineData("Z9")]
    [InlineData(null)]
    public void Gaps_and_unknown_names_are_no_slots(string? name) => Assert.Null(Grid("A1 . _").Find(name));

    /// <summary>No two slots of a box are said alike, however the box looks: who counts finds the one that is meant.</summary>
    [Fact]
    public void The_words_name_one_slot_only() =>
        Gen.Bool.Array[0, 30].Array[1, 9].Sample(cells =>
        {
            var number = 0;
            var grid = new BoxGrid([.. cells.Select(r => r.Select(has => has ? $"S{++number}" : ".").ToImmutableArray())], null);
            var said = grid.Named().Select(s => English.Say(SlotWords.Say(grid.Find(s)!.Value))).ToList();
            return said.Distinct(StringComparer.Ordinal).Count() == said.Count;
        }, iter: 300);

    [Fact]
    public void The_picture_points_at_the_wanted_slot_and_keeps_the_gaps() => Assert.Equal(
        ["[A1 ]       >A10<", "[ B ] [ _ ]"], BoxPicture.Lines(Grid("A1 . A10", "B _"), ["A10"]));
}
