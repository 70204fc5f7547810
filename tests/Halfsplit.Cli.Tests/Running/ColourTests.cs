using System.Diagnostics;
using Halfsplit.Cli.Terminals;
using Xunit;

namespace Halfsplit.Cli.Tests.Running;

public sealed class ColourTests
{
    [Fact]
    public void Colours_only_add_to_the_words()
    {
        var (plain, colours) = (Drawn(false), Drawn(true));

        Assert.DoesNotContain('\u001b', plain);
        Assert.Contains('\u001b', colours);
        Assert.Equal(plain, System.Text.RegularExpressions.Regex.Replace(colours, "\u001b\\[[0-9;]*m", ""));
    }

    [Fact]
    public async Task Through_a_pipe_no_colour_and_no_progress_comes_out()
    {
        var start = new ProcessStartInfo("dotnet", [typeof(HalfsplitProgram).Assembly.Location, "predict", "pump-feed", "-c", "priming"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["TERM"] = "xterm-256color";
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        var error = process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal(0, process.ExitCode);
        Assert.DoesNotContain('\u001b', await output);
        Assert.Contains("M1 works", await output, StringComparison.Ordinal);
        Assert.Empty(await error);
    }

    private static string Drawn(bool colours)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter();
        Assert.Equal(0, HalfsplitProgram.Run(
            ["predict", "pump-feed", "-c", "priming"], new Terminal(TextReader.Null, output, error, colours)));
        return output.ToString();
    }
}
