using System.Buffers.Binary;
using System.Text;
using System.Xml.Linq;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class DrawTests
{
    [Fact]
    public void A_sheet_becomes_an_svg_that_needs_nothing_else()
    {
        using var shell = new Shell();
        var ran = Shell.Expect(0, shell.Run("draw", "headlamps", "-o", shell.File("lamps.svg")));
        var svg = File.ReadAllText(shell.File("lamps.svg"));

        Assert.Equal("Drawn: lamps.svg\n", ran.Output);
        Assert.Equal("svg", XDocument.Parse(svg).Root!.Name.LocalName);
        Assert.DoesNotContain("href", svg, StringComparison.Ordinal);
        Assert.DoesNotContain("url(", svg, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("light", 255)]
    [InlineData("dark", 20)]
    [InlineData("print", 255)]
    public void A_png_has_the_size_that_is_told_and_the_paper_of_its_theme(string theme, int red)
    {
        using var shell = new Shell();
        var told = Shell.Expect(0, shell.Run("draw", "cooling-fan", "-c", "fan high", "--theme", theme, "-o", shell.File("fan.png"), "--json")).Json;
        var bytes = File.ReadAllBytes(shell.File("fan.png"));
        using var picture = SkiaSharp.SKBitmap.Decode(bytes);

        Assert.Equal(picture.Width, BinaryPrimitives.ReadInt32BigEndian(bytes.AsSpan(16)));
        Assert.True(picture.Width > told.GetProperty("width").GetDouble(), "the picture is narrower than its circuit");
        Assert.Equal(red, picture.GetPixel(2, 2).Red);
    }

    [Fact]
    public void A_pdf_has_one_page()
    {
        using var shell = new Shell();
        Shell.Expect(0, shell.Run("draw", "pump-feed", "-o", shell.File("pump.pdf")));
        var text = Encoding.Latin1.GetString(File.ReadAllBytes(shell.File("pump.pdf")));

        Assert.StartsWith("%PDF-", text, StringComparison.Ordinal);
        Assert.Contains("/Count 1", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_draws_its_readings_and_the_next_check()
    {
        using var shell = new Shell();
        shell.WithJob("pump-feed", "silent");
        Shell.Expect(0, shell.Run("draw", "--job", shell.Job, "-o", shell.File("job.svg")));
        var root = XDocument.Parse(File.ReadAllText(shell.File("job.svg"))).Root!;
        var key = root.Descendants().Where(e => (string?)e.Attribute("class") == "hs-key").Select(e => e.Value).ToList();

        Assert.Contains(key, line => line.Contains("silent", StringComparison.Ordinal));
        Assert.Contains(key, line => line.StartsWith("Next check", StringComparison.Ordinal));
        Assert.Contains(root.Descendants(), e => ((string?)e.Attribute("class") ?? "").StartsWith("hs-odds-text", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_command_writes_the_same_file()
    {
        using var shell = new Shell();
        string Draw(string name)
        {
            Shell.Expect(0, shell.Run("draw", "pump-feed", "-c", "priming", "-f", "G2:resistive:2", "-o", shell.File(name)));
            return File.ReadAllText(shell.File(name));
        }

        Assert.Equal(Draw("first.svg"), Draw("second.svg"));
    }

    [Theory]
    [InlineData("x.jpg", "light", "priming", ".svg, .png, .pdf")]
    [InlineData("x.svg", "blue", "priming", "light, dark, print")]
    [InlineData("x.svg", "light", "primin", "priming")]
    public void A_wrong_word_is_explained_and_nothing_is_written(string file, string theme, string condition, string hint)
    {
        using var shell = new Shell();
        var ran = Shell.Expect(2, shell.Run("draw", "pump-feed", "-o", shell.File(file), "--theme", theme, "-c", condition));

        Assert.Contains(hint, ran.Error.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.False(File.Exists(shell.File(file)));
    }

    [Fact]
    public void A_sheet_that_is_not_the_jobs_is_refused()
    {
        using var shell = new Shell();
        shell.WithJob("pump-feed");

        Shell.Expect(2, shell.Run("draw", "headlamps", "--job", shell.Job, "-o", shell.File("x.svg")));
        Shell.Expect(0, shell.Run("draw", "pump-feed", "--job", shell.Job, "-o", shell.File("x.svg")));
    }

    [Fact]
    public void A_file_that_cannot_be_written_is_told()
    {
        using var shell = new Shell();

        Shell.Expect(1, shell.Run("draw", "pump-feed", "-o", shell.File(Path.Combine("no", "such", "x.svg"))));
    }
}
