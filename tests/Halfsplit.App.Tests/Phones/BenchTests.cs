using System.Text;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>The bench on a phone without a network: found from the start page, filled in, answered, and wrong inputs told.</summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class BenchTests(PublishedApp app)
{
    [Fact]
    public async Task Aids_answer_in_the_page_without_a_network()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        var page = phone.Page;
        await phone.ReadyAsync();
        await phone.OfflineReadyAsync();
        await phone.Context.SetOfflineAsync(true);

        await phone.Link("app.start.bench").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = phone.Say("bench-aid.wire"), Exact = true }).ClickAsync();
        await page.GetByLabel("Gauge").FillAsync("2.5");
        await page.GetByLabel("Length (m)").FillAsync("4.2");
        await page.GetByLabel("Current (A)").FillAsync("lots");
        await phone.Button("app.bench.answer").ClickAsync();
        await page.Locator(".answer .warn").GetByText("lots").WaitForAsync();
        await page.GetByLabel("Current (A)").FillAsync("8");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".answer dd").GetByText("33.5 mΩ").First.WaitForAsync();

        // An unknown relay, measurement by measurement.
        await phone.GoAsync("#/bench/relay");
        foreach (var reading in (string[])["ohms 1 3 = OL", "ohms 2 4 = 85", "power 2 4 = clicks", "power 4 2 = clicks"])
        {
            var field = page.GetByLabel(phone.Say("app.bench.one-more"));
            await field.FillAsync(reading);
            await phone.Button("app.bench.answer").ClickAsync();
            await page.Locator(".said li span").GetByText(reading, new() { Exact = true }).WaitForAsync();
        }

        await page.Locator(".answer b").GetByText("Settled: 1 normally open, 2 coil").WaitForAsync();

        // What no circuit is about leads here from the start page's search.
        await phone.GoAsync("#/");
        await page.Locator("input[type=search]").FillAsync("horn snorkel");
        await page.GetByText(phone.Say("shelf.unknown-beside", "snorkel")).WaitForAsync();
        await page.Locator("input[type=search]").FillAsync("battery goes flat overnight");
        await page.GetByRole(AriaRole.Link, new() { Name = phone.Say("bench-aid.drain-hunt"), Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = phone.Say("bench-aid.drain-hunt"), Exact = true }).WaitForAsync();

        // A recording that was made on the spot.
        await phone.GoAsync("#/bench/motor");
        await page.Locator("#aid-recording").SetInputFilesAsync(new FilePayload { Name = "pump.csv", MimeType = "text/csv", Buffer = Recording() });
        await page.GetByLabel("Number of bars").FillAsync("8");
        await phone.Button("app.bench.answer").ClickAsync();
        await page.Locator(".answer dd").GetByText("4260 rpm").WaitForAsync();
        phone.AssertNoComplaints();
    }

    [Fact]
    public async Task A_result_is_attached_to_the_open_job_and_asked_about_where_it_does_not_fit()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address);
        var page = phone.Page;
        await phone.ReadyAsync();
        await phone.StartJobAsync("Pump does not run");
        var job = page.Url;

        await phone.Page.GetByRole(AriaRole.Link, new() { Name = phone.Say("app.job.so-far") }).ClickAsync();
        await phone.Link("app.so-far.to-bench").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = phone.Say("bench-aid.contact"), Exact = true }).ClickAsync();
        await page.Locator("#aid-contact-drop").FillAsync("900");
        await page.Locator("#aid-load-current").FillAsync("6");
        await phone.Button("app.bench.answer").ClickAsync();
        await page.Locator("#attach-part").SelectOptionAsync("K2");
        await phone.Button("app.bench.attach").ClickAsync();
        await phone.Link("app.bench.to-job").ClickAsync();
        await page.GetByText("contact drops too much").First.WaitForAsync();

        // The same once more: the job has it already, and says so; what was typed stays.
        await phone.GoAsync("#/bench/contact");
        await page.Locator("#aid-contact-drop").FillAsync("30");
        await page.Locator("#aid-load-current").FillAsync("6");
        await phone.Button("app.bench.answer").ClickAsync();
        await page.Locator("#attach-part").SelectOptionAsync("K2");
        await phone.Button("app.bench.attach").ClickAsync();
        await page.Locator(".banner.trouble").GetByText("relay-contact-bad:K2").WaitForAsync();
        Assert.Equal("30", await page.Locator("#aid-contact-drop").InputValueAsync());

        // It is kept: a reload shows it again.
        await phone.KillAsync(job);
        await phone.Page.GetByRole(AriaRole.Link, new() { Name = phone.Say("app.job.so-far") }).ClickAsync();
        await phone.Page.GetByText("contact drops too much").First.WaitForAsync();
        phone.AssertNoComplaints();
    }

    private static byte[] Recording()
    {
        var csv = new StringBuilder();
        for (var i = 0; i < 5000; i++)
        {
            csv.Append(FormattableString.Invariant($"{i / 10_000.0},{5 + (0.4 * Math.Sin(2 * Math.PI * 568 * i / 10_000))}\n"));
        }

        return Encoding.UTF8.GetBytes(csv.ToString());
    }
}
