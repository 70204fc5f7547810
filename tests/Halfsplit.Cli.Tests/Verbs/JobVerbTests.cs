using System.Text.Json;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>open, next, record, withdraw, skip, note, status and hand-over on one file.</summary>
public sealed class JobVerbTests : IDisposable
{
    private readonly Shell _shell = new();

    [Fact]
    public void A_job_begins_with_the_first_complaint_of_the_sheet()
    {
        var opened = Shell.Expect(0, _shell.Run("open", "pump-feed", "--job", _shell.Job, "--json")).Json;

        Assert.Equal("pump does not run", opened.GetProperty("complaint").GetProperty("text").GetString());
        Assert.Equal("M1", opened.GetProperty("complaint").GetProperty("load").GetString());
        Assert.True(File.Exists(_shell.Job));
    }

    [Fact]
    public void The_next_check_is_told_in_full()
    {
        _shell.WithJob("pump-feed", "silent", "12.6 V");

        ApprovedText.Matches("next", Shell.Expect(0, _shell.Run("next", _shell.Job)).Output);
    }

    [Fact]
    public void Status_tells_what_was_done_and_who_is_left()
    {
        _shell.WithJob("headlamps", "dim", "12.6 V");
        Shell.Expect(0, _shell.Run("note", _shell.Job, "green", "dust", "in the plug"));

        ApprovedText.Matches("status", Shell.Expect(0, _shell.Run("status", _shell.Job)).Output);
    }

    [Fact]
    public void Next_in_json_keeps_its_shape()
    {
        _shell.WithJob("pump-feed", "silent");
        var next = Next();

        Assert.False(next.GetProperty("done").GetBoolean());
        var check = next.GetProperty("check");
        Assert.Equal("reading", check.GetProperty("kind").GetString());
        var arrangement = check.GetProperty("arrangement");
        Assert.Equal("key off", arrangement.GetProperty("condition").GetString());
        Assert.All(
            (string[])["unplugged", "removed", "jumpers", "opened"],
            name => Assert.Equal(JsonValueKind.Array, arrangement.GetProperty(name).ValueKind));
        Assert.Equal("volts", check.GetProperty("instrument").GetString());
        Assert.Equal("BAT.pos", check.GetProperty("red").GetString());
        Assert.Equal("BAT.neg", check.GetProperty("black").GetString());
        Assert.Equal(JsonValueKind.Null, check.GetProperty("about").ValueKind);
        var meter = check.GetProperty("meter");
        Assert.Equal(1e7, meter.GetProperty("inputOhms").GetDouble());
        Assert.Equal(0.01, meter.GetProperty("resolution").GetDouble());
        Assert.Equal("0.5 % + 2", meter.GetProperty("accuracy").GetString());
        Assert.Equal(0.2, meter.GetProperty("leadOhms").GetDouble());
        Assert.Equal(["a number with a unit", "jumps", "not sure"], check.GetProperty("answers").EnumerateArray().Select(a => a.GetString()!));
        Assert.True(check.GetProperty("minutes").GetDouble() > 0);
        Assert.NotEmpty(check.GetProperty("steps").EnumerateArray());
        Assert.NotEmpty(check.GetProperty("cautions").EnumerateArray());
        var expected = check.GetProperty("expected")[0];
        Assert.Equal(JsonValueKind.String, expected.GetProperty("suspect").ValueKind);
        Assert.InRange(expected.GetProperty("mean").GetDouble(), 12, 13);
        Assert.True(expected.GetProperty("spread").GetDouble() > 0);
        Assert.Equal(JsonValueKind.Null, expected.GetProperty("words").ValueKind);
        Assert.Equal(JsonValueKind.Null, next.GetProperty("finding").ValueKind);
        var odds = next.GetProperty("suspects").EnumerateArray().Sum(s => s.GetProperty("odds").GetDouble());
        Assert.Equal(1, odds, 1e-6);
    }

    [Fact]
    public void Every_suspects_fault_is_what_fault_takes()
    {
        _shell.WithJob("cooling-fan");
        var faults = Next().GetProperty("suspects").EnumerateArray()
            .Select(s => s.GetProperty("fault").GetString()).OfType<string>().Take(40).ToList();

        Assert.Contains(faults, f => f.Split(':').Length == 3);
        Assert.All(faults, f => Shell.Expect(0, _shell.Run("predict", "cooling-fan", "-c", "fan high", "-f", f, "--json")));
    }

    [Fact]
    public void A_doubtful_reading_is_asked_back_and_only_kept_when_confirmed()
    {
        _shell.WithJob("headlamps", "dim");

        var asked = Shell.Expect(3, _shell.Run("record", _shell.Job, "120", "V"));
        Assert.Contains("--confirm", asked.Output, StringComparison.Ordinal);
        Assert.Single(Entries());
        var json = Shell.Expect(3, _shell.Run("record", _shell.Job, "120 V", "--json")).Json;
        Assert.False(json.GetProperty("recorded").GetBoolean());
        Assert.Equal("120 V", json.GetProperty("question").GetProperty("meant").GetString());

        Shell.Expect(0, _shell.Run("record", _shell.Job, "120 V", "--confirm"));
        Assert.Equal("120 V", Entries()[1].GetProperty("value").GetString());
        Assert.Contains("\"confirmed\":true", File.ReadAllText(_shell.Job), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_no_answer_is_refused_with_what_would_be_one()
    {
        _shell.WithJob("headlamps");

        Assert.Contains("bright", Shell.Expect(4, _shell.Run("record", _shell.Job, "12.4 V")).Error, StringComparison.Ordinal);
        Assert.Contains("not understood", Shell.Expect(4, _shell.Run("record", _shell.Job, "hgfd")).Error, StringComparison.Ordinal);
        Assert.Empty(Entries());
    }

    [Fact]
    public void A_reading_below_zero_is_no_option()
    {
        _shell.WithJob("headlamps", "dim");

        Shell.Expect(0, _shell.Run("record", _shell.Job, "-12.6", "--confirm"));
        Assert.Equal("-12.6", Entries()[1].GetProperty("typed").GetString());
    }

    [Fact]
    public void Another_check_can_be_answered_by_its_id()
    {
        _shell.WithJob("headlamps");

        Shell.Expect(0, _shell.Run("record", _shell.Job, "whole", "--check", "fuse of F21 | key off"));
        Assert.Equal("fuse of F21 | key off", Entries()[0].GetProperty("check").GetString());
        Shell.Expect(2, _shell.Run("record", _shell.Job, "whole", "--check", "fuse of F99 | key off"));
    }

    [Fact]
    public void Withdrawing_asks_the_same_again()
    {
        _shell.WithJob("headlamps", "dim");
        var asked = Next().GetProperty("check").GetProperty("id").GetString();
        Shell.Expect(0, _shell.Run("record", _shell.Job, "12.6"));
        var odds = Next().GetProperty("suspects").ToString();

        Shell.Expect(0, _shell.Run("withdraw", _shell.Job));
        Assert.Equal(asked, Next().GetProperty("check").GetProperty("id").GetString());
        Assert.Single(Entries());
        Shell.Expect(0, _shell.Run("record", _shell.Job, "12.6"));
        Assert.Equal(odds, Next().GetProperty("suspects").ToString());
    }

    [Fact]
    public void An_earlier_reading_is_withdrawn_by_its_number()
    {
        _shell.WithJob("headlamps", "dim", "12.6");

        Shell.Expect(2, _shell.Run("withdraw", _shell.Job, "--number", "7"));
        Shell.Expect(0, _shell.Run("withdraw", _shell.Job, "--number", "1"));
        Assert.Equal("12.6 V", Assert.Single(Entries()).GetProperty("value").GetString());
    }

    [Fact]
    public void With_nothing_done_there_is_nothing_to_withdraw() =>
        Shell.Expect(5, _shell.WithJob("headlamps").Run("withdraw", _shell.Job));

    [Fact]
    public void A_skipped_check_is_not_asked_again_and_a_place_given_up_stays_closed()
    {
        _shell.WithJob("headlamps", "dim", "12.6");
        var first = Next().GetProperty("check").GetProperty("id").GetString();

        Shell.Expect(0, _shell.Run("skip", _shell.Job));
        Assert.NotEqual(first, Next().GetProperty("check").GetProperty("id").GetString());
        Shell.Expect(0, _shell.Run("skip", _shell.Job, "--place", "engine bay"));
        Shell.Expect(0, _shell.Run("skip", _shell.Job, "--place", "engine bay box"));
        var next = Next().GetProperty("check");
        Assert.All(
            (string[])["red", "black", "about"],
            lead => Assert.False(next.GetProperty(lead).GetString() is { } at && at.Split('.')[0] is "BAT" or "F1" or "F2" or "F21" or "F22" or "K8"));
        Shell.Expect(2, _shell.Run("skip", _shell.Job, "--place", "attic"));
    }

    [Fact]
    public void Without_a_name_the_place_is_the_hardest_of_the_check()
    {
        _shell.WithJob("pump-feed", "silent", "12.6");

        var skipped = Shell.Expect(0, _shell.Run("skip", _shell.Job, "--place", "--json")).Json;
        Assert.Contains("everything in", skipped.GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_handed_over_is_done_until_that_is_taken_back()
    {
        _shell.WithJob("headlamps", "dim");
        Shell.Expect(0, _shell.Run("hand-over", _shell.Job, "--to", "a workshop", "--reason", "no time"));

        Assert.True(Next().GetProperty("done").GetBoolean());
        Assert.Equal(JsonValueKind.Null, Next().GetProperty("check").ValueKind);
        Shell.Expect(5, _shell.Run("record", _shell.Job, "12.6"));
        Shell.Expect(0, _shell.Run("withdraw", _shell.Job));
        Assert.False(Next().GetProperty("done").GetBoolean());
        Assert.Single(Entries());
    }

    [Fact]
    public void What_is_at_hand_stays_with_the_job()
    {
        Shell.Expect(0, _shell.Run(
            "open", "pump-feed", "--job", _shell.Job, "--complaint", "engine cranks but does not start", "--helper", "--no-clamp",
            "--cannot-reach", "engine bay"));
        var check = Next().GetProperty("check");

        Assert.Contains(check.GetProperty("steps").EnumerateArray(), s => s.GetString()!.Contains("helper", StringComparison.Ordinal));
        Shell.Expect(0, _shell.Run("record", _shell.Job, "silent"));
        Shell.Expect(0, _shell.Run("skip", _shell.Job, "--check", "volts BAT.pos BAT.neg | key off"));
        check = Next().GetProperty("check");
        Assert.NotEqual("amps-clamp", check.GetProperty("instrument").GetString());
        Assert.DoesNotContain(check.GetProperty("arrangement").GetProperty("opened").EnumerateArray(), o => o.GetString() == "engine bay");
    }

    [Fact]
    public void A_remote_starter_switch_stays_with_the_job_and_comes_with_its_caution()
    {
        Shell.Expect(0, _shell.Run(
            "open", "pump-control-module", "--job", _shell.Job, "--complaint", "engine cranks but does not start", "--remote-starter"));
        var check = Next().GetProperty("check");

        Assert.Contains(check.GetProperty("steps").EnumerateArray(), s => s.GetString()!.Contains("remote starter switch", StringComparison.Ordinal));
        Assert.Contains(check.GetProperty("cautions").EnumerateArray(), c => c.GetString()!.Contains("Remote starter switch", StringComparison.Ordinal));
    }

    [Fact]
    public void A_job_whose_last_line_was_cut_off_goes_on()
    {
        _shell.WithJob("headlamps", "dim", "12.6");
        var bytes = File.ReadAllBytes(_shell.Job);
        File.WriteAllBytes(_shell.Job, bytes[..^40]);

        Assert.Contains("cut short", Shell.Expect(0, _shell.Run("next", _shell.Job)).Error, StringComparison.Ordinal);
        Assert.Single(Entries());
        Shell.Expect(0, _shell.Run("record", _shell.Job, "12.5"));
        Assert.Equal("12.5 V", Entries()[1].GetProperty("value").GetString());
    }

    [Fact]
    public void What_is_no_job_is_left_alone()
    {
        Shell.Expect(1, _shell.Run("next", _shell.File("none.jsonl")));
        File.WriteAllText(_shell.Job, "hello\n");
        Shell.Expect(1, _shell.Run("record", _shell.Job, "12"));
        Assert.Equal("hello\n", File.ReadAllText(_shell.Job));
        Shell.Expect(1, _shell.Run("open", "pump-feed", "--job", _shell.Job));
        Assert.Equal("hello\n", File.ReadAllText(_shell.Job));
    }

    [Theory]
    [InlineData("pump-feed", "--complaint", "pump doesnt run")]
    [InlineData("pump-feed", "--load", "M1")]
    [InlineData("pump-feed", "--load", "M9", "--in", "priming")]
    [InlineData("pump-feed", "--load", "M1", "--in", "priming", "--is", "slow")]
    [InlineData("pump-feed", "--tool", "hammer")]
    [InlineData("pump-feed", "--cannot-reach", "attic")]
    [InlineData("pump-feed", "--lead", "-3")]
    [InlineData("pump-feed", "--meter-counts", "3")]
    public void A_wrong_option_opens_nothing(params string[] arguments)
    {
        Shell.Expect(2, _shell.Run(["open", .. arguments, "--job", _shell.Job]));
        Assert.False(File.Exists(_shell.Job));
    }

    [Theory]
    [InlineData("lint")]
    [InlineData("measure", "pump-feed")]
    [InlineData("open", "pump-feed")]
    [InlineData("next", "a", "b")]
    [InlineData("next", "a", "--colour")]
    [InlineData("record", "a")]
    [InlineData("practice", "pump-feed", "--seed", "seven")]
    public void A_wrong_command_line_ends_with_two(params string[] arguments)
    {
        var ran = Shell.Expect(2, _shell.Run(arguments));

        Assert.StartsWith("halfsplit: ", ran.Error, StringComparison.Ordinal);
        Assert.Empty(ran.Output);
    }

    public void Dispose() => _shell.Dispose();

    private JsonElement Next() => Shell.Expect(0, _shell.Run("next", _shell.Job, "--json")).Json;

    private List<JsonElement> Entries() =>
        [.. Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("entries").EnumerateArray()];
}
