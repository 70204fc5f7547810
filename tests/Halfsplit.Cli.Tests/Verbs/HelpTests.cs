using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class HelpTests
{
    public static TheoryData<string> Verbs =>
        ["shelf", "lint", "adapt", "from-table", "to-table", "predict", "open", "notice", "next", "record", "withdraw", "skip", "status", "note", "describe", "hand-over", "report", "diagnose", "practice", "history", "coverage", "draw", "spice", "pins"];

    [Fact]
    public void The_program_tells_its_verbs()
    {
        using var shell = new Shell();
        var help = Shell.Expect(0, shell.Run("--help")).Output;

        Assert.All(Verbs.Select(v => v.Data), verb => Assert.Contains($"    {verb} ", help, StringComparison.Ordinal));
        ApprovedText.Matches("help", help);
    }

    [Fact]
    public void Without_a_verb_it_tells_them_too()
    {
        using var shell = new Shell();

        Assert.Equal(shell.Run("--help"), shell.Run());
    }

    [Theory]
    [MemberData(nameof(Verbs))]
    public void Every_verb_explains_itself_with_an_example(string verb)
    {
        using var shell = new Shell();
        var help = Shell.Expect(0, shell.Run(verb, "--help")).Output;

        Assert.Contains($"halfsplit {verb} ", help[help.IndexOf("EXAMPLES", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.Contains("--json", help, StringComparison.Ordinal);
        Assert.DoesNotContain("help.", help, StringComparison.Ordinal);
        ApprovedText.Matches($"help-{verb}", help);
    }
}
