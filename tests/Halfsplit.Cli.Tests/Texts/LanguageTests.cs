using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Tests.Running;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Drawing;
using Halfsplit.Jobs;
using Xunit;

namespace Halfsplit.Cli.Tests.Texts;

public sealed partial class LanguageTests
{
    public static TheoryData<string> Projects => ["Circuits", "Diagnosis", "Drawing", "Jobs", "Cli"];

    [Theory]
    [MemberData(nameof(Projects))]
    public void Every_language_has_the_same_texts_with_the_same_gaps(string project)
    {
        var source = project switch
        {
            "Circuits" => CircuitTexts.Source,
            "Diagnosis" => DiagnosisTexts.Source,
            "Drawing" => DrawingTexts.Source,
            "Jobs" => JobTexts.Source,
            _ => CliTexts.Source,
        };
        var (english, german) = (source.All(Language.English), source.All(Language.German));

        Assert.Empty(english.Keys.Except(german.Keys));
        Assert.Empty(german.Keys.Except(english.Keys));
        Assert.All(english, text =>
        {
            Assert.Equal(Gaps(text.Value), Gaps(german[text.Key]));
            // A text that is parted from its neighbour by a blank is so in both.
            Assert.Equal(text.Value.StartsWith(' '), german[text.Key].StartsWith(' '));
            Assert.Equal(text.Value.Length == 0, german[text.Key].Length == 0);
        });
    }

    [Fact]
    public void Every_answer_is_shown_and_understood_in_every_language()
    {
        Assert.All(AnswerWord.All, word =>
        {
            var german = AnswerWords.In(Language.German).TextOf(word);
            Assert.Contains(word, AnswerWords.English.Candidates(german));
            Assert.Contains(word, AnswerWords.In(Language.German).Candidates(word.Text));
            // What is shown for one word is typed back for it, and for no other that could be asked beside it.
            Assert.All(
                AnswerWord.All.Where(other => other != word), other => Assert.NotEqual(german, AnswerWords.In(Language.German).TextOf(other)));
        });
    }

    [Theory]
    [InlineData("12,4 V", "12.4")]
    [InlineData("48,5 mV", "48,5 mV")]
    [InlineData("nicht angesteuert", "not commanded")]
    [InlineData("Durchgang", "beeps")]
    [InlineData("läuft langsam", "runs slowly")]
    [InlineData("weiß nicht", "not sure")]
    public void What_is_typed_means_the_same_in_both(string german, string english)
    {
        var expected = ExpectedAnswer.Volts(AnswerWord.All);

        Assert.Equal(Value(ReadingText.Parse(english, expected)), Value(ReadingText.Parse(german, expected)));
    }

    [Fact]
    public void A_number_is_written_with_the_comma_of_the_language()
    {
        var number = new ReadingParse.Number(12.4, Quantity.Volts, 0.01) { Unsteady = true };

        Assert.Equal("12,40 V springt", SpokenReading.Of(number, Language.German));
        Assert.Equal("12.40 V jumps", SpokenReading.Of(number, Language.English));
        Assert.Equal("12.40 V jumps", number.ToString());
    }

    [Fact]
    public void The_language_is_the_persons_and_not_the_cultures()
    {
        using var german = new Shell { Language = Language.German };
        using var english = new Shell();

        Assert.Contains("BESCHREIBUNG", german.Run("status", "--help").Output, StringComparison.Ordinal);
        Assert.Contains("DESCRIPTION", english.Run("status", "--help").Output, StringComparison.Ordinal);
        Assert.Contains("DESCRIPTION", german.Run("status", "--help", "--language", "en").Output, StringComparison.Ordinal);
        Assert.Contains("fr", Shell.Expect(2, english.Run("lint", "pump-feed", "--language", "fr")).Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de", null, null, null, "de")]
    [InlineData("en", null, null, "de_DE.UTF-8", "en")]
    [InlineData(null, null, null, "de_AT.UTF-8", "de")]
    [InlineData(null, "en_GB.UTF-8", null, "de_DE.UTF-8", "en")]
    [InlineData(null, "", "de", "C", "de")]
    [InlineData(null, null, null, "tr_TR.UTF-8", "en")]
    [InlineData(null, null, null, null, "en")]
    [InlineData("xx", null, null, "de_DE", "de")]
    public void The_variable_comes_before_the_system(string? own, string? all, string? messages, string? lang, string expected) =>
        Assert.Equal(expected, SystemLanguage.Of(name => name switch
        {
            "HALFSPLIT_LANGUAGE" => own,
            "LC_ALL" => all,
            "LC_MESSAGES" => messages,
            "LANG" => lang,
            _ => null,
        }).Code);

    [Fact]
    public void What_scripts_read_is_the_same_in_every_language()
    {
        using var english = new Shell().WithJob("headlamps", "dim", "12.4 V");
        using var german = new Shell { Language = Language.German };
        File.Copy(english.Job, german.Job);
        foreach (var verb in (string[][])[
            ["status", "JOB", "--json"], ["next", "JOB", "--json"], ["report", "JOB", "--json"], ["report", "JOB", "--format", "csv"],
            ["predict", "headlamps", "-c", "dipped beam", "--json"], ["notice", "JOB", "--json"]])
        {
            Assert.Equal(Run(english, verb), Run(german, verb));
        }
    }

    [Fact]
    public void A_job_worked_on_in_german_is_kept_as_one_worked_on_in_english()
    {
        using var english = new Shell().WithJob("headlamps", "dim", "12.4 V");
        using var german = new Shell { Language = Language.German }.WithJob("headlamps", "glimmt", "12,4 V");

        Assert.Equal(Kept(english), Kept(german));
    }

    [Fact]
    public void An_option_takes_either_decimal_sign()
    {
        using var comma = new Shell();
        using var point = new Shell();
        Shell.Expect(0, comma.Run("open", "headlamps", "--job", comma.Job, "--hour-value", "12,5", "--lead", "2,5"));
        Shell.Expect(0, point.Run("open", "headlamps", "--job", point.Job, "--hour-value", "12.5", "--lead", "2.5"));

        Assert.Contains("\"valueOfAnHour\":12.5", File.ReadAllText(comma.Job), StringComparison.Ordinal);
        Assert.Contains("\"leadMetres\":2.5", File.ReadAllText(comma.Job), StringComparison.Ordinal);
        Assert.Equal(
            point.Run("predict", "pump-feed", "-c", "priming", "-f", "G2:resistive:0.5"),
            point.Run("predict", "pump-feed", "-c", "priming", "-f", "G2:resistive:0,5"));
    }

    [Fact]
    public void The_outputs_in_german_are_these()
    {
        using var shell = new Shell { Language = Language.German }.WithJob("headlamps", "glimmt", "12,4 V");
        File.WriteAllText(shell.File("broken.yaml"), "sheet: 1\ntitle: x\nparts:\n  F1: { kind: fuse, rating: 10 }\nwiring: [F1 -> F2]\n");

        ApprovedText.Matches("de-help", Shell.Expect(0, shell.Run("--help")).Output);
        ApprovedText.Matches("de-status", Shell.Expect(0, shell.Run("status", shell.Job)).Output);
        ApprovedText.Matches("de-next", Shell.Expect(0, shell.Run("next", shell.Job, "--why")).Output);
        ApprovedText.Matches("de-predict", Shell.Expect(0, shell.Run("predict", "pump-feed", "-c", "priming", "-f", "G2:resistive:2")).Output);
        ApprovedText.Matches("de-lint", Shell.Expect(1, shell.Run("lint", shell.File("broken.yaml"))).Error);
        ApprovedText.Matches("de-refused", Shell.Expect(4, shell.Run("record", shell.Job, "vielleicht morgen")).Error);
        ApprovedText.Matches("de-talk", shell.RunWith("hilfe\nstand\nwarum\nende\n", "diagnose", "--job", shell.Job).Output);
    }

    private static string Run(Shell shell, string[] arguments) =>
        Shell.Expect(0, shell.Run([.. arguments.Select(a => a == "JOB" ? shell.Job : a)])).Output;

    /// <summary>The values that were kept; ids and what was typed differ.</summary>
    private static List<string> Kept(Shell shell) => [.. File.ReadAllLines(shell.Job)
        .Select(line => Value().Match(line)).Where(m => m.Success).Select(m => m.Value)];

    private static ReadingValue Value(ReadingParse parse) => Assert.IsAssignableFrom<ReadingValue>(parse);

    private static List<string> Gaps(string text) =>
        [.. Gap().Matches(text).Select(m => m.Groups[1].Value).Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"(?<!\{)\{(\d)(?::[^}]*)?\}")]
    private static partial Regex Gap();

    [GeneratedRegex("\"value\":\\{[^}]*\\}")]
    private static partial Regex Value();
}
