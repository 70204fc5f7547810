using System.Diagnostics;
using System.Globalization;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>What the first visit sends, how long starting takes, and how long a person waits for the next check. Sizes are held to; times are printed.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class MeasuredTests(PublishedApp app, ITestOutputHelper output)
{
    private const long MostBytes = 5_000_000;

    [Fact]
    public async Task The_first_visit_stays_under_five_megabytes_and_a_second_sends_next_to_nothing()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        var clock = Stopwatch.StartNew();
        await using var phone = await Phone.TakeAsync(site.Address);
        await phone.Page.Locator("header.top").WaitForAsync();
        var shown = clock.Elapsed;
        await phone.ReadyAsync();
        var ready = clock.Elapsed;
        await phone.OfflineReadyAsync();
        var first = site.Sent;
        clock.Restart();
        await phone.ReloadAsync();
        var warmShown = clock.Elapsed;
        await phone.ReadyAsync();
        var warmReady = clock.Elapsed;

        Print($"first visit: {first / 1e6:0.00} MB over the wire, everything for offline use included; second: {(site.Sent - first) / 1e6:0.00} MB");
        Print($"cold start: first screen {shown.TotalSeconds:0.0} s, circuits {ready.TotalSeconds:0.0} s; warm: {warmShown.TotalSeconds:0.0} s, {warmReady.TotalSeconds:0.0} s");
        Assert.InRange(first, 1, MostBytes);
        Assert.InRange(site.Sent - first, 0, 100_000);
    }

    [Fact]
    public async Task The_wait_after_saving_is_printed_at_a_quarter_of_the_speed()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        await phone.ReadyAsync();
        // The browser slows down the page alone; the engine's workers run as fast as this machine lets them.
        var session = await phone.Context.NewCDPSessionAsync(phone.Page);
        await session.SendAsync("Emulation.setCPUThrottlingRate", new Dictionary<string, object> { ["rate"] = 4 });
        var clock = Stopwatch.StartNew();
        await phone.StartJobAsync("Pump does not run");
        Print($"page at 4x slow-down, pump-feed: from the safety page to the first check {clock.Elapsed.TotalSeconds:0.0} s");
        var beside = Companion.Of("pump-feed", "pump does not run", new Halfsplit.Simulation.Faults.Fault("G2", "resistive", 15));
        for (var step = 0; step < 4 && beside.Asked is not null; step++)
        {
            // The last is answered at once, as nobody can: then there is only a first sight.
            var isForeseen = step < 3;
            clock.Restart();
            if (isForeseen)
            {
                await phone.Page.Locator("[data-foreseen=all]").WaitForAsync();
            }

            var thought = clock.Elapsed;
            var answer = beside.Answer();
            var kind = (await phone.AskedAsync()).Kind;
            var (saved, known) = await phone.WatchAsync(() => phone.GiveAsync(kind, answer));
            Print($"step {step + 1}, {(isForeseen ? "thought ahead in" : "answered before it was thought of,")} {thought.TotalSeconds:0.0} s: shown as saved {saved:0} ms after the tap, next check {known:0} ms");
            beside.Take(answer);
            await phone.GoOnAsync();
            if (step < 2)
            {
                await phone.SettledAsync();
            }
        }

        phone.AssertNoComplaints();
    }

    private void Print(FormattableString line)
    {
        var text = line.ToString(CultureInfo.InvariantCulture);
        output.WriteLine(text);
        Console.WriteLine(text);
    }
}
