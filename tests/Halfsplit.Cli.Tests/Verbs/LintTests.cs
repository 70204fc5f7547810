using System.Text.Json;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class LintTests
{
    private const string Broken = """
        sheet: 1
        title: A broken one
        conditions:
          key off: {}
          on: { IGN: onn }
        parts:
          BAT: { kind: battery }
          F1:  { kind: fuse, rating: 10 A, colour: red }
          L1:  { kind: lamp, watts: 5 W }
        wiring:
          - BAT.pos -> F1 -> wire 0.5mm2 1m RD -> L9
          - L1.2 -> BODY
        """;

    [Theory]
    [InlineData("pump-feed")]
    [InlineData("cooling-fan")]
    [InlineData("headlamps")]
    public void Shipped_sheets_have_no_errors(string sheet)
    {
        using var shell = new Shell();
        var lint = Shell.Expect(0, shell.Run("lint", sheet, "--json")).Json;

        Assert.True(lint.GetProperty("good").GetBoolean());
    }

    [Fact]
    public void A_broken_sheet_is_explained_line_by_line()
    {
        using var shell = new Shell();
        File.WriteAllText(shell.File("broken.yaml"), Broken);

        ApprovedText.Matches("lint-broken", Shell.Expect(1, shell.Run("lint", shell.File("broken.yaml"))).Output);
    }

    [Fact]
    public void Problems_in_json_have_place_code_and_text()
    {
        using var shell = new Shell();
        File.WriteAllText(shell.File("broken.yaml"), Broken);
        var problems = shell.Run("lint", shell.File("broken.yaml"), "--json").Json.GetProperty("problems").EnumerateArray().ToList();

        var unknown = problems.Single(p => p.GetProperty("code").GetString() == "sheet.unknown-key");
        Assert.Equal("error", unknown.GetProperty("severity").GetString());
        Assert.Equal(8, unknown.GetProperty("line").GetInt32());
        Assert.Contains("colour", unknown.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_comes_before_a_shipped_sheet_of_the_same_name()
    {
        using var shell = new Shell();
        var path = shell.File("pump-feed");
        File.WriteAllText(path, ShippedSheets.Text("headlamps"));

        Assert.Contains("Headlamps", Shell.Expect(0, shell.Run("predict", path, "-c", "key off")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_with_errors_is_not_worked_on()
    {
        using var shell = new Shell();
        var path = shell.File("loose.yaml");
        // The body has no strap to the battery: the grammar is right, the circuit is not.
        File.WriteAllText(path, ShippedSheets.Text("headlamps")!.Replace("  - BODY -> wire 25mm2 0.4m BK -> BAT.neg\n", "", StringComparison.Ordinal));

        Shell.Expect(1, shell.Run("lint", path));
        Shell.Expect(1, shell.Run("predict", path, "-c", "key off"));
        Shell.Expect(1, shell.Run("open", path, "--job", shell.Job));
        Shell.Expect(1, shell.RunWith("quit\n", "diagnose", path));
    }

    [Fact]
    public void A_misspelt_sheet_is_guessed()
    {
        using var shell = new Shell();
        var lint = Shell.Expect(1, shell.Run("lint", "pumpfeed"));

        Assert.Contains("Did you mean \"pump-feed\"?", lint.Error.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal(JsonValueKind.Array, shell.Run("lint", "pumpfeed", "--json").Json.GetProperty("problems").ValueKind);
    }
}
