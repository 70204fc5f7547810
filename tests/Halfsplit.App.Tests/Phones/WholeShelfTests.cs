using System.Globalization;
using Halfsplit.Circuits.Sheets;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>
/// A job from the complaint to its report on a phone-sized screen, sheet after sheet, with a simulated car that answers. A
/// few sheets as a rule; all of them, with the table of <c>docs/app.md</c>, with <c>HALFSPLIT_WHOLE_SHELF=1</c>, or those named there.
/// </summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class WholeShelfTests(PublishedApp app, ITestOutputHelper output)
{
    /// <summary>Small ones: a horn, and lamps at 24 V.</summary>
    private static readonly string[] AsARule = ["horn", "truck-tail-lamps-24v"];

    [Fact]
    public async Task Every_sheet_does_a_whole_job_and_reports_it()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        Print(PlayedSheet.Head);
        var played = new List<PlayedSheet>();
        foreach (var sheet in Chosen(Environment.GetEnvironmentVariable("HALFSPLIT_WHOLE_SHELF")))
        {
            cancellation.ThrowIfCancellationRequested();
            await using var phone = await Phone.TakeAsync(site.Address);
            await phone.ReadyAsync();
            var one = await new SheetPlay(phone, sheet).PlayAsync();
            Print(one.Row);
            played.Add(one);
        }

        var slowest = played.MaxBy(p => p.Slowest)!;
        Print(string.Create(CultureInfo.InvariantCulture, $"slowest next check: {slowest.Slowest:0.0} s ({slowest.Sheet})"));
        Assert.All(played, one =>
        {
            Assert.Null(one.Trouble);
            Assert.Empty(one.Complaints);
            Assert.True(one.HasReport, one.Sheet);
        });

        // Handing over is an honest end on a hard sheet; on these two the fault is found.
        Assert.All(played.Where(p => AsARule.Contains(p.Sheet)), one =>
        {
            Assert.Equal("proven", one.End);
            Assert.DoesNotContain(PlayedCar.StillThere, one.Hidden, StringComparison.Ordinal);
        });
    }

    private static string[] Chosen(string? wanted) => wanted switch
    {
        null or "" => AsARule,
        "1" => [.. ShippedSheets.Names],
        _ => wanted.Split(','),
    };

    private void Print(string line)
    {
        output.WriteLine(line);
        Console.WriteLine(line);
    }
}
