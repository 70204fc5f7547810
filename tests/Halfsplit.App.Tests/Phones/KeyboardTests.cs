using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>Without a finger on the glass: Tab, Enter, Space and the figures are enough.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class KeyboardTests(PublishedApp app)
{
    private const int MostTabs = 80;

    [Fact]
    public async Task A_job_is_opened_measured_and_taken_back_by_keys_alone()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address, 1280, 800, touch: false);
        await phone.ReadyAsync();

        await PressAsync(phone, "Left headlamp dark");
        await phone.Page.Locator(".safety").WaitForAsync();
        await PressAsync(phone, "Understood: to the first check");
        await phone.Now.WaitForAsync();
        await ReadCautionsAsync(phone);
        await PressAsync(phone, "Dark");
        await phone.Page.Locator(".after").WaitForAsync();
        await Assertions.Expect(phone.NextButton).ToBeEnabledAsync();
        await PressAsync(phone, "Next");
        await phone.Page.Locator("[data-step]").WaitForAsync();
        await ReadCautionsAsync(phone);
        await TabToAsync(phone, "e => e.id === 'reading'");
        await phone.Page.Keyboard.TypeAsync("12.6");
        await phone.Page.Keyboard.PressAsync("Enter");
        await phone.Page.Locator(".after").WaitForAsync();
        Assert.Contains("12.6 V", await phone.Page.Locator(".after .reading").TextContentAsync(), StringComparison.Ordinal);
        await PressAsync(phone, "Take it back");
        await phone.Page.Locator("[data-step]").WaitForAsync();
        phone.AssertNoComplaints();
    }

    private static async Task ReadCautionsAsync(Phone phone)
    {
        if (await phone.Page.GetByText("I have read this").IsVisibleAsync())
        {
            await PressAsync(phone, "I have read this");
        }
    }

    private static async Task PressAsync(Phone phone, string name)
    {
        await TabToAsync(phone, $"e => (e.getAttribute('aria-label') ?? e.innerText ?? '').trim().startsWith('{name}')");
        await phone.Page.Keyboard.PressAsync("Enter");
    }

    /// <summary>Goes on with Tab until the focus is on the element wanted; it must be seen there.</summary>
    private static async Task TabToAsync(Phone phone, string wanted)
    {
        for (var tab = 0; tab < MostTabs; tab++)
        {
            await phone.Page.Keyboard.PressAsync("Tab");
            if (await phone.Page.EvaluateAsync<bool>($"() => document.activeElement !== null && ({wanted})(document.activeElement)"))
            {
                var outline = await phone.Page.EvaluateAsync<string>("() => getComputedStyle(document.activeElement).outlineStyle");
                Assert.NotEqual("none", outline);
                return;
            }
        }

        Assert.Fail($"Tab does not reach {wanted}");
    }
}
