using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Halfsplit.Bench.Motors;
using Halfsplit.Bench.Tests.Motors;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Texts;

/// <summary>
/// The examples in <c>docs/bench.md</c> are what the program prints (HALFSPLIT_APPROVE=1 writes them anew), and each speaks German as well.
/// </summary>
public sealed partial class DocumentedBenchTests
{
    private static readonly string Path = TextSources.File("docs", "bench.md");

    /// <summary>The files that the examples name: a pump whose first commutator bar is weak, and its picture.</summary>
    private const string Recording = "pump.csv", Picture = "pump.svg";

    public static TheoryData<string> Commands => [.. Example().Matches(Text()).Select(m => m.Groups["command"].Value)];

    [Fact]
    public void Every_documented_example_is_real()
    {
        using var shell = new Shell();
        var text = Text();
        var now = Example().Replace(text, match => $"```\n$ halfsplit {match.Groups["command"].Value}\n{Run(shell, match.Groups["command"].Value)}```");
        if (Environment.GetEnvironmentVariable("HALFSPLIT_APPROVE") == "1")
        {
            File.WriteAllText(Path, now);
            return;
        }

        Assert.Equal(text, now);
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Every_documented_example_speaks_German(string command)
    {
        using var shell = new Shell { Language = Language.German };

        ApprovedText.Matches("de-" + Name().Replace(command, "-").Trim('-'), Run(shell, command));
    }

    [Theory]
    [MemberData(nameof(Commands))]
    public void Every_documented_example_can_be_read_by_a_script(string command)
    {
        using var shell = new Shell();
        var json = Shell.Expect(0, shell.Run([.. Words(shell, command), "--json"])).Json;

        Assert.NotEqual("", json.GetProperty("title").GetString());
        Assert.True(json.GetProperty("lines").GetArrayLength() + json.GetProperty("judgements").GetArrayLength() > 0);
    }

    [Fact]
    public void Every_bench_verb_explains_itself_and_is_documented_with_every_option()
    {
        using var shell = new Shell();
        var text = Text();
        var list = Shell.Expect(0, shell.Run("bench", "--help")).Output;
        var verbs = Verb().Matches(list[list.IndexOf("COMMANDS", StringComparison.Ordinal)..]).Select(m => m.Value).ToList();
        Assert.NotEmpty(verbs);
        Assert.All(verbs, verb =>
        {
            var help = Shell.Expect(0, shell.Run("bench", verb, "--help")).Output;
            Assert.Contains($"halfsplit bench {verb} ", help[help.IndexOf("EXAMPLES", StringComparison.Ordinal)..], StringComparison.Ordinal);
            Assert.DoesNotContain("help-bench.", help, StringComparison.Ordinal);
            Assert.Contains($"$ halfsplit bench {verb} ", text, StringComparison.Ordinal);
            Assert.All(
                Option().Matches(help).Select(o => o.Value).Where(o => o is not ("--help" or "--json" or "--language")),
                option => Assert.Contains(option, text, StringComparison.Ordinal));
        });
    }

    private static string Run(Shell shell, string command)
    {
        var output = Shell.Expect(0, shell.Run(Words(shell, command))).Output;
        return string.Join('\n', output.Split('\n').Select(line => line.TrimEnd())).TrimEnd('\n') + "\n";
    }

    /// <summary>The words of a command line as a shell would part them.</summary>
    private static string[] Words(Shell shell, string command)
    {
        var words = new List<string>();
        var word = new StringBuilder();
        var quoted = false;
        foreach (var letter in command + " ")
        {
            if (letter == '"')
            {
                quoted = !quoted;
            }
            else if (letter == ' ' && !quoted)
            {
                words.Add(word.ToString());
                word.Clear();
            }
            else
            {
                word.Append(letter);
            }
        }

        if (words.Contains(Recording))
        {
            WriteRecording(shell.File(Recording));
        }

        return [.. words.Where(w => w.Length > 0).Select(w => w is Recording or Picture ? shell.File(w) : w)];
    }

    private static void WriteRecording(string path)
    {
        var trace = new SimulatedMotor(4260, 8, WeakBar: 0.12, StartPeak: 3).Trace(10_000, 0.6, seed: 1);
        File.WriteAllLines(path, trace.Amps.Select((a, i) => string.Create(CultureInfo.InvariantCulture, $"{i / trace.SamplesPerSecond},{a:0.####}")).Prepend("s,A"));
    }

    private static string Text() => File.ReadAllText(Path).Replace("\r\n", "\n", StringComparison.Ordinal);

    [GeneratedRegex(@"```\n\$ halfsplit (?<command>[^\n]+)\n(?<output>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Example();

    [GeneratedRegex("[^a-z0-9]+")]
    private static partial Regex Name();

    [GeneratedRegex("(?<=^    )[a-z-]+(?= )", RegexOptions.Multiline)]
    private static partial Regex Verb();

    [GeneratedRegex("(?<=^.{6,10})--[a-z-]+", RegexOptions.Multiline)]
    private static partial Regex Option();
}
