using AngleSharp.Dom;
using Bunit;
using Halfsplit.App.Link;
using Halfsplit.App.Parts;
using Halfsplit.Bench.Forms;
using Halfsplit.Bench.Motors;
using Microsoft.Extensions.DependencyInjection;
using Xunit;

namespace Halfsplit.App.Tests.Parts;

public sealed class AidFormTests : IAsyncDisposable
{
    private readonly BunitContext _page = new();

    public AidFormTests()
    {
        // The first answer reads its tables, on a machine that may be busy.
        BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(30);
        _page.JSInterop.Mode = JSRuntimeMode.Loose;
        _page.JSInterop.SetupModule(_ => true).Mode = JSRuntimeMode.Loose;
        _page.Services.AddSingleton<Browser>();
    }

    [Fact]
    public void A_form_that_is_filled_in_answers_in_lines()
    {
        var form = Show("contact");
        form.Find("#aid-contact-drop").Change("180");
        form.Find("#aid-load-current").Change("6");
        Ask(form);

        form.WaitForAssertion(() => Assert.Contains("30 mΩ", form.Find(".answer dl").TextContent, StringComparison.Ordinal));
        Assert.Contains("More than a new contact", form.Find(".answer b").TextContent, StringComparison.Ordinal);
        Assert.Contains(AppTexts.Say("bench.caution", ""), form.Find(".answer .warn").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_is_told_as_text_and_goes_when_it_is_mended()
    {
        var form = Show("contact");
        form.Find("#aid-contact-drop").Change("some");
        Ask(form);
        form.WaitForAssertion(() => Assert.Equal(2, form.FindAll(".answer .warn").Count));
        form.Find("#aid-contact-drop").Change("180 mV");
        form.Find("#aid-load-current").Change("6");
        Ask(form);

        form.WaitForAssertion(() => Assert.NotNull(form.Find(".answer dl")));
    }

    [Fact]
    public void Every_field_has_a_label_and_every_aid_a_form() => Assert.All(BenchAids.All, aid =>
    {
        var form = Show(aid.Name);
        Assert.All(form.FindAll("input, select"), field => Assert.NotNull(field.Closest("label")));
        Assert.Equal(aid.Inputs.Length, form.FindAll("input, select").Count);
    });

    [Fact]
    public async Task Measurements_are_said_one_by_one_the_next_stands_ready_and_one_can_be_taken_out()
    {
        var form = Show("relay");
        foreach (var reading in (string[])["ohms 1 2 = OL", "ohms 1 3 = 85"])
        {
            form.Find("#aid-reading").Change(reading);
            Ask(form);
            form.WaitForAssertion(() => Assert.Contains(reading, form.Find(".said").TextContent, StringComparison.Ordinal));
            form.WaitForAssertion(() => Assert.EndsWith(" = ", form.Find("#aid-reading").GetAttribute("value"), StringComparison.Ordinal));
        }

        // What stands ready and was not measured is not counted.
        Ask(form);
        form.WaitForAssertion(() => Assert.False(form.Find("button[type=submit]").HasAttribute("disabled")));
        Assert.Equal(2, form.FindAll(".said li").Count);
        // Found and clicked in one go: the answer to what was asked may still be drawn.
        await form.InvokeAsync(() => form.FindAll(".said button")[0].Click());
        form.WaitForAssertion(() => Assert.Equal("ohms 1 3 = 85", Assert.Single(form.FindAll(".said li span")).TextContent));
    }

    [Fact]
    public void What_the_job_knows_is_put_in_once_and_a_cleared_field_stays_clear()
    {
        var known = new Dictionary<string, double> { ["rated-amps"] = 5.5 };
        var form = _page.Render<AidForm>(p => p.Add(f => f.Aid, BenchAids.Find("averages")!));
        string? Rated() => form.Find("#aid-rated-amps").GetAttribute("value");
        form.Render(p => p.Add(f => f.Known, known));
        Assert.Equal(5.5.ToString(AppTexts.Formats), Rated());

        form.Find("#aid-rated-amps").Change("");
        form.Render(p => p.Add(f => f.Known, known));
        Assert.Equal("", Rated());
        form.Render(p => p.Add(f => f.Known, new Dictionary<string, double> { ["rated-amps"] = 6.5 }));
        Assert.Equal(6.5.ToString(AppTexts.Formats), Rated());
    }

    [Theory]
    [InlineData("5.5", "bench-motor.rated-by-sheet")]
    [InlineData("7", "bench-motor.rated-differs")]
    [InlineData("", null)]
    public void An_answer_by_rated_amps_says_what_the_jobs_sheet_has(string rated, string? code)
    {
        AidAnswered? answered = null;
        var form = _page.Render<AidForm>(p => p
            .Add(f => f.Aid, BenchAids.Find("averages")!).Add(f => f.Rated, new SheetRating("M1", 5.5)).Add(f => f.OnAnswered, told => answered = told));
        form.Find("#aid-mean-amps").Change("14");
        form.Find("#aid-peak-amps").Change(14.2.ToString(AppTexts.Formats));
        form.Find("#aid-rated-amps").Change(rated);
        Ask(form);

        form.WaitForAssertion(() => Assert.NotNull(answered));
        Assert.Equal(code, answered!.Answer.Notes.Select(n => n.Code).FirstOrDefault(c => c.StartsWith("bench-motor.rated", StringComparison.Ordinal)));
    }

    public ValueTask DisposeAsync() => _page.DisposeAsync();

    private IRenderedComponent<AidForm> Show(string aid) => _page.Render<AidForm>(p => p.Add(f => f.Aid, BenchAids.Find(aid)!));

    private static void Ask(IRenderedComponent<AidForm> form) => form.Find("form").Submit();
}
