using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Texts;

/// <summary>The session in <c>docs/adapting.md</c> is what the program prints. HALFSPLIT_APPROVE=1 writes it anew.</summary>
public sealed class DocumentedAdaptingTests
{
    private const string Begin = "<!-- session -->\n```\n", End = "```\n<!-- /session -->";

    private static readonly string[] Answers =
        ["1", "pump relay", "", "boot side", "?", "", "2", "K2~C1", "GN/WH", "", "?", "3", "K2~C1", "", "Sill plug", "6", "40 %", "7", "M1", ""];

    [Fact]
    public void The_documented_session_is_real()
    {
        using var shell = new Shell();
        var talk = Shell.Expect(0, shell.RunWith(string.Join('\n', Answers) + "\n", "adapt", "pump-feed", "-o", shell.File("my-car.yaml"))).Output;
        var session = "$ halfsplit adapt pump-feed -o my-car.yaml\n" + string.Join('\n', talk.Split('\n').Select(l => l.TrimEnd()));

        var path = TextSources.File("docs", "adapting.md");
        var text = File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
        var (from, to) = (text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, text.IndexOf(End, StringComparison.Ordinal));
        Assert.True(from >= Begin.Length && to >= from, "docs/adapting.md has lost the marks around its session");
        if (Environment.GetEnvironmentVariable("HALFSPLIT_APPROVE") == "1")
        {
            File.WriteAllText(path, text[..from] + session + text[to..]);
            return;
        }

        Assert.Equal(text[from..to], session);
        Assert.Contains("Written: my-car.yaml", session, StringComparison.Ordinal);
    }
}
