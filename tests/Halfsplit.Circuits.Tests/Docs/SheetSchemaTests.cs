using CsCheck;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Tests.Sheets;

namespace Halfsplit.Circuits.Tests.Docs;

public sealed class SheetSchemaTests
{
    /// <summary>Mistakes of form; those a schema cannot see (names that name nothing, wiring, YAML itself) are left to the lint.</summary>
    private static readonly string[] OfForm =
    [
        "sheet.not-a-sheet", "sheet.missing-key", "sheet.unknown-version", "sheet.unknown-key", "sheet.want-map", "sheet.want-paths",
        "sheet.want-text", "sheet.bad-part-name", "sheet.unknown-kind", "sheet.unknown-word", "sheet.yes-or-no", "sheet.bad-terminal",
        "sheet.want-contacts", "sheet.no-filaments", "sheet.watts-or-ohms", "sheet.not-a-number", "sheet.no-unit", "sheet.wrong-unit",
        "sheet.unit-not-wanted", "sheet.path-not-text", "sheet.path-too-short", "sheet.path-gap", "sheet.bad-item", "sheet.decimal-comma",
    ];

    public static TheoryData<string> Names() => [.. ShippedSheets.Names];

    public static TheoryData<int, string> Wrong()
    {
        var cases = new TheoryData<int, string>();
        for (var i = 0; i < WrongSheets.All.Count; i++)
        {
            if (OfForm.Contains(WrongSheets.All[i].Code))
            {
                cases.Add(i, WrongSheets.All[i].Code);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Shipped_sheets_pass(string name) => Assert.True(SheetSchema.Accepts(ShippedSheets.Text(name)!));

    [Fact]
    public void The_example_of_the_page_passes() => Assert.True(SheetSchema.Accepts(SheetFormatTests.Example()));

    [Fact]
    public void The_right_sheet_that_the_wrong_ones_are_made_from_passes() => Assert.True(SheetSchema.Accepts(MarkedSheet.Right));

    [Fact]
    public void Whatever_the_writer_writes_passes() =>
        CircuitGenerator.Circuits.Sample(c => SheetSchema.Accepts(SheetWriter.Write(c)), iter: 60);

    [Theory]
    [MemberData(nameof(Wrong))]
    public void Mistakes_of_form_fail(int number, string code) =>
        Assert.False(SheetSchema.Accepts(WrongSheets.All[number].Sheet.Text), $"{code}\n{WrongSheets.All[number].Sheet.Text}");
}
