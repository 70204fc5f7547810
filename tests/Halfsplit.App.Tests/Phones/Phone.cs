using System.Globalization;
using Halfsplit.Bench;
using Halfsplit.BrowserSmoke.Tests;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Drawing;
using Halfsplit.Jobs;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.App.Tests.Phones;

/// <summary>A browser with the size of a phone, and what a person does with it.</summary>
internal sealed class Phone : IAsyncDisposable
{
    private const float Patience = 240_000;

    private readonly IPlaywright _playwright;
    private readonly IBrowser _browser;
    private readonly List<string> _complaints = [];

    private Phone(IPlaywright playwright, IBrowser browser, IBrowserContext context, IPage page, string address, string locale)
    {
        var language = Language.Find(locale.Split('-')[0])!;
        Texts = new TextCatalog(
            () => language, AppTexts.Source, BenchTexts.Source, JobTexts.Source, DrawingTexts.Source, DiagnosisTexts.Source, CircuitTexts.Source);
        Words = AnswerWords.In(language);
        (_playwright, _browser, Context, Page, Address) = (playwright, browser, context, page, address);
        Listen(page);
    }

    public IBrowserContext Context { get; }

    public IPage Page { get; private set; }

    public string Address { get; }

    /// <summary>The texts in the language of this phone.</summary>
    public TextCatalog Texts { get; }

    public AnswerWords Words { get; }

    /// <summary>What the browser complained of.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    public ILocator Now => Page.Locator("main.now");

    public ILocator NextButton => Page.Locator("button.next");

    public static async Task<Phone> TakeAsync(
        string address, int width = 360, int height = 640, ColorScheme colours = ColorScheme.Light, bool touch = true,
        string locale = "en-GB", string? before = null)
    {
        var playwright = await Playwright.CreateAsync();
        var browser = await InstalledChromium.LaunchAsync(playwright);
        var context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = height },
            HasTouch = touch,
            ColorScheme = colours,
            ReducedMotion = ReducedMotion.Reduce,
            Locale = locale,
        });
        context.SetDefaultTimeout(Patience);
        if (before is not null)
        {
            await context.AddInitScriptAsync(before);
        }

        var page = await context.NewPageAsync();
        var phone = new Phone(playwright, browser, context, page, address, locale);
        await page.GotoAsync(address);
        return phone;
    }

    /// <summary>Waits until the start shows what can be complained of.</summary>
    public Task ReadyAsync() => Page.Locator(".system").First.WaitForAsync();

    /// <summary>Waits until the whole app lies on this device, and the engine's worker, which the start wakes, has come over the network.</summary>
    public async Task OfflineReadyAsync() => await Page.EvaluateAsync(
        """
        async () => {
          await navigator.serviceWorker.ready;
          const { ask } = await import(new URL('js/engine.js', document.baseURI));
          await ask('desk', JSON.stringify({ verb: 'wake' }));
        }
        """);

    /// <summary>Two taps: the complaint, and the safety page.</summary>
    public async Task StartJobAsync(string complaint)
    {
        await Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = complaint }).First.ClickAsync();
        await Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = Say("app.safety.begin") }).ClickAsync();
        await CheckAsync();
    }

    /// <summary>Waits for a check, reads its cautions, and gives its id.</summary>
    public async Task<string> CheckAsync()
    {
        await Now.WaitForAsync();
        var cautions = Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = Say("app.cautions.read") });
        if (await cautions.IsVisibleAsync())
        {
            await cautions.ClickAsync();
            await Page.Locator(".ways").WaitForAsync();
        }

        return await Now.GetAttributeAsync("data-check") ?? "";
    }

    /// <summary>What is asked now, whatever it is: the check's id; "" at the end of the job.</summary>
    public async Task<(string Kind, string Check)> AskedAsync()
    {
        var step = Page.Locator("[data-step]");
        await step.WaitForAsync();
        var kind = await step.GetAttributeAsync("data-step") ?? "";
        return (kind, kind is "check" or "proof" ? await CheckAsync() : await step.GetAttributeAsync("data-check") ?? "");
    }

    /// <summary>Answers what is asked, as a person would with the pads on the screen.</summary>
    public async Task GiveAsync(string kind, ReadingValue answer)
    {
        switch (answer)
        {
            case ReadingParse.Number number:
                await TypeAsync(number.Value);
                await SaveAsync();
                break;
            case ReadingParse.OverLimit:
                await Page.Locator(".keys button:text-is('OL')").ClickAsync();
                break;
            case ReadingParse.Word when kind is "repair" or "put-back":
                await Page.Locator(".bottom .main").ClickAsync();
                break;
            case ReadingParse.Word word when word.Answer == AnswerWord.NotSure:
                await Button("app.now.not-sure").ClickAsync();
                break;
            case ReadingParse.Word word:
                await WordAsync(Words.TextOf(word.Answer));
                break;
        }
    }

    /// <summary>Types a number by thumb; the unit is the one that is chosen.</summary>
    public async Task TypeAsync(double number)
    {
        foreach (var key in number.ToString("0.####", CultureInfo.InvariantCulture).Replace('-', '−'))
        {
            await Page.Locator(".keys").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = key.ToString(), Exact = true }).ClickAsync();
        }
    }

    /// <summary>Waits until what is being typed lies in the phone's store: a key shows at once, and is written in the moment after.</summary>
    public Task KeptAsync(string typed) => Page.WaitForFunctionAsync(
        """
        typed => new Promise((resolve, reject) => {
            const request = indexedDB.open('halfsplit');
            request.onerror = () => reject(request.error);
            request.onsuccess = () => {
                const drafts = request.result.transaction('drafts').objectStore('drafts').getAll();
                drafts.onerror = () => reject(drafts.error);
                drafts.onsuccess = () => {
                    request.result.close();
                    resolve(drafts.result.some(draft => draft.text.includes(`"${typed} `)));
                };
            };
        })
        """,
        typed);

    /// <summary>Saves what is typed; a doubtful reading is confirmed.</summary>
    public async Task SaveAsync()
    {
        await Page.Locator(".keys .save").ClickAsync();
        await SavedAsync();
    }

    /// <summary>Answers with a word: that one, and none that only begins with it.</summary>
    public async Task WordAsync(string word)
    {
        await Page.Locator(".word-pad b, .words button").Filter(new LocatorFilterOptions
        {
            HasTextRegex = new System.Text.RegularExpressions.Regex(@"^\s*" + word + @"\s*$", System.Text.RegularExpressions.RegexOptions.IgnoreCase),
        }).First.ClickAsync();
        await SavedAsync();
    }

    /// <summary>Waits until the next step is known, and goes there: from what the answer did, or at once where nothing is said of it.</summary>
    /// <param name="from">The check that was answered.</param>
    public async Task GoOnAsync(string from = "")
    {
        var another = Page.Locator($"[data-step]:not([data-check=\"{from}\"])");
        await NextButton.Or(another).First.WaitForAsync();
        if (await NextButton.IsVisibleAsync())
        {
            await Assertions.Expect(NextButton).ToBeEnabledAsync(new LocatorAssertionsToBeEnabledOptions { Timeout = Patience });
            await NextButton.ClickAsync();
        }

        await Page.Locator("[data-step]").WaitForAsync();
    }

    /// <summary>
    /// Milliseconds by the page's own clock from the last tap to the frame in which the answer is shown as saved, and to the
    /// one in which the next step is known.
    /// </summary>
    public async Task<(double Saved, double Known)> WatchAsync(Func<Task> answering)
    {
        await Page.EvaluateAsync(
            """
            () => {
              const watch = window.watch = {};
              addEventListener('click', () => { watch.tap = performance.now(); }, { capture: true });
              const frame = () => {
                if (watch.tap && !watch.saved && document.querySelector('.after')) watch.saved = performance.now() - watch.tap;
                if (watch.saved && document.querySelector('button.next:enabled')) watch.known = performance.now() - watch.tap;
                if (!watch.known) requestAnimationFrame(frame);
              };
              frame();
            }
            """);
        await answering();
        await Page.WaitForFunctionAsync("() => window.watch.known");
        var times = await Page.EvaluateAsync<double[]>("() => [window.watch.saved, window.watch.known]");
        return (times[0], times[1]);
    }

    /// <summary>Waits until the engine has made sure of the step.</summary>
    public Task SettledAsync() => Page.Locator("[data-step][data-sure=true]").WaitForAsync();

    /// <summary>What of the check lies beyond the edge of the screen.</summary>
    public Task<string[]> BeyondScreenAsync() => Page.EvaluateAsync<string[]>(
        """
        () => [...document.querySelectorAll('main.now button, main.now .display')]
          .map(e => [e, e.getBoundingClientRect()])
          .filter(([, box]) => box.bottom > innerHeight + 0.5 || box.right > innerWidth + 0.5)
          .map(([e]) => e.outerHTML.slice(0, 80))
        """);

    /// <summary>What of the check lies over something else, or runs out of its line.</summary>
    public Task<string[]> SquashedAsync() => Page.EvaluateAsync<string[]>(
        """
        () => {
          const seen = [...document.querySelectorAll('main.now > *')].map(e => e.matches('.answer') ? e.firstElementChild : e).filter(Boolean);
          const over = seen.slice(1).filter((e, i) => seen[i].getBoundingClientRect().bottom > e.getBoundingClientRect().top + 0.5);
          const out = [...document.querySelectorAll('.strip span')]
            .filter(e => e.getBoundingClientRect().right > e.parentElement.getBoundingClientRect().right + 0.5);
          return [...over, ...out].map(e => e.outerHTML.slice(0, 80));
        }
        """);

    public async Task ReloadAsync()
    {
        await Page.ReloadAsync();
        await Page.Locator("header.top").WaitForAsync();
    }

    /// <summary>The page is gone as with an empty battery; a new one takes its place.</summary>
    public async Task KillAsync(string address)
    {
        var crashed = Page;
        Page = await Context.NewPageAsync();
        await crashed.CloseAsync(new PageCloseOptions { RunBeforeUnload = false });
        Listen(Page);
        await Page.GotoAsync(address);
    }

    /// <summary>A text of the app as this phone shows it.</summary>
    public string Say(string code, params object[] arguments) => Texts.Say(new Message(code, arguments));

    public ILocator Button(string code) => Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = Say(code), Exact = true });

    public ILocator Link(string code) => Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = Say(code), Exact = true });

    /// <summary>Goes to another screen of the same page.</summary>
    public Task GoAsync(string hash) => Page.EvaluateAsync("hash => { location.hash = hash; }", hash);

    public void AssertNoComplaints() => Assert.True(_complaints.Count == 0, string.Join("\n", _complaints));

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync();
        _playwright.Dispose();
    }

    private async Task SavedAsync()
    {
        var doubt = Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new System.Text.RegularExpressions.Regex("^" + Say("app.doubt.right", "").Trim()) });
        var saved = Page.Locator(".after");
        await saved.Or(doubt).First.WaitForAsync();
        if (await doubt.IsVisibleAsync())
        {
            await doubt.ClickAsync();
            await saved.WaitForAsync();
        }
    }

    private void Listen(IPage page)
    {
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                _complaints.Add(message.Text);
            }
        };
        page.PageError += (_, error) => _complaints.Add(error);
    }
}
