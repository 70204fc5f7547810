using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Texts;

/// <summary>The session in <c>docs/terminal.md</c> is what the program prints. HALFSPLIT_APPROVE=1 writes it anew.</summary>
public sealed class DocumentedSessionTests
{
    private const string Begin = "<!-- session -->\n```\n", End = "```\n<!-- /session -->";
    private const string Command = "$ halfsplit diagnose headlamps --complaint \"both headlamps dim\"\n";
    private static readonly string[] Arguments = ["headlamps", "--complaint", "both headlamps dim"];

    [Fact]
    public void The_documented_session_is_real()
    {
        using var shell = new Shell();
        var answers = Answers(shell, "G5:resistive:0.5");
        var talk = Shell.Expect(0, shell.RunWith(string.Join('\n', answers) + "\n", ["diagnose", .. Arguments])).Output;
        var session = Command + string.Join('\n', talk.Split('\n').Select(l => l.TrimEnd()));

        var path = TextSources.File("docs", "terminal.md");
        var text = File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
        var (from, to) = (text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, text.IndexOf(End, StringComparison.Ordinal));
        Assert.True(from >= Begin.Length && to >= from, "docs/terminal.md has lost the marks around its session");
        if (Environment.GetEnvironmentVariable("HALFSPLIT_APPROVE") == "1")
        {
            File.WriteAllText(path, text[..from] + session + text[to..]);
            return;
        }

        Assert.Equal(text[from..to], session);
        Assert.Contains("Done: the repair is proven.", session, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_verb_and_option_is_documented()
    {
        using var shell = new Shell();
        var text = File.ReadAllText(TextSources.File("docs", "terminal.md"));
        foreach (var verb in Verbs.HelpTests.Verbs.Select(v => v.Data))
        {
            Assert.Contains($"`{verb}", text, StringComparison.Ordinal);
            var options = System.Text.RegularExpressions.Regex.Matches(shell.Run(verb, "--help").Output, @"(?<=^.{6,10})--[a-z-]+", System.Text.RegularExpressions.RegexOptions.Multiline);
            Assert.All(options.Select(o => o.Value).Where(o => o != "--help"), o => Assert.Contains(o, text, StringComparison.Ordinal));
        }
    }

    private static List<string> Answers(Shell shell, string fault)
    {
        Shell.Expect(0, shell.Run(["open", .. Arguments, "--job", shell.Job]));
        var player = new OutsidePlayer(shell, Arguments[0], fault);
        var answers = new List<string>();
        while (answers.Count < 30)
        {
            var next = Shell.Expect(0, shell.Run("next", shell.Job, "--json")).Json;
            if (next.GetProperty("done").GetBoolean())
            {
                break;
            }

            var check = next.GetProperty("check");
            answers.Add(player.Answer(check));
            Shell.Expect(0, shell.Run("record", shell.Job, answers[^1], "--check", check.GetProperty("id").GetString()!));
        }

        return answers;
    }
}
