using CsCheck;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Shelf;

namespace Halfsplit.Circuits.Tests.Shelf;

public sealed class ShelfSearchTests
{
    public static TheoryData<string, string> Complaints => [.. CircuitShelf.Complaints.Select(c => (c.Sheet.Name, c.Name))];

    [Theory]
    [MemberData(nameof(Complaints))]
    public void A_complaint_is_found_by_its_own_words(string sheet, string complaint)
    {
        var found = ShelfSearch.Find(complaint);

        // Several sheets answer "horn is silent"; the person chooses among them by what the car has.
        var first = found.TakeWhile(c => c.Name == complaint || c.Sheet.Name != sheet).Count();
        Assert.Contains(found.Take(first + 1), c => c.Sheet.Name == sheet && c.Name == complaint);
    }

    [Theory]
    [InlineData("car cranks but won't start", "pump-feed")]
    [InlineData("radiator fan doesn't run", "cooling-fan")]
    [InlineData("headlight dim", "headlamps")]
    [InlineData("LEFT HEADLIGHTS dark", "headlamps")]
    [InlineData("Pumpe läuft nicht", "pump-feed")]
    [InlineData("Hupe geht nicht", "horn")]
    [InlineData("Blinker vorne links", "indicators")]
    [InlineData("trailer lights", "trailer-7pin")]
    [InlineData("brake lights", "stop-lamps")]
    [InlineData("honk", "horn")]
    [InlineData("alternator", "charging")]
    [InlineData("Gebläse läuft nicht", "blower-resistor")]
    [InlineData("24 V", "truck-tail-lamps-24v")]
    public void Peoples_words_find_the_sheet(string question, string sheet) =>
        Assert.Contains(ShelfSearch.Find(question).Take(6), c => c.Sheet.Name == sheet);

    [Fact]
    public void A_fuse_that_blows_is_searched_by_its_rating()
    {
        var found = ShelfSearch.Find("blows the 15 A fuse");

        Assert.NotEmpty(found);
        Assert.All(found, c => Assert.Contains(c.Fuses, f => f.Amps == "15"));
        Assert.Equal(found, ShelfSearch.Find("15A fuse blown"));
        Assert.Equal(found, ShelfSearch.Find("15 Ampere Sicherung fliegt"));
        Assert.Equal(found, ShelfSearch.Find("fuse 15"));
    }

    [Fact]
    public void No_words_show_the_whole_shelf_by_system()
    {
        Assert.Equal(CircuitShelf.Complaints, ShelfSearch.Find(" "));
        Assert.Equal(CircuitShelf.Complaints, ShelfSearch.Find("my car does not work"));
        Assert.Equal(CircuitShelf.Systems.Length, 1 + CircuitShelf.Complaints.Zip(CircuitShelf.Complaints.Skip(1)).Count(p => p.First.Sheet.System != p.Second.Sheet.System));
    }

    [Fact]
    public void Nothing_is_made_up() => Assert.Empty(ShelfSearch.Find("zzyzx"));

    [Fact]
    public void Typing_narrows_without_a_fright()
    {
        const string Whole = "fuel pump";
        for (var typed = 2; typed <= Whole.Length; typed++)
        {
            Assert.Contains(ShelfSearch.Find(Whole[..typed]), c => c.Sheet.Name == "pump-feed");
        }
    }

    [Fact]
    public void Any_text_is_answered_with_complaints_of_the_shelf() =>
        Gen.String[0, 40].Sample(question => ShelfSearch.Find(question).All(c => CircuitShelf.Complaints.Contains(c)));

    [Fact]
    public void Words_for_words_are_small_letters_without_accents_and_lead_somewhere()
    {
        foreach (var row in DataFile.Read("shelf-words.csv"))
        {
            Assert.Equal([row.Text("word")], SearchWords.Cut(row.Text("word")));
            Assert.True(!row.Has("means") || ShelfSearch.Find(row.Text("means")).Length > 0, $"{row.Text("word")} leads nowhere");
        }
    }

    [Theory]
    [InlineData("My battery goes flat overnight", "drain-hunt")]
    [InlineData("Batterie ist morgens leer", "drain-hunt")]
    [InlineData("Batterie jeden Morgen leer", "drain-hunt")]
    [InlineData("Ruhestrom zu hoch", "drain-hunt")]
    [InlineData("leisure battery gets no charge", null)]
    [InlineData("fuel pump does not run", null)]
    public void What_no_circuit_is_about_leads_to_the_bench(string question, string? aid) => Assert.Equal(aid, ShelfElsewhere.Aid(question));
}
