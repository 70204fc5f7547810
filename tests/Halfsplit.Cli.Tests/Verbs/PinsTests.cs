using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class PinsTests
{
    private static readonly string[] Lamp = ["pins", "headlamps", "--part", "C10"];

    [Fact]
    public void A_connector_is_told_with_what_its_cavities_should_show()
    {
        using var shell = new Shell();

        ApprovedText.Matches("pins", Shell.Expect(0, shell.Run(Lamp)).Output);
    }

    [Fact]
    public void A_relays_socket_in_German()
    {
        using var shell = new Shell { Language = Language.German };

        ApprovedText.Matches("de-pins", Shell.Expect(0, shell.Run("pins", "pump-feed", "--part", "K2", "--cavities", "1,2,3,4")).Output);
    }

    [Fact]
    public void A_conversation_ends_with_the_assignment()
    {
        using var shell = new Shell();
        // Ground at B: answered as asked, in full, and with a slip of the tongue between.
        var talk = Shell.Expect(0, shell.RunWith("nonsense\n0.01\nback\nvolts B body in main beam = 0.01\nohms B body = 0.3\nvolts A body in dipped beam = 12.4\nquit\n", [.. Lamp, "--talk", "--condition", "dipped beam", "--condition", "main beam"]));

        ApprovedText.Matches("pins-talk", talk.Output);
        Assert.Contains("Settled: A 1, B 3, C 2.", talk.Output.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_as_options_settle_it_for_a_script()
    {
        using var shell = new Shell();
        var json = Shell.Expect(0, shell.Run(
            [.. Lamp, "-c", "dipped beam", "-c", "main beam", "-r", "ohms B body = 0.3", "-r", "volts A body in dipped beam = 12.4", "-r", "volts B body in main beam = 0.02", "--json"])).Json;

        Assert.Equal(["1", "3", "2"], json.GetProperty("settled").GetProperty("pins").EnumerateArray().Select(p => p.GetProperty("function").GetString()));
        Assert.Equal("Null", json.GetProperty("next").ValueKind.ToString());
        Assert.Equal(3, json.GetProperty("functions").GetArrayLength());
        Assert.Equal("C10.1a", json.GetProperty("functions")[0].GetProperty("terminal").GetString());
    }

    [Theory]
    [InlineData("pins", "headlamps", "--part", "LH")]
    [InlineData("pins", "headlamps", "--part", "C10", "--half", "x")]
    [InlineData("pins", "headlamps", "--part", "C10", "--half", "")]
    [InlineData("pins", "headlamps", "--part", "C10", "-r", "volts Z body in dipped beam = 1")]
    [InlineData("pins", "headlamps", "--part", "C10", "-c", "moonlight")]
    [InlineData("pins", "headlamps", "--part", "C10", "--cavities", "1,2")]
    public void Wrong_use_is_explained(params string[] arguments)
    {
        using var shell = new Shell();

        Assert.NotEqual("", Shell.Expect(2, shell.Run(arguments)).Error);
    }

    [Fact]
    public void No_minus_stands_before_a_zero()
    {
        using var shell = new Shell();
        foreach (var (sheet, part) in new[] { ("headlamps", "C10"), ("pump-feed", "K2"), ("pump-feed", "C3"), ("horn", "K7") })
        {
            Assert.DoesNotMatch(@"-0([.,]0+)?(?![\d.,])", Shell.Expect(0, shell.Run("pins", sheet, "--part", part)).Output);
        }
    }

    [Fact]
    public void A_part_is_found_by_its_plain_name()
    {
        using var shell = new Shell();

        Assert.Equal(
            Shell.Expect(0, shell.Run("pins", "pump-feed", "--part", "K2")).Output,
            Shell.Expect(0, shell.Run("pins", "pump-feed", "--part", "pump relay")).Output);
    }

    [Fact]
    public void A_reading_that_does_not_fit_is_named_and_asked_for_again()
    {
        using var shell = new Shell();
        string[] settled = [.. Lamp, "-c", "dipped beam", "-c", "main beam", "-r", "ohms B body = 0.3", "-r", "volts A body in dipped beam = 12.4", "-r", "volts B body in main beam = 0.02"];

        Assert.DoesNotContain("does not fit", Shell.Expect(0, shell.Run(settled)).Output, StringComparison.Ordinal);
        Assert.Contains(
            "volts C body in main beam does not fit the likeliest assignment: measure it again.",
            Shell.Expect(0, shell.Run([.. settled, "-r", "volts C body in main beam = 5"])).Output.Replace("\n  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void A_further_condition_that_parts_what_is_alike_is_named()
    {
        using var shell = new Shell();

        Assert.Contains("add -c \"dipped beam\"", Shell.Expect(0, shell.Run([.. Lamp, "-c", "main beam"])).Output.Replace("\n    ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }
}
