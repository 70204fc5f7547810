using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>bench --job: a result becomes evidence in a job, is shown, explained and taken back.</summary>
public sealed class BenchResultTests : IDisposable
{
    private readonly Shell _shell = new();

    /// <summary>4.8 Ω: as much as keeps the pump from running.</summary>
    private string[] Contact => ["bench", "contact", "--millivolts", "4800", "--amps", "1", "--job", _shell.Job, "--part", "k2"];

    [Fact]
    public void It_is_kept_shown_explained_and_taken_back()
    {
        _shell.WithJob("pump-feed", "silent");
        var before = Suspects();

        ApprovedText.Matches("bench-attached", Shell.Expect(0, _shell.Run(Contact)).Output);
        Assert.Contains(
            "\"event\":\"part-found\"", File.ReadAllText(_shell.Job), StringComparison.Ordinal);
        Assert.NotEqual(before, Suspects());
        ApprovedText.Matches("status-bench", Shell.Expect(0, _shell.Run("status", _shell.Job)).Output);
        ApprovedText.Matches("why-bench", Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "K2 contact resistive")).Output);
        Shell.Expect(5, _shell.Run(Contact));

        Shell.Expect(0, _shell.Run("withdraw", _shell.Job, "--bench", "relay-contact-bad:K2", "--reason", "wrong relay"));
        Assert.Equal(before, Suspects());
    }

    [Fact]
    public void Scripts_see_it_too()
    {
        _shell.WithJob("pump-feed");
        var attached = Shell.Expect(0, _shell.Run([.. Contact, "--json"])).Json.GetProperty("attached");
        var status = Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json;
        var why = Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "K2 contact resistive", "--json")).Json.GetProperty("why").GetProperty("noticed")[0];

        Assert.Equal("relay-contact-bad", attached.GetProperty("found").GetString());
        Assert.Equal("K2", status.GetProperty("bench")[0].GetProperty("about").GetString());
        Assert.Empty(status.GetProperty("noticed").EnumerateArray());
        Assert.True(why.GetProperty("factor").GetDouble() > 1);
        Assert.Contains("[\"--millivolts\",\"4800\",\"--amps\",\"1\"]", File.ReadAllText(_shell.Job), StringComparison.Ordinal);
    }

    [Fact]
    public void A_contact_too_good_to_be_the_reason_does_not_lift_its_worse_degrees()
    {
        _shell.WithJob("pump-feed", "silent");
        Shell.Expect(0, _shell.Run("bench", "contact", "--millivolts", "540", "--amps", "6", "--job", _shell.Job, "--part", "K2"));
        var why = Shell.Expect(0, _shell.Run("status", _shell.Job, "--why", "K2 contact resistive", "--json")).Json.GetProperty("why").GetProperty("noticed")[0];

        // 90 mΩ does not keep a pump from running, and says nothing for the ohms that do.
        Assert.True(why.GetProperty("factor").GetDouble() < 1.5);
    }

    [Fact]
    public void What_says_too_little_or_names_no_part_is_not_attached()
    {
        _shell.WithJob("pump-feed");
        var lines = File.ReadAllText(_shell.Job);

        Shell.Expect(2, _shell.Run("bench", "contact", "--millivolts", "160", "--amps", "6", "--job", _shell.Job, "--part", "K2"));
        Shell.Expect(2, _shell.Run("bench", "contact", "--millivolts", "900", "--amps", "6", "--job", _shell.Job));
        Shell.Expect(2, _shell.Run("bench", "contact", "--millivolts", "900", "--amps", "6", "--job", _shell.Job, "--part", "K9"));
        Shell.Expect(2, _shell.Run("bench", "contact", "--millivolts", "900", "--amps", "6", "--part", "K2"));
        Shell.Expect(2, _shell.Run("withdraw", _shell.Job, "--bench", "purple:K2"));
        Assert.Equal(lines, File.ReadAllText(_shell.Job));
    }

    [Fact]
    public void What_does_not_fit_the_jobs_own_reading_is_asked_about_and_kept_when_insisted_on()
    {
        _shell.WithJob("pump-feed");
        Shell.Expect(0, _shell.Run("record", _shell.Job, "12.6", "--confirm", "--check", "volts BAT.pos BAT.neg | key off"));
        var lines = File.ReadAllText(_shell.Job);
        string[] battery = ["bench", "battery", "--volts", "9.0", "--job", _shell.Job];

        var asked = Shell.Expect(3, _shell.Run(battery));
        Assert.Contains("reading 1", asked.Error, StringComparison.Ordinal);
        Assert.Contains("12.6 V", asked.Error, StringComparison.Ordinal);
        Assert.Contains("9 V", asked.Error, StringComparison.Ordinal);
        Assert.Contains("--confirm", asked.Error, StringComparison.Ordinal);
        Assert.Equal(lines, File.ReadAllText(_shell.Job));
        Shell.Expect(0, _shell.Run([.. battery, "--confirm"]));
        Assert.StartsWith(lines, File.ReadAllText(_shell.Job), StringComparison.Ordinal);
        Assert.Contains("\"confirmed\":true", File.ReadAllText(_shell.Job), StringComparison.Ordinal);
    }

    [Fact]
    public void A_motor_of_a_job_is_held_against_the_rated_amps_of_its_sheet()
    {
        _shell.WithJob("pump-feed");
        string[] motor = ["bench", "motor", "--mean", "14", "--peak", "14.2", "--job", _shell.Job, "--part", "M1"];

        var output = Shell.Expect(0, _shell.Run(motor)).Output;
        Assert.Contains("of the rated current", output, StringComparison.Ordinal);
        Assert.Contains("far above the rated", output, StringComparison.Ordinal);
        Assert.Contains("as the job's sheet has it for M1", output.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    private string Suspects() => Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("suspects").ToString();

    public void Dispose() => _shell.Dispose();
}
