using System.Text.Json;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>notice, open --noticed and withdraw --noticed.</summary>
public sealed class NoticeTests : IDisposable
{
    private readonly Shell _shell = new();

    [Fact]
    public void What_can_be_said_of_a_sheet_is_listed() =>
        ApprovedText.Matches("notice-list", Shell.Expect(0, _shell.Run("notice", "headlamps", "-c", "left headlamp dark")).Output);

    [Fact]
    public void The_list_in_json_takes_its_own_names()
    {
        var choices = Shell.Expect(0, _shell.Run("notice", "cooling-fan", "--json")).Json.GetProperty("choices").EnumerateArray().ToList();
        var names = choices.Select(c =>
        {
            var name = c.GetProperty("name").GetString()!;
            return c.GetProperty("mustName").GetBoolean() ? $"{name}:{c.GetProperty("about")[0].GetString()}" : name;
        }).ToList();

        Assert.True(names.Count > 20, $"{names.Count}");
        foreach (var name in names)
        {
            using var shell = new Shell();
            Shell.Expect(0, shell.Run("open", "cooling-fan", "--job", shell.Job, "--noticed", name));
            Assert.Contains($"\"name\":\"{name.Split(':')[0]}\"", File.ReadAllText(shell.Job), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_was_noticed_is_kept_shown_and_moves_the_odds()
    {
        Shell.Expect(0, _shell.Run(
            "open", "pump-feed", "--job", _shell.Job, "--noticed", "no sound", "--noticed", "new-relay-did-not-help:k2", "--noticed", "no-sound"));
        Shell.Expect(0, _shell.Run("record", _shell.Job, "silent"));
        ApprovedText.Matches("status-noticed", Shell.Expect(0, _shell.Run("status", _shell.Job)).Output);
        var status = Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json;

        Assert.Equal(
            [("no-sound", null), ("new-relay-did-not-help", "K2")],
            status.GetProperty("noticed").EnumerateArray().Select(n => (n.GetProperty("name").GetString()!, n.GetProperty("about").GetString())));
        Assert.Equal(JsonValueKind.Null, status.GetProperty("learned").ValueKind);
    }

    [Fact]
    public void Something_noticed_later_shows_what_it_moved_and_can_be_taken_back()
    {
        _shell.WithJob("pump-feed", "silent");
        var before = Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("suspects").ToString();

        ApprovedText.Matches("notice", Shell.Expect(0, _shell.Run("notice", _shell.Job, "new-load-did-not-help")).Output);
        Shell.Expect(5, _shell.Run("notice", _shell.Job, "new-load-did-not-help"));
        Assert.Contains("noticed: ", Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "M1 open")).Output, StringComparison.Ordinal);
        Assert.NotEqual(before, Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("suspects").ToString());
        Shell.Expect(0, _shell.Run("withdraw", _shell.Job, "--noticed", "new-load-did-not-help"));
        Assert.Equal(before, Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("suspects").ToString());
    }

    [Fact]
    public void Wrong_names_are_told_with_the_nearest()
    {
        var wrong = Shell.Expect(2, _shell.Run("open", "pump-feed", "--job", _shell.Job, "-n", "no-sond", "-n", "new-relay-did-not-help:K3"));

        var told = wrong.Error.Replace('\n', ' ');
        Assert.Contains("Did you mean \"no-sound\"?", told, StringComparison.Ordinal);
        Assert.Contains("K1, K2", told, StringComparison.Ordinal);
        Assert.False(File.Exists(_shell.Job));
        Shell.Expect(2, _shell.Run("open", "pump-feed", "--job", _shell.Job, "-n", "came-on-suddenly", "-n", "got-worse-slowly"));
    }

    [Fact]
    public void The_conversation_takes_it_too()
    {
        var talk = Shell.Expect(0, _shell.RunWith("silent\nnotice works when thumped\nnotice nonsense\nquit\n", "diagnose", "pump-feed", "-n", "no-sound")).Output;

        Assert.Contains("Noticed     Not a sound when it should start", talk, StringComparison.Ordinal);
        Assert.Contains("Saved. noticed: It works when thumped", talk, StringComparison.Ordinal);
        Assert.Contains("\"nonsense\" is nothing that can be said", talk, StringComparison.Ordinal);
    }

    public void Dispose() => _shell.Dispose();
}
