using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Tests.Sheets;

public sealed class WrongSheetTests
{
    private static readonly TextCatalog Texts = new(Language.English, CircuitTexts.Source);

    public static TheoryData<int, string> Cases()
    {
        var cases = new TheoryData<int, string>();
        for (var i = 0; i < WrongSheets.All.Count; i++)
        {
            cases.Add(i, WrongSheets.All[i].Code);
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_mistake_is_reported_where_it_stands(int number, string code)
    {
        var (_, sheet) = WrongSheets.All[number];
        var reading = SheetReader.Read(sheet.Text);
        Assert.Null(reading.Circuit);
        var found = reading.Problems.Where(p => p.Message.Code == code).ToList();
        Assert.True(
            found.Any(p => (p.Line, p.Column) == (sheet.Line, sheet.Column)),
            $"Expected {code} at {sheet.Line}:{sheet.Column}, found:\n{Said(reading.Problems)}\n{sheet.Text}");
        Assert.All(found, p => Assert.Equal(ProblemSeverity.Error, p.Severity));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void One_mistake_brings_one_problem(int number, string code)
    {
        var problems = SheetReader.Read(WrongSheets.All[number].Sheet.Text).Problems;
        Assert.True(problems.Length == 1, $"{code}:\n{Said(problems)}");
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_message_has_words_with_no_gap_left(int number, string code)
    {
        foreach (var problem in SheetReader.Read(WrongSheets.All[number].Sheet.Text).Problems)
        {
            Assert.True(Texts.Has(problem.Message.Code), $"{problem.Message.Code} ({code}) has no text.");
            var said = Texts.Say(problem.Message);
            Assert.DoesNotMatch(@"\{\d|\{\{|\}\}", said);
            Assert.Matches(@"[.?]$", said);
        }
    }

    [Fact]
    public void The_right_sheet_that_the_wrong_ones_are_made_from_is_right()
    {
        var reading = SheetReader.Read(MarkedSheet.Right);
        Assert.Empty(reading.Problems);
        Assert.Empty(CircuitLint.Check(reading.Circuit!, reading.Positions));
    }

    [Fact]
    public void Several_mistakes_are_found_in_one_reading()
    {
        var reading = SheetReader.Read("""
            sheet: 1
            title: Three mistakes
            parts:
              BAT: { kind: battery }
              F1: { kind: fuse, rating: 5000 A }
              K1: { kind: relay, coli: 85 ohm }
            wiring:
              - BAT.pos -> wire 1mm2 1m -> F2
            """);
        Assert.Equal(
            ["sheet.impossible", "sheet.unknown-key", "sheet.unknown-part"],
            reading.Problems.Select(p => p.Message.Code));
        Assert.Equal([5, 6, 8], reading.Problems.Select(p => p.Line));
    }

    [Theory]
    [InlineData("K9: { kind: relay, coli: 85 ohm }", "Did you mean \"coil\"?")]
    [InlineData("K9: { kind: rellay }", "Did you mean \"relay\"?")]
    [InlineData("F2: { kind: fuse, rating: 10 A, place: fuse bok }", "Did you mean \"fuse box\"?")]
    [InlineData("F2: { kind: fuse, rating: 10 }", "5.5 A")]
    public void A_message_says_how_to_mend_it(string part, string hint)
    {
        var sheet = MarkedSheet.Add("parts", "§" + part);
        var problem = Assert.Single(SheetReader.Read(sheet.Text).Problems);
        var said = Texts.Say(problem.Message);
        Assert.Contains(hint, said, StringComparison.Ordinal);
    }

    private static string Said(IEnumerable<SheetProblem> problems) =>
        string.Join('\n', problems.Select(p => $"{p.Line}:{p.Column} {p.Message.Code} {Texts.Say(p.Message)}"));
}
