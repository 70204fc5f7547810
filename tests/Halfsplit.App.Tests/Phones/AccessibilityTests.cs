using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>axe finds nothing against WCAG 2.2 AA on any screen, light or dark, in either language; what a thumb hits is 48 px or more; nothing is cut off.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class AccessibilityTests(PublishedApp app)
{
    private const int Target = 48;

    /// <summary>What was found on all screens: one run tells everything.</summary>
    private readonly List<string> _found = [];

    [Theory]
    [InlineData("en-GB")]
    [InlineData("de-DE")]
    public async Task No_screen_breaks_a_rule(string locale)
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address, locale: locale);
        await phone.ReadyAsync();
        await LookAsync(phone, "start");

        await phone.Page.GetByRole(AriaRole.Link, new() { Name = "Left headlamp dark" }).First.ClickAsync();
        await phone.Page.Locator(".safety").WaitForAsync();
        await LookAsync(phone, "safety");
        await phone.Link("app.safety.questions").ClickAsync();
        await phone.Page.Locator(".questions fieldset").First.WaitForAsync();
        await LookAsync(phone, "questions");
        await phone.Button("app.safety.begin").ClickAsync();

        await phone.Now.WaitForAsync();
        await LookAsync(phone, "cautions");
        await phone.CheckAsync();
        await AssertFitsAsync(phone, "words");
        await LookAsync(phone, "words");
        foreach (var way in (string[])["app.now.cannot-reach", "app.now.why", "app.now.else"])
        {
            await phone.Button(way).ClickAsync();
            await phone.Page.Locator("dialog .inside").WaitForAsync();
            await Assertions.Expect(phone.Page.Locator("dialog .waiting")).ToHaveCountAsync(0, new() { Timeout = 240_000 });
            await LookAsync(phone, way);
            await phone.Page.Keyboard.PressAsync("Escape");
            await Assertions.Expect(phone.Page.Locator("dialog")).ToHaveCountAsync(0);
        }

        await phone.WordAsync(phone.Words.TextOf(Diagnosis.Readings.AnswerWord.Dark));
        await LookAsync(phone, "saved");
        await phone.GoOnAsync();
        await phone.CheckAsync();
        await AssertFitsAsync(phone, "keypad");
        await LookAsync(phone, "keypad");
        await phone.TypeAsync(126);
        await phone.Page.Locator(".save").ClickAsync();
        await phone.Page.GetByText(phone.Say("app.doubt.title")).WaitForAsync();
        await LookAsync(phone, "doubt");
        await phone.Page.Keyboard.PressAsync("Escape");

        await phone.Link("app.job.so-far").ClickAsync();
        await phone.Page.Locator(".entries").WaitForAsync();
        await LookAsync(phone, "so far");
        await phone.Link("app.report.show").ClickAsync();
        await phone.Page.Locator(".paper").WaitForAsync();
        await LookAsync(phone, "report");
        await phone.Link("app.job.circuit").ClickAsync();
        await phone.Page.Locator(".parts").WaitForAsync();
        await LookAsync(phone, "circuit");
        await phone.Page.Locator(".parts button").First.ClickAsync();
        await phone.Page.Locator("dialog .figures").WaitForAsync();
        await LookAsync(phone, "part");
        await phone.Page.Keyboard.PressAsync("Escape");

        await phone.GoAsync("#/jobs");
        await phone.Page.Locator(".list a").First.WaitForAsync();
        await LookAsync(phone, "jobs");
        await phone.GoAsync("#/settings");
        await phone.Page.Locator("fieldset").First.WaitForAsync();
        await LookAsync(phone, "settings");
        Assert.True(_found.Count == 0, string.Join('\n', _found));
        phone.AssertNoComplaints();
    }

    [Theory]
    [InlineData("en-GB")]
    [InlineData("de-DE")]
    public async Task The_bench_breaks_no_rule(string locale)
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address, locale: locale);
        await phone.ReadyAsync();
        await LookAsync(phone, "start");
        await phone.Link("app.start.bench").ClickAsync();
        await phone.Page.Locator(".list a").First.WaitForAsync();
        await LookAsync(phone, "bench");
        foreach (var aid in (string[])["wire", "relay", "fuse", "motor"])
        {
            await phone.GoAsync($"#/bench/{aid}");
            await Assertions.Expect(phone.Page.Locator("header.top h1")).ToHaveTextAsync(phone.Say($"bench-aid.{aid}"));
            await phone.Button("app.bench.answer").ClickAsync();
            await phone.Page.Locator(".answer p").First.WaitForAsync();
            await LookAsync(phone, aid);
        }

        Assert.True(_found.Count == 0, string.Join('\n', _found));
        phone.AssertNoComplaints();
    }

    /// <summary>The screen by day and by night.</summary>
    private async Task LookAsync(Phone phone, string screen)
    {
        await LookInAsync(phone, $"{screen}, light");
        await phone.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Dark });
        await LookInAsync(phone, $"{screen}, dark");
        await phone.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Light });
        await AssertTargetsAsync(phone, screen);
    }

    private async Task LookInAsync(Phone phone, string screen)
    {
        var result = await phone.Page.RunAxe(new AxeRunOptions
        {
            // Nothing runs in the report's frame, axe neither.
            Iframes = false,
            RunOnly = new RunOnlyOptions { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
        });
        _found.AddRange(result.Violations.Select(v => $"{screen}: {v.Id}: {v.Help}\n" + string.Join('\n', v.Nodes.Select(n => "  " + n.Html))));
    }

    /// <summary>Links within a sentence are left out, as the rule does.</summary>
    private async Task AssertTargetsAsync(Phone phone, string screen)
    {
        var small = await phone.Page.EvaluateAsync<string[]>(
            """
            least => [...document.querySelectorAll('button, select, input:not([type=checkbox], [type=radio], [type=file]), .list a, header a, label.check')]
              .filter(e => e.checkVisibility() && !e.closest('.skip-link') && !e.matches('.skip-link'))
              .map(e => [e, e.getBoundingClientRect()])
              .filter(([, box]) => box.width > 0 && (Math.round(box.width) < least - 2 || Math.round(box.height) < least - 2))
              .map(([e, box]) => `${e.outerHTML.slice(0, 80)} ${box.width} x ${box.height}`)
            """, Target);
        _found.AddRange(small.Select(s => $"{screen}: under {Target} px: {s}"));
    }

    /// <summary>The whole check is on the screen: nothing has to be scrolled to.</summary>
    private async Task AssertFitsAsync(Phone phone, string screen)
    {
        var beyond = await phone.BeyondScreenAsync();
        _found.AddRange(beyond.Select(b => $"{screen}: not on the screen: {b}"));
    }
}
