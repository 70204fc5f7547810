using Halfsplit.Circuits.Adapting;

namespace Halfsplit.Circuits.Tests.Adapting;

public sealed class ChangeTextTests
{
    public static TheoryData<string> Texts => [.. SheetAdapterTests.Possible.Select(row => row.Data.Item2).Distinct()];

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_written_change_reads_back_the_same(string text)
    {
        var change = Adapted.Change(text);

        Assert.Equal(change, Adapted.Change(ChangeText.Write(change)));
    }

    [Theory]
    [InlineData("PLACE K2 = Boot Side , 3 min", "place K2 = Boot Side, 3 min")]
    [InlineData("color A~B = ye/bk", "colour A~B = ye/bk")]
    [InlineData("place K2 = left, behind the trim", "place K2 = left, behind the trim")]
    [InlineData("Connector in A~B", "connector in A~B")]
    [InlineData("splice ? in A to B named ?", "splice in A to B")]
    [InlineData("price X = 80", "price X = 80 to 80")]
    [InlineData("gauge A~B = about 2.5 mm²", "gauge A~B = about 2.5mm2")]
    [InlineData("gauge A~B = ungefähr 2,5 mm²", "gauge A~B = about 2.5mm2")]
    [InlineData("length A~B = ca. 1,2 m", "length A~B = about 1.2m")]
    [InlineData("length A~B = 8 feet", "length A~B = 8ft")]
    [InlineData("length A~B = 1 foot", "length A~B = 1ft")]
    [InlineData("length A~B = etwa 8 Fuß", "length A~B = about 8ft")]
    [InlineData("length A~B = 10 in", "length A~B = 10in")]
    [InlineData("price K2 = 80 bis 150", "price K2 = 80 to 150")]
    [InlineData("open boot = 3 Minuten", "open boot = 3 min")]
    public void Either_way_of_writing_is_understood(string text, string same) => Assert.Equal(same, ChangeText.Write(Adapted.Change(text)));

    [Theory]
    [InlineData("", "adapt.empty-change")]
    [InlineData("  ", "adapt.empty-change")]
    [InlineData("price K2 = 90-240", "adapt.dashed-price")]
    [InlineData("gauge A~B = ca. 2,5", "adapt.gauge-unit")]
    [InlineData("length A~B = 8 cubits", "sheet.no-unit")]
    [InlineData("plaice K2 = boot", "adapt.no-such-change")]
    [InlineData("= x", "adapt.no-such-change")]
    [InlineData("place = x", "adapt.unfinished-change")]
    [InlineData("gauge", "adapt.unfinished-change")]
    [InlineData("Ground side", "adapt.unfinished-change")]
    [InlineData("slot K2 =", "adapt.no-value")]
    [InlineData("place K2 = boot side, 3 m", "sheet.wrong-unit")]
    [InlineData("place K2 = boot side, 3", "sheet.no-unit")]
    [InlineData("price K2 = 5 to 3", "adapt.bad-price")]
    [InlineData("price K2 = cheap", "sheet.not-a-number")]
    [InlineData("gauge A~B = thick", "sheet.wire-gauge")]
    [InlineData("gauge A~B = 2.5", "adapt.gauge-unit")]
    [InlineData("length A~B = 2.5mm2", "sheet.wire-twice")]
    [InlineData("connector in A~B after half", "sheet.not-a-number")]
    [InlineData("length A~B = 0 m", "sheet.impossible")]
    [InlineData("without K2", "adapt.no-such-change")]
    public void What_is_no_change_is_said_with_how_to_mend_it(string text, string code)
    {
        Assert.Null(ChangeText.Parse(text, out var problem));
        Assert.Equal(code, problem!.Code);
        Assert.DoesNotContain(code, Adapted.Texts.Say(problem), StringComparison.Ordinal);
    }

    [Fact]
    public void A_range_with_a_dash_is_shown_as_it_is_written()
    {
        ChangeText.Parse("price K2 = 90 – 240", out var problem);

        Assert.Contains("90 to 240", Adapted.Texts.Say(problem!), StringComparison.Ordinal);
    }

    [Fact]
    public void A_misspelt_word_gets_a_hint()
    {
        ChangeText.Parse("plaice K2 = boot", out var problem);

        Assert.Contains("Did you mean \"place\"?", Adapted.Texts.Say(problem!), StringComparison.Ordinal);
    }
}
