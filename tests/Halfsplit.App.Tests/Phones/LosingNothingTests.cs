using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>A phone goes dark, a page is reloaded: what was saved is there, and what was being typed too.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class LosingNothingTests(PublishedApp app)
{
    [Fact]
    public async Task A_reload_and_a_kill_in_the_middle_of_a_reading_lose_nothing()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        await phone.ReadyAsync();
        await phone.StartJobAsync("Left headlamp dark");
        await phone.WordAsync("dark");
        await phone.GoOnAsync();
        var check = await phone.CheckAsync();
        await phone.TypeAsync(12.5);
        await phone.KeptAsync("12.5");

        await phone.ReloadAsync();
        Assert.Equal(check, await phone.CheckAsync());
        Assert.Equal("12.5", await phone.Page.Locator(".display output").TextContentAsync());

        await phone.TypeAsync(8);
        await phone.KeptAsync("12.58");
        var address = phone.Page.Url;
        await phone.KillAsync(address);
        Assert.Equal(check, await phone.CheckAsync());
        Assert.Equal("12.58", await phone.Page.Locator(".display output").TextContentAsync());

        await phone.SaveAsync();
        await phone.KillAsync(address);
        await phone.CheckAsync();
        await phone.Page.GetByRole(Microsoft.Playwright.AriaRole.Link, new() { Name = "So far" }).ClickAsync();
        await phone.Page.Locator(".entries li").Nth(1).WaitForAsync();
        Assert.Contains("12.58 V", await phone.Page.Locator(".entries").TextContentAsync(), StringComparison.Ordinal);
        phone.AssertNoComplaints();
    }
}
