using System.Globalization;
using Halfsplit.Diagnosis.Readings;
using Microsoft.Playwright;

namespace Halfsplit.App.Tests.Phones;

/// <summary>What a job on one sheet took. Times in seconds by the page's own clock.</summary>
/// <param name="Hidden">What was wrong with the car.</param>
/// <param name="End">How the job stands in the end: <c>proven</c> or <c>handed-over</c>.</param>
/// <param name="First">From the tap that opens the job to its first check.</param>
/// <param name="Next">From each tap that saved an answer to the next check shown.</param>
/// <param name="Sure">From the same tap until the engine has made sure of it, the look at the saved answer included.</param>
/// <param name="HasReport">The owner's and the colleague's page were both there.</param>
/// <param name="Complaints">What the browser complained of, and what lay over something else on its screen.</param>
/// <param name="Trouble">Why the job went no further; null where it was closed.</param>
internal sealed record PlayedSheet(
    string Sheet, string Hidden, string End, double First, IReadOnlyList<double> Next, IReadOnlyList<double> Sure, bool HasReport,
    IReadOnlyList<string> Complaints, string? Trouble)
{
    public const string Head =
        "| sheet | hidden fault | answers | end | first check s | next check s: median | slowest | made sure s: slowest | report | errors |\n"
        + "|---|---|---|---|---|---|---|---|---|---|";

    public double Slowest => Next.DefaultIfEmpty().Max();

    public string Row => string.Create(
        CultureInfo.InvariantCulture,
        $"| {Sheet} | {Hidden} | {Next.Count} | {Trouble ?? End} | {First:0.0} | {Next.Order().ElementAtOrDefault(Next.Count / 2):0.0} | {Slowest:0.0} | {Sure.DefaultIfEmpty().Max():0.0} | {(HasReport ? "yes" : "no")} | {Complaints.Count} |");
}

/// <summary>A whole job on one sheet: the safety page is read, and then every check is answered at once, which leaves least time to think ahead.</summary>
internal sealed class SheetPlay(Phone phone, string sheet)
{
    /// <summary>Draws the car; any other would do.</summary>
    private const long Seed = 1;

    private const int MostSteps = 60;

    /// <summary>So long the safety page is read: nobody takes in its cautions sooner.</summary>
    private static readonly TimeSpan Reading = TimeSpan.FromSeconds(5);

    private readonly List<double> _next = [], _sure = [];

    /// <summary>A folder for a picture of every screen; null for none.</summary>
    private readonly string? _pictures = Environment.GetEnvironmentVariable("HALFSPLIT_PICTURES");

    /// <summary>What lay over something else on a screen.</summary>
    private readonly HashSet<string> _squashed = new(StringComparer.Ordinal);

    private int _picture;

    public async Task<PlayedSheet> PlayAsync()
    {
        var car = PlayedCar.Of(sheet, Seed);
        var (first, end, trouble) = (0.0, "", (string?)null);
        var hasReport = false;
        try
        {
            await phone.GoAsync($"#/new/{sheet}/{Uri.EscapeDataString(car.Complaint.Name)}");
            await phone.Button("app.safety.begin").WaitForAsync();
            await PictureAsync();
            await Task.Delay(Reading);
            (first, _) = await WatchAsync("", "", () => phone.Button("app.safety.begin").ClickAsync());
            var (kind, check) = await phone.AskedAsync();
            for (var step = 0; step < MostSteps && kind != "done"; step++)
            {
                await PictureAsync();
                _squashed.UnionWith(await phone.SquashedAsync());
                var (known, sure) = await WatchAsync(
                    kind, check, kind == "stuck" ? HandOverAsync : () => phone.GiveAsync(kind, car.Answer(check)));
                _next.Add(known);
                _sure.Add(sure);
                (kind, check) = await phone.AskedAsync();
            }

            trouble = kind == "done" ? null : $"not done after {MostSteps} steps";
            end = await phone.Page.GetByText(phone.Say("app.done.proven")).IsVisibleAsync() ? "proven" : "handed over";
            await PictureAsync();
            hasReport = await ReportAsync();
        }
        catch (Exception problem) when (problem is PlaywrightException or TimeoutException or InvalidOperationException)
        {
            trouble = problem.Message.Split('\n')[0];
            await PictureAsync();
        }

        return new PlayedSheet(sheet, car.Hidden, end, first, _next, _sure, hasReport, [.. phone.Complaints, .. _squashed], trouble);
    }

    /// <summary>
    /// Seconds from the last tap of an answer to the frame in which the next step is known, and to the one in which it is
    /// shown and sure.
    /// </summary>
    /// <param name="kind">What is answered.</param>
    /// <param name="check">Its check.</param>
    private async Task<(double Known, double Sure)> WatchAsync(string kind, string check, Func<Task> answer)
    {
        await phone.Page.EvaluateAsync(
            """
            ([kind, check]) => {
              const watch = window.watch = {};
              const tapped = () => { if (!watch.known) watch.tap = performance.now(); };
              addEventListener('click', tapped, { capture: true });
              const isKnown = () => document.querySelector('button.next:enabled')
                || [...document.querySelectorAll('[data-step]')].some(e => e.dataset.step !== kind || (e.dataset.check ?? '') !== check);
              const frame = () => {
                if (!watch.known && watch.tap && isKnown()) watch.known = performance.now() - watch.tap;
                if (watch.known && document.querySelector('[data-step][data-sure=true]')) watch.sure = performance.now() - watch.tap;
                if (watch.sure) removeEventListener('click', tapped, { capture: true }); else requestAnimationFrame(frame);
              };
              frame();
            }
            """, new[] { kind, check });
        await answer();
        await phone.Page.WaitForFunctionAsync("() => window.watch.known");
        await PictureAsync(".after");
        if (await phone.NextButton.IsVisibleAsync())
        {
            await phone.NextButton.ClickAsync();
        }

        await phone.Page.WaitForFunctionAsync("() => window.watch.sure");
        var times = await phone.Page.EvaluateAsync<double[]>("() => [window.watch.known, window.watch.sure]");
        return (times[0] / 1000, times[1] / 1000);
    }

    private async Task HandOverAsync()
    {
        await phone.Button("app.hand-over.title").ClickAsync();
        await phone.Button("app.hand-over.do").ClickAsync();
    }

    /// <summary>Whether both pages of the report are there, with what they begin with.</summary>
    private async Task<bool> ReportAsync()
    {
        await phone.Link("app.report.show").ClickAsync();
        foreach (var reader in (string[])["owner", "colleague"])
        {
            await phone.Link($"app.report.for-{reader}").ClickAsync();
            var paper = phone.Page.Locator($"#report-paper[title=\"{phone.Say($"app.report.for-{reader}")}\"]");
            await paper.WaitForAsync();
            var title = paper.ContentFrame.Locator("h1").First;
            await title.WaitForAsync();
            if (string.IsNullOrWhiteSpace(await title.TextContentAsync()))
            {
                return false;
            }

            await PictureAsync();
            if (_pictures is not null)
            {
                await File.WriteAllTextAsync(Path.Combine(_pictures, $"{sheet}.{reader}.html"), await paper.GetAttributeAsync("srcdoc"));
            }
        }

        return true;
    }

    /// <param name="where">Only where this is seen.</param>
    private async Task PictureAsync(string where = "body")
    {
        if (_pictures is not null && await phone.Page.Locator(where).First.IsVisibleAsync())
        {
            await phone.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(_pictures, $"{sheet}.{++_picture:00}.png") });
        }
    }
}
