using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>
/// What a person does beside answering: says more first, has it read aloud, can't reach, takes back, measures elsewhere, looks
/// at the circuit, reports, searches and brings in files. The browser's voice and its
/// sharing are stand-ins: a machine without sound and other apps has none.
/// </summary>
[Trait("Pace", "slow"), Collection("phones")]
public sealed class WaysTests(PublishedApp app)
{
    private const string StandIns =
        """
        window.spoken = [];
        Object.defineProperty(window, 'speechSynthesis', { value: { speaking: false, speak: u => window.spoken.push([u.lang, u.text]), cancel() {} } });
        window.shared = [];
        window.sharingEnds = null;
        navigator.canShare = () => true;
        navigator.share = async what => {
          window.shared.push([what.files[0].name, await what.files[0].text()]);
          if (window.sharingEnds) throw new DOMException('', window.sharingEnds);
        };
        """;

    [Fact]
    public async Task Every_way_beside_the_asked_one_works()
    {
        var cancellation = TestContext.Current.CancellationToken;
        await using var site = await AppSite.StartAsync(await app.FolderAsync(cancellation), "", cancellation);
        await using var phone = await Phone.TakeAsync(site.Address, before: StandIns);
        var page = phone.Page;
        await phone.ReadyAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Left headlamp dark" }).First.ClickAsync();
        await phone.Link("app.safety.questions").ClickAsync();
        await SayMoreAsync(phone);
        var first = await phone.CheckAsync();

        await page.GetByRole(AriaRole.Button, new() { Name = phone.Say("app.now.read-aloud") }).ClickAsync();
        var spoken = await page.EvaluateAsync<string[][]>("() => window.spoken");
        Assert.Equal("en", Assert.Single(spoken)[0]);
        Assert.Contains("Left headlamp", spoken[0][1], StringComparison.Ordinal);
        Assert.True(await page.EvaluateAsync<bool>("async () => (await import('./js/browser.js')).isAwake()"), "The screen may go dark.");

        // Given up, and taken back.
        await phone.Button("app.now.cannot-reach").ClickAsync();
        await phone.Button("app.reach.check-only").ClickAsync();
        await phone.GoOnAsync(first);
        Assert.NotEqual(first, await phone.CheckAsync());
        await phone.Link("app.job.so-far").ClickAsync();
        await page.GetByText(phone.Say("app.so-far.take-back"), new() { Exact = true }).ClickAsync();
        await page.Locator($"[data-check=\"{first}\"]").WaitForAsync();

        await MeasureElsewhereAsync(phone);
        await LookAtTheCircuitAsync(phone);
        await ReportAsync(phone);
        await BringInAsync(phone);
        phone.AssertNoComplaints();
    }

    private static async Task SayMoreAsync(Phone phone)
    {
        var says = phone.Page.Locator("#vin-says");
        var number = phone.Page.GetByLabel(phone.Say("app.ask.vin"));
        foreach (var (typed, check) in ((string, string)[])[("1M8GDM9AXKP04278", "WrongLength"), ("1M8GDM9AXKP04278O", "WrongCharacter"), ("1M8GDM9A1KP042788", "DigitDiffers"), ("1M8GDM9AXKP042788", "Fits")])
        {
            await number.FillAsync(typed);
            await Assertions.Expect(says).ToHaveTextAsync(phone.Say($"app.vin.{check}", typed.Length));
        }

        await phone.Page.GetByLabel(phone.Say("app.ask.notes")).FillAsync("grey saloon");
        await phone.Button("app.safety.begin").ClickAsync();
        await phone.Now.WaitForAsync();
    }

    /// <summary>Something else: any two points, what one should read there, and a reading taken there.</summary>
    private static async Task MeasureElsewhereAsync(Phone phone)
    {
        await phone.CheckAsync();
        await phone.Button("app.now.else").ClickAsync();
        var sheet = phone.Page.Locator("dialog");
        await sheet.GetByLabel(phone.Say("app.leads.red")).SelectOptionAsync("F21.2p");
        await sheet.GetByLabel(phone.Say("app.circuit.condition")).SelectOptionAsync("dipped beam");
        await phone.Button("app.between.ask").ClickAsync();
        await sheet.Locator(".between .bands").WaitForAsync();
        await phone.Button("app.between.measure").ClickAsync();
        await phone.Page.Locator(".keys").Or(phone.Button("app.cautions.read")).First.WaitForAsync();
        var chosen = await phone.CheckAsync();
        Assert.Contains("F21.2p", chosen, StringComparison.Ordinal);
        await phone.TypeAsync(12.4);
        await phone.SaveAsync();
        Assert.Contains("F21.2p", await phone.Page.Locator(".after .reading").TextContentAsync(), StringComparison.Ordinal);
        await phone.GoOnAsync(chosen);

        // Undo of the last.
        await phone.GoAsync((await phone.Page.EvaluateAsync<string>("() => location.hash")).Replace("#/job/", "#/so-far/", StringComparison.Ordinal));
        await phone.Page.Locator(".entries li").WaitForAsync();
        await Assertions.Expect(phone.Page.Locator(".entries")).ToContainTextAsync("12.4 V");
    }

    private static async Task LookAtTheCircuitAsync(Phone phone)
    {
        var page = phone.Page;
        await phone.Link("app.job.circuit").ClickAsync();
        var drawing = page.Locator(".drawing");
        await drawing.WaitForAsync();
        await page.Locator(".points").WaitForAsync();
        await drawing.FocusAsync();
        await page.Keyboard.PressAsync("0");
        var whole = await WidthAsync(page);
        await page.Keyboard.PressAsync("+");
        var nearer = await WidthAsync(page);
        Assert.True(nearer < whole, $"{nearer} is not nearer than {whole}");
        await page.Keyboard.PressAsync("-");
        Assert.Equal(whole, await WidthAsync(page), 1e-6 * whole);

        await PinchAsync(phone, drawing);
        var pinched = await WidthAsync(page);
        Assert.InRange(pinched, whole / 2.6, whole / 1.8);

        var tapped = await page.EvaluateAsync<string[]>(
            """
            () => [...document.querySelectorAll('.drawing [data-terminal]')].filter(e => {
              const box = e.getBoundingClientRect();
              return document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2)?.closest('[data-terminal]') === e;
            }).map(e => e.dataset.terminal)
            """);
        Assert.True(tapped.Distinct().Count() >= 2, string.Join(' ', tapped));
        foreach (var terminal in tapped.Distinct().Take(2))
        {
            var box = (await page.Locator($".drawing [data-terminal='{terminal}']").First.BoundingBoxAsync())!;
            await page.Touchscreen.TapAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2));
        }

        await Assertions.Expect(page.Locator(".between h4")).ToContainTextAsync(new Regex(string.Join(".*", tapped.Distinct().Take(2).Select(Regex.Escape))));
    }

    private static async Task<double> WidthAsync(IPage page) => double.Parse(
        (await page.Locator(".drawing svg").GetAttributeAsync("viewBox"))!.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>Two fingers that move apart to twice their distance.</summary>
    private static async Task PinchAsync(Phone phone, ILocator drawing)
    {
        var box = (await drawing.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        var session = await phone.Context.NewCDPSessionAsync(phone.Page);
        Task Touch(string type, params double[] apart) => session.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>
        {
            ["type"] = type,
            ["touchPoints"] = apart.SelectMany(a => new[] { new { x = x - a, y, id = 0 }, new { x = x + a, y, id = 1 } }).ToArray(),
        });
        await Touch("touchStart", 40);
        for (var apart = 45.0; apart <= 90; apart += 5)
        {
            await Touch("touchMove", apart);
        }

        await Touch("touchEnd");
    }

    private static async Task ReportAsync(Phone phone)
    {
        var page = phone.Page;
        await phone.Link("app.job.so-far").ClickAsync();
        await phone.Link("app.report.show").ClickAsync();
        var paper = page.FrameLocator(".paper");
        await paper.GetByText("grey saloon").First.WaitForAsync();
        await page.Locator("summary").ClickAsync();
        await page.GetByLabel(phone.Say("app.report.owner")).FillAsync("Owner of the car");
        await phone.Button("app.report.keep").ClickAsync();
        await paper.GetByText("Owner of the car").First.WaitForAsync();
        await phone.Link("app.report.for-colleague").ClickAsync();
        await paper.Locator("body.colleague").WaitForAsync();
        var saved = await page.RunAndWaitForDownloadAsync(() => phone.Button("app.export.save").ClickAsync());
        Assert.EndsWith(".colleague.html", saved.SuggestedFilename, StringComparison.Ordinal);
        Assert.StartsWith("<!doctype html>", await File.ReadAllTextAsync(await saved.PathAsync()), StringComparison.Ordinal);

        await page.EvaluateAsync("() => { document.querySelector('#report-paper').contentWindow.print = () => { window.isPrinted = true; }; }");
        await phone.Button("app.export.print").ClickAsync();
        await page.WaitForFunctionAsync("() => window.isPrinted");

        // Shared; not wanted after all; refused by the phone, so that it is saved instead.
        await phone.Button("app.report.share").ClickAsync();
        await page.WaitForFunctionAsync("() => window.shared.length === 1");
        var shared = await page.EvaluateAsync<string[][]>("() => window.shared");
        Assert.EndsWith(".colleague.html", shared[0][0], StringComparison.Ordinal);
        Assert.StartsWith("<!doctype html>", shared[0][1], StringComparison.Ordinal);
        var downloads = 0;
        page.Download += (_, _) => downloads++;
        await page.EvaluateAsync("() => { window.sharingEnds = 'AbortError'; }");
        await phone.Button("app.report.share").ClickAsync();
        await page.WaitForFunctionAsync("() => window.shared.length === 2");
        await page.EvaluateAsync("() => { window.sharingEnds = 'NotAllowedError'; }");
        await page.RunAndWaitForDownloadAsync(() => phone.Button("app.report.share").ClickAsync());
        Assert.Equal(1, downloads);
    }

    /// <summary>Files that are no job, are damaged, or are whole: each says what came of it, and nothing is lost.</summary>
    private static async Task BringInAsync(Phone phone)
    {
        var page = phone.Page;
        var beside = Companion.Of("pump-feed", "pump does not run", new Simulation.Faults.Fault("G2", "resistive", 15));
        beside.Take(beside.Answer());
        beside.Take(beside.Answer());
        var lines = Encoding.UTF8.GetString(beside.Session.Document.ToJsonLines()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        lines[^2] = lines[^2][..20];
        await phone.GoAsync("#/jobs");
        await page.Locator(".list a").WaitForAsync();
        await page.Locator("input[type=file]").SetInputFilesAsync(
        [
            new FilePayload { Name = "shopping.txt", MimeType = "text/plain", Buffer = "milk, bread"u8.ToArray() },
            new FilePayload { Name = "pump.job.jsonl", MimeType = "application/x-ndjson", Buffer = Encoding.UTF8.GetBytes(string.Join('\n', lines)) },
        ]);
        await page.GetByText(phone.Say("job.file-not-a-job", "shopping.txt")).WaitForAsync();
        await page.GetByText(phone.Say("app.jobs.imported", "pump.job.jsonl", lines.Length - 2)).WaitForAsync();
        Assert.Equal(3, await page.Locator("main > p[role=status]").CountAsync());
        Assert.Equal(2, await page.Locator(".list a").CountAsync());

        var search = page.Locator("input[type=search]");
        await search.FillAsync("PUMP run");
        await Assertions.Expect(page.Locator(".list a")).ToHaveCountAsync(1);
        await search.FillAsync("grey 1M8GDM9AXKP042788");
        await Assertions.Expect(page.Locator(".list a")).ToContainTextAsync("Left headlamp dark");
        await search.FillAsync("nothing of this");
        await page.GetByText(phone.Say("app.jobs.none-found")).WaitForAsync();
    }
}
