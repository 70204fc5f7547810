using Bunit;
using Halfsplit.App.Parts;
using Xunit;

namespace Halfsplit.App.Tests.Parts;

public sealed class TicksTests : IDisposable
{
    private readonly BunitContext _page = new();
    private readonly List<int> _ticked = [];

    [Fact]
    public void The_first_line_that_is_not_done_is_shown_and_ticked_by_a_tap()
    {
        var ticks = Show(1);

        Assert.Contains("Turn the key", ticks.Find(".tick").TextContent, StringComparison.Ordinal);
        Assert.Contains("2 of 3", ticks.Find(".tick").TextContent, StringComparison.Ordinal);
        ticks.Find(".tick").Click();
        Assert.Equal([2], _ticked);
    }

    [Fact]
    public void When_all_is_done_it_says_so() =>
        Assert.Contains(AppTexts.Say("app.ticks.all-done"), Show(3).Find(".tick").TextContent, StringComparison.Ordinal);

    [Fact]
    public void Without_a_line_there_is_nothing_to_change() =>
        Assert.Contains(AppTexts.Say("app.ticks.none"), Show(0, []).Find(".tick").TextContent, StringComparison.Ordinal);

    public void Dispose() => _page.Dispose();

    private IRenderedComponent<Ticks> Show(int done, string[]? steps = null) => _page.Render<Ticks>(p => p
        .Add(t => t.Steps, steps ?? ["Get to: box.", "Turn the key.", "Read."])
        .Add(t => t.Done, done)
        .Add(t => t.OnTicked, _ticked.Add));
}
