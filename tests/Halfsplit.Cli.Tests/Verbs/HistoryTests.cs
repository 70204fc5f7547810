using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>Finished jobs in a folder, and what a job opened beside them learns.</summary>
public sealed class HistoryTests : IDisposable
{
    private readonly Shell _shell = new();

    public HistoryTests()
    {
        // One finished job as the program writes it; three more are that file under other ids.
        Shell.Expect(0, _shell.Run("open", "headlamps", "--job", _shell.File("0.job.jsonl")));
        var lines = File.ReadAllLines(_shell.File("0.job.jsonl"));
        for (var i = 0; i < 3; i++)
        {
            string Id(int at) => $"01ARZ3NDEKTSV4RRFFQ69G5F{i}{at}";
            var opened = System.Text.RegularExpressions.Regex.Replace(lines[1], "\"id\":\"[^\"]*\"", $"\"id\":\"{Id(0)}\"");
            File.WriteAllText(
                _shell.File($"{i + 1}.job.jsonl"),
                $"{lines[0]}\n{opened}\n"
                + $$"""{"event":"repair-done","id":"{{Id(1)}}","at":"2026-11-01T10:00:00Z","suspect":"C10.1 resistive","repair":"mend-contact C10.1"}""" + "\n"
                + $$"""{"event":"job-closed","id":"{{Id(2)}}","at":"2026-11-01T10:05:00Z","outcome":"proven"}""" + "\n");
        }

        File.Copy(_shell.File("1.job.jsonl"), _shell.File("copy.job.jsonl"));
        File.WriteAllText(_shell.File("bad.job.jsonl"), "nonsense");
    }

    private string Folder => Path.GetDirectoryName(_shell.Job)!;

    private double Odds(params string[] options)
    {
        File.Delete(_shell.Job);
        Shell.Expect(0, _shell.Run(["open", "headlamps", "--job", _shell.Job, .. options]));
        return Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("suspects").EnumerateArray()
            .First(s => s.GetProperty("id").GetString() == "C10.1 resistive").GetProperty("odds").GetDouble();
    }

    [Fact]
    public void History_lists_what_a_folder_teaches()
    {
        var ran = Shell.Expect(0, _shell.Run("history", Folder));

        ApprovedText.Matches("history", ran.Output.Replace(Folder, "FOLDER", StringComparison.Ordinal));
        Assert.Contains("bad.job.jsonl", ran.Error, StringComparison.Ordinal);
        var json = Shell.Expect(0, _shell.Run("history", Folder, "--json")).Json;
        Assert.Equal((4, 3), (json.GetProperty("jobs").GetInt32(), json.GetProperty("counted").GetInt32()));
        Assert.Equal(3, json.GetProperty("kinds")[0].GetProperty("jobs").GetInt32());
    }

    [Fact]
    public void A_job_learns_from_the_folder_it_lies_in_unless_told_not_to()
    {
        var learned = Odds();
        var text = File.ReadAllText(_shell.Job);
        Assert.Contains("\"learned\":{\"jobs\":3,\"circuitJobs\":3,", text, StringComparison.Ordinal);

        Assert.True(learned > 1.5 * Odds("--ignore-history"));
        Assert.DoesNotContain("\"learned\"", File.ReadAllText(_shell.Job), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_learned_stays_with_the_job_when_the_files_are_gone()
    {
        var learned = Odds("--history", Folder);
        foreach (var file in Directory.GetFiles(Folder).Where(f => f != _shell.Job))
        {
            File.Delete(file);
        }

        Assert.Equal(learned, Shell.Expect(0, _shell.Run("status", _shell.Job, "--json")).Json.GetProperty("suspects").EnumerateArray()
            .First(s => s.GetProperty("id").GetString() == "C10.1 resistive").GetProperty("odds").GetDouble());
        Assert.Contains("3 finished jobs", Shell.Expect(0, _shell.Run("status", _shell.Job)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_told() =>
        Shell.Expect(1, _shell.Run("open", "headlamps", "--job", _shell.Job, "--history", _shell.File("nowhere")));

    [Fact]
    public void Without_a_file_nothing_is_read()
    {
        var talk = Shell.Expect(0, _shell.RunWith("quit\n", "diagnose", "headlamps")).Output;
        Assert.DoesNotContain("Learned from", talk, StringComparison.Ordinal);
        var asked = Shell.Expect(0, _shell.RunWith("quit\n", "diagnose", "headlamps", "--history", Folder)).Output;
        Assert.Contains("Learned from", asked, StringComparison.Ordinal);
        Assert.Contains("3 finished jobs", asked, StringComparison.Ordinal);
    }

    public void Dispose() => _shell.Dispose();
}
