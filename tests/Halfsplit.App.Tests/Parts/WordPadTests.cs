using Bunit;
using Halfsplit.App.Parts;
using Halfsplit.App.Views;
using Xunit;

namespace Halfsplit.App.Tests.Parts;

public sealed class WordPadTests : IDisposable
{
    private readonly BunitContext _page = new();

    [Fact]
    public void Each_word_is_a_button_that_answers_with_itself_and_tells_whom_it_would_blame()
    {
        var answers = new List<string>();
        var pad = _page.Render<WordPad>(p => p
            .Add(w => w.Pad, new AnswerPadView([], false, [new WordView("clicks", "clicks"), new WordView("silent", "silent")], true))
            .Add(w => w.Bands, [new AnswerBandView("silent", 0.6, "60 %", "K2 coil open", false)])
            .Add(w => w.OnAnswer, answers.Add));

        Assert.Contains("60 %: K2 coil open", pad.FindAll("button")[1].TextContent, StringComparison.Ordinal);
        pad.FindAll("button")[1].Click();

        Assert.Equal(["silent"], answers);
    }

    public void Dispose() => _page.Dispose();
}
