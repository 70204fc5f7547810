using System.Text;
using Halfsplit.App.Desk;
using Halfsplit.App.Link;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.App.Tests.Link;

/// <summary>One file for the app and the terminal.</summary>
public sealed class ShelvedJobTests
{
    [Fact]
    public void What_is_given_out_is_a_job_file_and_comes_in_again_as_it_was()
    {
        var lines = Begun();
        var file = Encoding.UTF8.GetBytes(ShelvedJob.File(lines));

        Assert.StartsWith("""{"format":"halfsplit-job","version":1}""", Encoding.UTF8.GetString(file), StringComparison.Ordinal);
        var read = ShelvedJob.Read("car.job.jsonl", file);
        Assert.Null(read.Problem);
        Assert.Empty(read.Damaged);
        Assert.Equal(lines, read.Lines.Select(l => l.Line));
        Assert.Equal(JobDocument.Read(file).Document, ShelvedJob.Document(lines));
    }

    [Fact]
    public void A_line_cut_short_is_told_and_the_rest_comes_in()
    {
        var lines = Begun();
        var file = Encoding.UTF8.GetBytes(ShelvedJob.File(lines) + """{"id":"01""");
        var read = ShelvedJob.Read("car.job.jsonl", file);

        Assert.Equal(lines.Length, read.Lines.Length);
        Assert.Equal("job.line-cut-short", Assert.Single(read.Damaged).Code);
    }

    [Theory]
    [InlineData("hello", "job.file-not-a-job")]
    [InlineData("""{"format":"halfsplit-job","version":99}""", "job.file-newer")]
    [InlineData("""{"format":"halfsplit-job","version":1}""", "job.not-opened")]
    public void What_is_no_job_is_refused_with_a_reason(string text, string code) =>
        Assert.Equal(code, ShelvedJob.Read("x.jsonl", Encoding.UTF8.GetBytes(text)).Problem!.Code);

    [Theory]
    [InlineData("dark lamp", true)]
    [InlineData("GREY", true)]
    [InlineData("pump", false)]
    public void A_job_is_found_by_all_of_its_words(string search, bool found)
    {
        var job = ShelvedJob.Of(new JobLines("x", Begun()))!;

        Assert.Equal("going-on", job.Stands);
        Assert.Equal(found, job.Matches(search));
    }

    private static string[] Begun() => [.. new EngineDesk(EventStamps.OfThisMachine)
        .Answer(new DeskRequest("begin") { Wish = new JobWish("headlamps", "left headlamp dark") { Vehicle = "grey saloon" } })
        .Keep!.Lines.Select(l => l.Line)];
}
