using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>What readings cleared, why a suspect stands where it stands, and coverage.</summary>
public sealed class ExplainingTests : IDisposable
{
    private readonly Shell _shell = new();

    [Fact]
    public void A_reading_tells_what_it_cleared_and_what_it_could_not()
    {
        _shell.WithJob("pump-feed", "silent", "12.6 V");

        ApprovedText.Matches("record-unloaded", Shell.Expect(
            0, _shell.Run("record", _shell.Job, "12.57 V", "--check", "volts C3.4b BODY | key on; remove K2; jumper K2.30,K2.87")).Output);
        var status = Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json;
        var clearance = status.GetProperty("entries")[2].GetProperty("clearance");
        Assert.NotEmpty(clearance.GetProperty("cleared").EnumerateArray());
        var limit = clearance.GetProperty("notCleared")[0];
        Assert.False(limit.GetProperty("loaded").GetBoolean());
        Assert.InRange(limit.GetProperty("ohms").GetDouble(), 6500, 8300);
        Assert.Contains("C3.4", limit.GetProperty("stretches")[0].GetProperty("pieces").EnumerateArray().Select(p => p.GetString()));
    }

    [Fact]
    public void Why_lists_the_readings_and_how_each_moved_the_odds()
    {
        _shell.WithJob("headlamps", "dim", "12.6 V");
        Shell.Expect(0, _shell.Run("record", _shell.Job, "dim", "--check", "work of LH | main beam"));

        var text = Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "G5 resistive")).Output;
        ApprovedText.Matches("why", text);
        Assert.Equal(text, Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "g5:resistive")).Output);
        Assert.Equal(text, Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "G5")).Output);
        var why = Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "G5", "--json")).Json.GetProperty("why");
        var steps = why.GetProperty("steps").EnumerateArray().ToList();
        Assert.Equal([1, 2, 3], steps.Select(s => s.GetProperty("number").GetInt32()));
        Assert.Equal(why.GetProperty("odds").GetDouble(), steps[^1].GetProperty("after").GetDouble());
    }

    [Fact]
    public void An_unknown_suspect_is_answered_with_the_nearest()
    {
        _shell.WithJob("headlamps", "dim");

        var ran = Shell.Expect(2, _shell.Run("status", _shell.Job, "--why", "G5 resistve"));
        Assert.Contains("G5 resistive", ran.Error, StringComparison.Ordinal);
        Assert.Equal("cli.no-suspect", Shell.Expect(2, _shell.Run("status", _shell.Job, "--why", "XX", "--json"))
            .Json.GetProperty("problems")[0].GetProperty("code").GetString());
    }

    [Fact]
    public void Coverage_tells_groups_and_what_would_part_them()
    {
        ApprovedText.Matches("coverage", Shell.Expect(0, _shell.Run("coverage", "headlamps")).Output);

        var json = Shell.Expect(0, _shell.Run("coverage", "headlamps", "--spare-relay", "--json")).Json;
        Assert.True(json.GetProperty("suspects").GetInt32() > json.GetProperty("alone").GetInt32());
        Assert.All(json.GetProperty("groups").EnumerateArray(), g => Assert.True(g.GetProperty("suspects").GetArrayLength() > 1));
        Assert.DoesNotContain("known good relay", json.ToString(), StringComparison.Ordinal);
        Shell.Expect(2, _shell.Run("coverage", "headlamps", "--complaint", "no such thing"));
    }

    [Fact]
    public void The_whole_plan_tells_at_every_branch_what_it_takes_to_the_end()
    {
        string[] plan = ["plan", "headlamps", "--complaint", "left headlamp dark", "--depth", "3", "--least-odds", "20"];

        ApprovedText.Matches("plan", Shell.Expect(0, _shell.Run(plan)).Output);
        ApprovedText.Matches("plan-dot", Shell.Expect(0, _shell.Run([.. plan, "--dot"])).Output);

        var root = Shell.Expect(0, _shell.Run([.. plan, "--json"])).Json;
        var next = root.GetProperty("outcomes")[0].GetProperty("next");
        var (all, rest) = (Minutes(root.GetProperty("ahead")), Minutes(next.GetProperty("ahead")));
        Assert.InRange(all - Minutes(root), 0.8 * rest, 1.2 * rest);
        Assert.Equal("cli.out-of-range", Shell.Expect(2, _shell.Run("plan", "headlamps", "--depth", "0", "--json"))
            .Json.GetProperty("problems")[0].GetProperty("code").GetString());

        static double Minutes(System.Text.Json.JsonElement of) => of.GetProperty("minutes").GetDouble();
    }

    [Fact]
    public void Why_says_what_a_risk_weighs_and_what_buying_now_costs_also_where_a_rule_decides()
    {
        _shell.WithJob("headlamps", "dim");

        // The battery's posts by rule, in an engine bay of hot and moving parts.
        var text = Shell.Expect(0, _shell.Run("next", _shell.Job, "--why")).Output;
        Assert.Contains("The risk in it weighs as 0.6 min more would: hot parts, moving parts.", text, StringComparison.Ordinal);
        Assert.Contains("Instead, now: ", text, StringComparison.Ordinal);
        var json = Shell.Expect(0, _shell.Run("next", _shell.Job, "--json")).Json;
        Assert.Equal(System.Text.Json.JsonValueKind.Null, json.GetProperty("plan").ValueKind);
        Assert.Equal(0.6, json.GetProperty("check").GetProperty("riskMinutes").GetDouble(), 9);
        var compared = json.GetProperty("compared");
        Assert.True(compared.GetProperty("buyNow").GetProperty("cost").GetDouble() > compared.GetProperty("follow").GetProperty("cost").GetDouble());
    }

    public void Dispose() => _shell.Dispose();
}
