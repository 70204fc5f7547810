using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class ConversationTests : IDisposable
{
    private readonly Shell _shell = new();

    [Fact]
    public void A_conversation_reads_well_from_begin_to_quit() => ApprovedText.Matches(
        "diagnose",
        Shell.Expect(0, _shell.RunWith("dark\n120 V\nno\n12.6\nlist\n2\nwhy\nskip\nback\nquit\n", "diagnose", "headlamps", "--complaint", "left headlamp dark")).Output);

    [Fact]
    public void When_the_input_ends_early_the_job_is_kept()
    {
        var talk = Shell.Expect(0, _shell.RunWith("silent\n12.6", "diagnose", "pump-feed", "--job", _shell.Job)).Output;

        Assert.Contains("The input has ended.", talk, StringComparison.Ordinal);
        Assert.Equal(2, Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("entries").GetArrayLength());
    }

    [Fact]
    public void A_kept_job_goes_on()
    {
        _shell.RunWith("silent\n", "diagnose", "pump-feed", "--job", _shell.Job);
        var talk = Shell.Expect(0, _shell.RunWith("12.6\nquit\n", "diagnose", "--job", _shell.Job)).Output;

        Assert.Contains("Going on", talk, StringComparison.Ordinal);
        Assert.Contains("2. key off: volts DC, BAT.pos to BAT.neg -> 12.6 V", talk, StringComparison.Ordinal);
        Shell.Expect(2, _shell.Run("diagnose", "headlamps", "--job", _shell.Job));
    }

    [Fact]
    public void Doubts_are_asked_and_another_meaning_is_chosen_by_number()
    {
        // 12.6 mV at the battery's posts can only be a slip of the unit.
        var talk = Shell.Expect(0, _shell.RunWith("silent\n12.6 mV\n1\nquit\n", "diagnose", "pump-feed", "--job", _shell.Job)).Output;

        Assert.Contains("2. key off: volts DC, BAT.pos to BAT.neg -> 12.6 V", talk, StringComparison.Ordinal);
    }

    [Fact]
    public void Handing_over_ends_the_conversation()
    {
        Shell.Expect(0, _shell.RunWith("silent\nhand over\n12.6\n", "diagnose", "pump-feed", "--job", _shell.Job));

        Assert.Equal("handed-over", _shell.Run("status", _shell.Job, "--json").Json.GetProperty("outcome").GetString());
    }

    [Fact]
    public void In_json_every_turn_is_one_line()
    {
        var lines = Shell.Expect(0, _shell.RunWith("silent\n120 V\nconfirm 12.6\nquit\n", "diagnose", "pump-feed", "--json"))
            .Output.TrimEnd('\n').Split('\n').Select(l => System.Text.Json.JsonDocument.Parse(l).RootElement).ToList();

        Assert.Equal(7, lines.Count);
        Assert.Equal("work of M1 | priming", lines[0].GetProperty("check").GetProperty("id").GetString());
        Assert.True(lines[1].GetProperty("recorded").GetBoolean());
        Assert.False(lines[3].GetProperty("recorded").GetBoolean());
        Assert.Equal("120 V", lines[3].GetProperty("meant").GetString());
        Assert.True(lines[5].GetProperty("recorded").GetBoolean());
    }

    [Fact]
    public void The_end_of_a_practice_names_what_was_wrong_in_words()
    {
        var output = Shell.Expect(0, _shell.RunWith("give\n", "practice", "headlamps", "--seed", "3")).Output;
        var hidden = Shell.Expect(0, _shell.RunWith("give\n", "practice", "headlamps", "--seed", "3", "--json")).Output;

        Assert.Matches(@"It was [A-Za-z0-9.~]+ [a-z ]+", output);
        Assert.DoesNotMatch(@"It was \S+:\S+", output);
        Assert.Matches(@"""fault"":\s*""\S+:\S+""", hidden);
    }

    [Fact]
    public void A_practice_car_is_the_same_for_the_same_seed()
    {
        const string Moves = "do\ndo\nvolts BAT.pos BAT.neg in key off\nlist\n1\nvolts Q1 Q2\nrepair nonsense\nquit\n";
        var first = Shell.Expect(0, _shell.RunWith(Moves, "practice", "headlamps", "--seed", "3"));

        Assert.Equal(first, _shell.RunWith(Moves, "practice", "headlamps", "--seed", "3"));
        Assert.Contains("Halfsplit", first.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_engines_own_moves_score_as_its_own_play()
    {
        var score = Shell.Expect(0, _shell.RunWith(string.Concat(Enumerable.Repeat("do\n", 40)), "practice", "headlamps", "--seed", "2", "--json"))
            .Output.TrimEnd('\n').Split('\n')[^1];
        var json = System.Text.Json.JsonDocument.Parse(score).RootElement;

        Assert.Equal(json.GetProperty("engine").ToString(), json.GetProperty("player").ToString());
        Assert.True(json.GetProperty("player").GetProperty("cured").GetBoolean());
        Assert.True(json.GetProperty("player").GetProperty("minutes").GetDouble() > 0);
    }

    public void Dispose() => _shell.Dispose();
}
