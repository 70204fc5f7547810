using System.Text;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class ReportTests
{
    [Theory]
    [InlineData("report.html", "<!doctype html>")]
    [InlineData("report.htm", "<!doctype html>")]
    [InlineData("report.json", "{")]
    [InlineData("report.csv", "\uFEFFnumber,time,")]
    [InlineData("report.pdf", "%PDF-")]
    public void The_name_tells_the_format(string name, string begins)
    {
        using var shell = new Shell().WithJob("headlamps", "dim");
        var ran = Shell.Expect(0, shell.Run("report", shell.Job, "-o", shell.File(name)));

        Assert.Contains(name, ran.Output, StringComparison.Ordinal);
        Assert.StartsWith(begins, Encoding.UTF8.GetString(File.ReadAllBytes(shell.File(name))), StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_file_it_goes_to_the_output()
    {
        using var shell = new Shell().WithJob("headlamps", "dim");

        Assert.StartsWith("<!doctype html>", Shell.Expect(0, shell.Run("report", shell.Job)).Output, StringComparison.Ordinal);
        Assert.Equal("going-on", Shell.Expect(0, shell.Run("report", shell.Job, "--json")).Json.GetProperty("standing").GetString());
        Assert.StartsWith("number,", Shell.Expect(0, shell.Run("report", shell.Job, "--format", "CSV")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_report_changes_nothing_in_the_job()
    {
        using var shell = new Shell().WithJob("headlamps", "dim");
        var before = File.ReadAllBytes(shell.Job);
        Shell.Expect(0, shell.Run("report", shell.Job, "--for", "colleague"));

        Assert.Equal(before, File.ReadAllBytes(shell.Job));
    }

    [Fact]
    public void A_file_that_exists_is_never_overwritten()
    {
        using var shell = new Shell().WithJob("headlamps", "dim");
        var before = File.ReadAllBytes(shell.Job);

        Shell.Expect(1, shell.Run("report", shell.Job, "--format", "json", "-o", shell.Job));

        Assert.Equal(before, File.ReadAllBytes(shell.Job));
    }

    [Fact]
    public void Where_no_browser_is_installed_it_says_what_to_do()
    {
        using var shell = new Shell().WithJob("headlamps", "dim");
        shell.Environment["PATH"] = "";
        shell.Environment["HALFSPLIT_BROWSER"] = shell.File("no-such-browser");
        var ran = Shell.Expect(1, shell.Run("report", shell.Job, "-o", shell.File("report.pdf")));

        Assert.Contains("HALFSPLIT_BROWSER", ran.Error, StringComparison.Ordinal);
        Assert.Contains("Chromium", ran.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(shell.File("report.pdf")));
    }

    [Theory]
    [InlineData("--format", "docx")]
    [InlineData("--for", "everybody")]
    [InlineData("--paper", "a3")]
    [InlineData("-o", "report")]
    [InlineData("--format", "pdf")]
    public void What_it_cannot_do_it_says(string option, string value)
    {
        using var shell = new Shell().WithJob("headlamps");
        var ran = Shell.Expect(2, shell.Run("report", shell.Job, option, value));

        Assert.NotEmpty(ran.Error);
        Assert.Empty(ran.Output);
    }

    [Fact]
    public void What_is_described_stands_in_the_report()
    {
        using var shell = new Shell().WithJob("headlamps", "dim");
        Shell.Expect(0, shell.Run("describe", shell.Job, "--vehicle", "a <green> van", "--owner", "Somebody"));
        Shell.Expect(0, shell.Run("describe", shell.Job, "--worker", "Nobody & Co"));
        Shell.Expect(2, shell.Run("describe", shell.Job));
        var html = Shell.Expect(0, shell.Run("report", shell.Job)).Output;

        Assert.Contains("<bdi>a &lt;green&gt; van</bdi>", html, StringComparison.Ordinal);
        Assert.Contains("<bdi>Somebody</bdi>", html, StringComparison.Ordinal);
        Assert.Contains("<bdi>Nobody &amp; Co</bdi>", html, StringComparison.Ordinal);
        Assert.Equal("a <green> van", shell.Run("status", shell.Job, "--json").Json.GetProperty("vehicle").GetString());
    }
}
