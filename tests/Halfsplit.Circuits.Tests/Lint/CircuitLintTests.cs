using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Tests.Sheets;

namespace Halfsplit.Circuits.Tests.Lint;

public sealed class CircuitLintTests
{
    private static readonly TextCatalog Texts = new(Language.English, CircuitTexts.Source);

    public static TheoryData<int, string> Cases()
    {
        var cases = new TheoryData<int, string>();
        for (var i = 0; i < DoubtfulSheets.All.Count; i++)
        {
            cases.Add(i, DoubtfulSheets.All[i].Code);
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void A_doubt_is_reported_where_it_stands(int number, string code)
    {
        var (_, severity, sheet) = DoubtfulSheets.All[number];
        var reading = SheetReader.Read(sheet.Text);
        Assert.True(reading.Circuit is not null, string.Join('\n', reading.Problems.Select(p => Texts.Say(p.Message))));
        var problems = CircuitLint.Check(reading.Circuit!, reading.Positions);
        var said = string.Join('\n', problems.Select(p => $"{p.Line}:{p.Column} {p.Message.Code} {Texts.Say(p.Message)}"));
        var found = problems.Where(p => p.Message.Code == code).ToList();
        Assert.True(
            found.Any(p => (p.Line, p.Column) == (sheet.Line, sheet.Column)),
            $"Expected {code} at {sheet.Line}:{sheet.Column}, found:\n{said}\n{sheet.Text}");
        Assert.All(found, p => Assert.Equal(severity, p.Severity));
        Assert.All(problems, p => Assert.True(Texts.Has(p.Message.Code), p.Message.Code));
        Assert.DoesNotMatch(@"\{\d|\{\{|\}\}", said);
    }

    [Fact]
    public void Every_text_is_reached_by_some_sheet()
    {
        var reached = WrongSheets.All.Select(w => w.Code)
            .Concat(DoubtfulSheets.All.Select(d => d.Code))
            .Concat(BombTests.Codes)
            .Append(UnknownPartOfAPath())
            .ToHashSet();
        Assert.DoesNotContain(
            CircuitTexts.Source.All(Language.English).Keys,
            code => IsOfSheets(code) && !reached.Contains(code));
    }

    /// <summary>The texts of the shelf and of changes have tests of their own.</summary>
    private static bool IsOfSheets(string code) => code[..code.IndexOf('.', StringComparison.Ordinal)] is "sheet" or "wiring" or "lint";

    /// <summary>The builder's own problem, which the reader says with a hint.</summary>
    private static string UnknownPartOfAPath()
    {
        var draft = new CircuitDraft(
            "", [new Battery(new PartNotes("BAT"), 12, 12.6, 0.008)],
            [new WiringPath([new PathPart("BAT", "pos"), new PathPart("F1", null)])], [], [], [], []);
        return Assert.Single(CircuitBuilder.Build(draft).Problems).Message.Code;
    }

    [Fact]
    public void A_circuit_made_by_code_is_checked_without_positions()
    {
        var draft = new CircuitDraft(
            "No text", [new Battery(new PartNotes("BAT"), 12, 12.6, 0.008), new Ground(new PartNotes("G1"), "ENG")], [], [], [], [], []);
        var problem = Assert.Single(CircuitLint.Check(CircuitBuilder.Build(draft).Circuit!));
        Assert.Equal("lint.unknown-metal", problem.Message.Code);
        Assert.Equal((0, 0), (problem.Line, problem.Column));
    }

    [Fact]
    public void A_fuse_fed_from_its_far_side_is_judged_by_the_wire_behind_it()
    {
        var sheet = MarkedSheet.Swap(
            ("rating: 10 A", "rating: 20 A"),
            ("F1 -> wire 1.5mm2", "F1.2 -> F1.1 -> §wire 1mm2"));
        var reading = SheetReader.Read(sheet.Text);
        Assert.Contains(
            CircuitLint.Check(reading.Circuit!, reading.Positions),
            p => p.Message.Code == "lint.fuse-over-wire" && (p.Line, p.Column) == (sheet.Line, sheet.Column));
    }

    [Fact]
    public void A_switch_joins_no_more_than_its_position_does()
    {
        // In between, the middle goes to one side; both sides together would be a short.
        var problems = CircuitLint.Check(SheetReader.Read(
            """
            sheet: 1
            title: A motor that is braked at rest
            conditions: { rest: {}, home: { S1: feed } }
            parts:
              BAT: { kind: battery }
              F1: { kind: fuse, rating: 10 A }
              S1: { kind: switch, terminals: [30, M, 31], positions: { brake: [M-31], feed: [30-M] }, rest: brake }
              M1: { kind: motor, runs: 2 A at 12 V }
            wiring:
              - BODY -> wire 16mm2 0.4m BK -> BAT.neg
              - BAT.pos -> F1 -> wire 1mm2 1m RD -> S1.30
              - S1.M -> wire 1mm2 1m GN -> M1.pos
              - M1.neg -> BODY
              - S1.31 -> BODY
            """).Circuit!);

        Assert.DoesNotContain(problems, p => p.Message.Code == "lint.short-in");
    }
}
