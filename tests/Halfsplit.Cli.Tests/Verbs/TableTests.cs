using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class TableTests
{
    private const string Wires = """
        Von;Nach;Querschnitt [mm²];Farbe;Länge [mm]
        BAT.+;F1.1;2,5;rot;600
        F1.2;K1:30;2,5;rt/ws;900
        F1.2;S1.1;0,75;RD/YE;
        S1.2;K1:86;0,75;gn;1100
        K1:85;31;0,75;br;300
        K1:87;C1.1a;2,5;lila;1400
        C1.1b;M1.+;direkt;;
        M1.-;G1;2,5;br;200
        31;BAT.-;16;BK;400
        """;

    [Fact]
    public void A_sheet_written_as_tables_comes_back_with_the_same_wires()
    {
        using var shell = new Shell();
        var (wires, parts, sheet, again) = (shell.File("wires.csv"), shell.File("parts.csv"), shell.File("back.yaml"), shell.File("again.csv"));
        Shell.Expect(0, shell.Run("to-table", "cooling-fan", "-o", wires, "--parts", parts));
        var json = Shell.Expect(0, shell.Run("from-table", wires, "--parts", parts, "-o", sheet, "--json")).Json;
        Shell.Expect(0, shell.Run("to-table", sheet, "-o", again));

        Assert.True(json.GetProperty("good").GetBoolean());
        Assert.Equal(File.ReadAllText(wires), File.ReadAllText(again));
        Shell.Expect(0, shell.Run("predict", sheet, "-c", "switched on"));
    }

    [Theory]
    [InlineData("en", "from-table")]
    [InlineData("de", "de-from-table")]
    public void What_is_to_do_is_listed_and_heads_the_sheet(string language, string approved)
    {
        using var shell = new Shell { Language = Language.Find(language)! };
        File.WriteAllText(shell.File("harness.csv"), Wires);
        var ran = Shell.Expect(0, shell.Run("from-table", shell.File("harness.csv"), "-o", shell.File("harness.yaml"), "--title", "Motor behind a relay"));

        ApprovedText.Matches(approved, ran.Output + "\n" + File.ReadAllText(shell.File("harness.yaml")));
        Shell.Expect(0, shell.Run("lint", shell.File("harness.yaml")));
    }

    [Fact]
    public void A_sheet_that_is_there_is_not_written_over_unasked()
    {
        using var shell = new Shell();
        var (table, sheet) = (shell.File("w.csv"), shell.File("mine.yaml"));
        File.WriteAllText(table, Wires);
        File.WriteAllText(sheet, "mine");

        Shell.Expect(2, shell.Run("from-table", table, "-o", sheet));
        Assert.Equal("mine", File.ReadAllText(sheet));
        Shell.Expect(0, shell.Run("from-table", table, "-o", sheet, "--overwrite"));
        Assert.NotEqual("mine", File.ReadAllText(sheet));
    }

    [Fact]
    public void What_cannot_be_told_ends_with_an_error_and_its_reason()
    {
        using var shell = new Shell();
        File.WriteAllText(shell.File("w.csv"), Wires + "\nQQ1.2,F1.2\nQQ1.2;F1.2;2;;");
        var ran = Shell.Expect(1, shell.Run("from-table", shell.File("w.csv"), "-o", shell.File("w.yaml"), "--json"));

        Assert.Contains(ran.Json.GetProperty("remarks").EnumerateArray(), r => r.GetProperty("code").GetString() == "table.kind-unknown");
        Assert.False(ran.Json.GetProperty("good").GetBoolean());
        Shell.Expect(1, shell.Run("from-table", shell.File("nothing.csv"), "-o", shell.File("x.yaml")));
        Assert.False(File.Exists(shell.File("x.yaml")));
    }
}
