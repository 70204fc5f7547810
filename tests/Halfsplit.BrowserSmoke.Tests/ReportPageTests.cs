using System.Text;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Reporting;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Jobs.Tests.Reporting;
using Microsoft.Playwright;
using Xunit;

namespace Halfsplit.BrowserSmoke.Tests;

/// <summary>A report in a real browser: what it runs, what it shows, and how many sheets of paper it takes.</summary>
[Trait("Pace", "slow")]
public sealed partial class ReportPageTests
{
    private static readonly Lazy<JobSession> Hostile = new(() => PlayedJob.Play(PlayedJob.Hostile, PlayedJob.Hostile));

    private static readonly Lazy<JobSession> Long = new(() => PlayedJob.Play(string.Concat(Enumerable.Repeat("A long remark that goes on. ", 400)), new string('x', 5000)));

    public static TheoryData<ReportReader, ReportPaper, string> Forms
    {
        get
        {
            var forms = new TheoryData<ReportReader, ReportPaper, string>();
            foreach (var language in Language.All)
            {
                foreach (var paper in (ReportPaper[])[ReportPaper.A4, ReportPaper.Letter])
                {
                    forms.Add(ReportReader.Owner, paper, language.Code);
                    forms.Add(ReportReader.Colleague, paper, language.Code);
                }
            }

            return forms;
        }
    }

    [Theory]
    [InlineData(ReportReader.Owner)]
    [InlineData(ReportReader.Colleague)]
    public async Task Nothing_runs_and_what_was_typed_stays_text(ReportReader reader)
    {
        await using var shown = await Shown.OpenAsync(PlayedJob.Html(Hostile.Value, reader));

        Assert.NotEqual("ran", await shown.Page.TitleAsync());
        Assert.Equal(0, await shown.Page.Locator("script, a, iframe, [onerror]").CountAsync());
        Assert.Equal(0, await shown.Page.Locator("img[src=x]").CountAsync());
        Assert.Empty(shown.Complaints);
        var text = await shown.Page.Locator("body").InnerTextAsync();
        Assert.Contains("<script>document.title='ran'</script>", text, StringComparison.Ordinal);
        // The page's own style still holds: what was typed neither ended it nor added to it.
        Assert.Equal("rgb(17, 17, 17)", await shown.Page.EvaluateAsync<string>("getComputedStyle(document.body).color"));
    }

    [Fact]
    public async Task The_policy_stops_a_script_even_if_one_got_in()
    {
        var html = PlayedJob.Html(Hostile.Value, ReportReader.Owner)
            .Replace("</body>", "<script>document.title='ran'</script></body>", StringComparison.Ordinal);
        await using var shown = await Shown.OpenAsync(html);

        Assert.NotEqual("ran", await shown.Page.TitleAsync());
        Assert.Contains(shown.Complaints, c => c.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task The_owners_form_is_one_page_and_nothing_is_wider_than_the_paper(ReportReader reader, ReportPaper paper, string language)
    {
        foreach (var (session, most) in ((JobSession, int)[])[(Hostile.Value, 8), (Long.Value, 20)])
        {
            await using var shown = await Shown.OpenAsync(PlayedJob.Html(session, reader, Language.Find(language), paper));
            var pdf = await shown.Page.PdfAsync(new PagePdfOptions { PreferCSSPageSize = true, PrintBackground = true });
            var pages = PageOfPdf().Count(Encoding.Latin1.GetString(pdf));

            if (reader == ReportReader.Owner)
            {
                Assert.Equal(1, pages);
            }
            else
            {
                Assert.InRange(pages, 2, most);
            }

            Assert.True(await shown.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
        }
    }

    [GeneratedRegex(@"/Type\s*/Page\b(?!s)")]
    private static partial Regex PageOfPdf();

    /// <summary>A page in a browser of its own, with all that the browser had to say about it.</summary>
    private sealed class Shown(IPlaywright playwright, IBrowser browser, IPage page, List<string> complaints) : IAsyncDisposable
    {
        public IPage Page => page;

        public IReadOnlyList<string> Complaints => complaints;

        public static async Task<Shown> OpenAsync(string html)
        {
            var path = Path.Combine(Path.GetTempPath(), $"halfsplit-report-{Guid.NewGuid():N}.html");
            await File.WriteAllTextAsync(path, html, TestContext.Current.CancellationToken);
            try
            {
                var playwright = await Playwright.CreateAsync();
                var browser = await InstalledChromium.LaunchAsync(playwright);
                var page = await browser.NewPageAsync();
                var complaints = new List<string>();
                page.Console += (_, message) => complaints.Add(message.Text);
                page.PageError += (_, error) => complaints.Add(error);
                page.Request += (_, request) =>
                {
                    if (request.Url != new Uri(path).AbsoluteUri && !request.Url.StartsWith("data:", StringComparison.Ordinal))
                    {
                        complaints.Add("fetched " + request.Url);
                    }
                };
                await page.GotoAsync(new Uri(path).AbsoluteUri);
                return new Shown(playwright, browser, page, complaints);
            }
            finally
            {
                File.Delete(path);
            }
        }

        public async ValueTask DisposeAsync()
        {
            await browser.DisposeAsync();
            playwright.Dispose();
        }
    }
}
