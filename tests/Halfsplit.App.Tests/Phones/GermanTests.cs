using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>The other language, on the page and out of the worker.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class GermanTests(PublishedApp app)
{
    [Fact]
    public async Task German_is_chosen_on_the_settings_and_spoken_to_the_saved_reading()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        var page = phone.Page;
        await phone.ReadyAsync();
        await page.GetByText("What does not work?").WaitForAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "Settings" }).ClickAsync();
        await page.GetByText("Deutsch").ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Einstellungen" }).WaitForAsync();
        Assert.Equal("de", await page.Locator("html").GetAttributeAsync("lang"));
        await page.GetByRole(AriaRole.Link, new() { Name = "Zurück zum Anfang" }).ClickAsync();
        await page.GetByText("Was geht nicht?").WaitForAsync();

        // The name is there whole, or the logo stands for it.
        Assert.True(await page.EvaluateAsync<bool>(
            "() => { const name = document.querySelector('.top h1'); return name.clientWidth <= 1 || name.scrollWidth <= name.clientWidth; }"));

        await phone.ReadyAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Left headlamp dark" }).First.ClickAsync();
        await page.Locator(".safety").GetByText("Wenn die Serviceangaben").WaitForAsync();
        await PressAsync(page, "Verstanden: zur ersten Prüfung");
        await phone.Now.WaitForAsync();
        await ReadCautionsAsync(phone);
        await page.Locator(".ways").GetByText("Warum das?").WaitForAsync();
        Assert.Empty(await phone.BeyondScreenAsync());
        await page.Locator(".word-pad").GetByText("Dunkel", new() { Exact = true }).ClickAsync();
        await page.Locator(".after").WaitForAsync();
        await phone.GoOnAsync();
        await ReadCautionsAsync(phone);
        Assert.Empty(await phone.BeyondScreenAsync());

        foreach (var key in "12,6")
        {
            await page.Locator(".keys").GetByRole(AriaRole.Button, new() { Name = key.ToString(), Exact = true }).ClickAsync();
        }

        Assert.Equal("12,6", await page.Locator(".display output").TextContentAsync());
        await PressAsync(page, "Speichern");
        await page.Locator(".after").GetByText("Gespeichert").WaitForAsync();
        Assert.Contains("12,6 V", await page.Locator(".after .reading").TextContentAsync(), StringComparison.Ordinal);
        phone.AssertNoComplaints();
    }

    [Fact]
    public async Task A_device_set_to_german_is_spoken_to_in_german()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address, locale: "de-AT");

        await phone.ReadyAsync();

        await phone.Page.GetByText("Was geht nicht?").WaitForAsync();
        Assert.Equal("de", await phone.Page.Locator("html").GetAttributeAsync("lang"));
        phone.AssertNoComplaints();
    }

    private static async Task ReadCautionsAsync(Phone phone)
    {
        var read = phone.Page.GetByRole(AriaRole.Button, new() { Name = "Gelesen" });
        await read.Or(phone.Page.Locator(".ways")).First.WaitForAsync();
        if (await read.IsVisibleAsync())
        {
            await read.ClickAsync();
            await phone.Page.Locator(".ways").WaitForAsync();
        }
    }

    private static Task PressAsync(IPage page, string name) =>
        page.GetByRole(AriaRole.Button, new() { Name = name }).ClickAsync();
}
