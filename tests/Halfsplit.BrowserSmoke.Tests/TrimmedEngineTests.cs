using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.BrowserSmoke.Tests;

/// <summary>The engine, trimmed and run by a browser, does what it does on a desktop.</summary>
[Trait("Pace", "slow")]
public sealed class TrimmedEngineTests
{
    private const float PatienceMilliseconds = 120_000;

    [Fact]
    public async Task A_browser_gives_the_same_answer_as_this_machine()
    {
        var cancellation = TestContext.Current.CancellationToken;
        var folder = await PublishedApp.PublishAsync(cancellation);
        await using var site = await LoopbackSite.StartAsync(folder, cancellation);
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await InstalledChromium.LaunchAsync(playwright);

        var page = await browser.NewPageAsync();
        var complaints = new List<string>();
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
                complaints.Add(message.Text);
        };
        page.PageError += (_, error) => complaints.Add(error);
        page.RequestFailed += (_, request) => complaints.Add($"{request.Url}: {request.Failure}");

        await page.GotoAsync(site.Address);
        var answer = page.Locator("#answer:not([data-state=running])");
        await answer.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached, Timeout = PatienceMilliseconds });

        var text = await answer.TextContentAsync();
        Assert.True(await answer.GetAttributeAsync("data-state") is "done", text);
        Assert.Empty(complaints);
        Assert.Equal(SmokeJob.Run(), text);
        using var json = JsonDocument.Parse(text!);
        Assert.True(json.RootElement.GetProperty("proven").GetBoolean(), text);
        Assert.StartsWith("Ein Bauteil K1 gibt es nicht;", json.RootElement.GetProperty("nachricht").GetString(), StringComparison.Ordinal);
        Assert.Equal("kein Piepen", json.RootElement.GetProperty("antwort").GetString());
        Assert.StartsWith("There is no part K1;", json.RootElement.GetProperty("message").GetString(), StringComparison.Ordinal);
    }
}
