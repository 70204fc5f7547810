using Xunit;

namespace Halfsplit.Cli.Tests.Circuits;

/// <summary>What lint, predict and spice print.</summary>
public sealed class OutputTests
{
    private const string Wrong = """
        sheet: 1
        title: Horn
        parts:
          BAT: { kind: battery }
          F1: { kind: fuse, ratng: 15 A }
        wiring:
          - [BAT.pos, F1, H9, BODY]
        """;

    public static TheoryData<string, string[]> Shown => new()
    {
        { "predict-healthy", ["predict", "pump-feed", "-c", "priming"] },
        { "predict-resistive-ground", ["predict", "pump-feed", "-c", "priming", "-f", "G2:resistive:2"] },
        { "predict-blown", ["predict", "pump-feed", "-c", "priming", "-f", "F19:open"] },
        { "predict-removed", ["predict", "pump-feed", "-c", "key on", "--remove", "K2", "--jumper", "K2.30,K2.87"] },
        { "read-volts", ["predict", "pump-feed", "-c", "priming", "--read", "C3.4,BODY"] },
        { "read-buzzer", ["predict", "pump-feed", "-c", "key off", "--read", "G2,BODY", "--meter", "continuity"] },
        { "read-clamp", ["predict", "pump-feed", "-c", "priming", "--meter", "amps-clamp", "--about", "K2.87~C1.2a"] },
        { "read-live-ohms", ["predict", "pump-feed", "-c", "priming", "--read", "C3.4,BODY", "--meter", "ohms"] },
        { "read-lamp", ["predict", "pump-feed", "-c", "priming", "--unplug", "C3", "--read", "C3.4a,C3.3a", "--meter", "test-lamp"] },
        { "spice-priming", ["spice", "headlamps", "-c", "key off"] },
        { "lint-good", ["lint", "pump-feed"] },
    };

    [Theory]
    [MemberData(nameof(Shown))]
    public void Prints_what_was_approved(string name, string[] arguments)
    {
        var run = VerbRun.Of(arguments);

        ApprovedText.Check(name, $"exit {run.Code}\n{run.Errors}{run.Output}");
    }

    [Theory]
    [MemberData(nameof(Shown))]
    public void Fits_a_pipe(string name, string[] arguments)
    {
        var run = VerbRun.Of(arguments);

        Assert.DoesNotContain('\u001b', run.Output + run.Errors);
        if (!name.StartsWith("spice", StringComparison.Ordinal))
        {
            Assert.All(run.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
        }
    }

    [Fact]
    public void Lint_names_file_line_and_column_and_counts()
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("halfsplit-lint-").FullName, "horn.yaml");
        File.WriteAllText(file, Wrong);
        try
        {
            var run = VerbRun.Of("lint", file);

            Assert.Equal(1, run.Code);
            var flat = run.Output.Replace("\n    ", " ", StringComparison.Ordinal);
            Assert.Contains($"{file}:5:", flat, StringComparison.Ordinal);
            Assert.Contains("error: ", flat, StringComparison.Ordinal);
            Assert.Contains("ratng", flat, StringComparison.Ordinal);
            Assert.Contains("errors", flat.TrimEnd().Split('\n')[^1], StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        }
    }

    [Theory]
    [InlineData(0, "lint", "pump-feed")]
    [InlineData(0, "predict", "headlamps", "-c", "key off", "--json")]
    [InlineData(1, "lint", "no-such-sheet")]
    [InlineData(1, "predict", "no-such-sheet", "-c", "key off")]
    [InlineData(2, "predict", "pump-feed")]
    [InlineData(2, "predict", "pump-feed", "-c", "flying")]
    [InlineData(2, "predict", "pump-feed", "-c", "priming", "-f", "F19:opn")]
    [InlineData(2, "predict", "pump-feed", "-c", "priming", "-f", "F19:open:3")]
    [InlineData(2, "predict", "pump-feed", "-c", "priming", "-f", "Q7:open")]
    [InlineData(2, "predict", "pump-feed", "-c", "priming", "--unplug", "C99")]
    [InlineData(2, "predict", "pump-feed", "-c", "priming", "--read", "C3.4,NOWHERE")]
    [InlineData(2, "predict", "pump-feed", "-c", "priming", "--read", "C3.4,BODY", "--meter", "volt")]
    [InlineData(2, "spice", "pump-feed", "-c", "priming", "--read", "C3.4,BODY", "--meter", "ohms")]
    [InlineData(2, "predict", "pump-feed", "--no-such-option")]
    [InlineData(2, "no-such-verb")]
    public void Ends_with_the_code_that_scripts_expect(int code, params string[] arguments)
    {
        var run = VerbRun.Of(arguments);

        Assert.Equal(code, run.Code);
        Assert.Equal(code == 0, run.Errors.Length == 0);
    }

    [Theory]
    [InlineData("F19", "-f", "F19:opn")]
    [InlineData("\"priming\"", "-c", "primin")]
    [InlineData("\"volts\"", "--read", "C3.4,BODY", "--meter", "vols")]
    public void A_wrong_name_gets_a_hint(string hint, params string[] wrong)
    {
        string[] arguments = wrong[0] == "-c"
            ? ["predict", "pump-feed", .. wrong]
            : ["predict", "pump-feed", "-c", "priming", .. wrong];

        var errors = VerbRun.Of(arguments).Errors;

        Assert.Contains("Did you mean", errors, StringComparison.Ordinal);
        Assert.Contains(hint, errors, StringComparison.Ordinal);
    }
}
