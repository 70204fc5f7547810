using Bunit;
using Halfsplit.App.Parts;
using Halfsplit.App.Views;
using Microsoft.AspNetCore.Components.Web;
using Xunit;

namespace Halfsplit.App.Tests.Parts;

public sealed class KeypadTests : IDisposable
{
    private readonly BunitContext _page = new();
    private readonly List<string> _answers = [];
    private string _typed = "", _unit = "V";

    [Fact]
    public void A_number_is_put_together_by_thumb_and_saved_with_its_unit()
    {
        var pad = Show();
        foreach (var key in "12.4")
        {
            Press(pad, key.ToString());
        }

        Press(pad, AppTexts.Say("app.pad.save"));

        Assert.Equal(["12.4 V"], _answers);
    }

    [Fact]
    public void Minus_goes_on_and_off_and_the_answer_has_a_plain_one()
    {
        var pad = Show();
        Press(pad, "3");
        Press(pad, "−");
        Assert.Equal("−3", _typed);
        Press(pad, AppTexts.Say("app.pad.save"));
        Press(pad, "−");

        Assert.Equal(["-3 V"], _answers);
        Assert.Equal("3", _typed);
    }

    [Fact]
    public void One_point_at_most_and_one_in_front_gets_its_nought()
    {
        var pad = Show();
        Press(pad, ".");
        Press(pad, "5");
        Press(pad, ".");

        Assert.Equal("0.5", _typed);
    }

    [Fact]
    public void Nothing_is_saved_without_a_digit()
    {
        var pad = Show();
        Press(pad, "−");

        Assert.True(pad.FindAll("button").Single(b => b.TextContent.Trim() == AppTexts.Say("app.pad.save")).HasAttribute("disabled"));
        pad.Find(".display").KeyDown(new KeyboardEventArgs { Key = "Enter" });
        Assert.Empty(_answers);
    }

    [Fact]
    public void Keys_do_what_the_thumb_does()
    {
        var pad = Show();
        foreach (var key in (string[])["4", "9", "Backspace", "8", "m", "Enter"])
        {
            pad.Find(".display").KeyDown(new KeyboardEventArgs { Key = key });
        }

        Assert.Equal(["48 mV"], _answers);
    }

    [Fact]
    public void A_comma_is_a_point()
    {
        var pad = Show();
        foreach (var key in (string[])["1", ",", "5"])
        {
            pad.Find(".display").KeyDown(new KeyboardEventArgs { Key = key });
        }

        Assert.Equal("1.5", _typed);
    }

    [Fact]
    public void While_a_reading_is_saved_none_is_taken()
    {
        var pad = Show(isBusy: true, typed: "12");
        pad.Find(".display").KeyDown(new KeyboardEventArgs { Key = "Enter" });

        Assert.Empty(_answers);
        Assert.All(pad.FindAll(".save, .words button"), b => Assert.True(b.HasAttribute("disabled")));
    }

    [Fact]
    public void A_reading_that_jumps_keeps_its_number()
    {
        var pad = Show(typed: "11");
        Press(pad, "Jumping");

        Assert.Equal(["11 V jumps"], _answers);
    }

    public void Dispose() => _page.Dispose();

    private IRenderedComponent<Keypad> Show(bool isBusy = false, string typed = "")
    {
        _typed = typed;
        IRenderedComponent<Keypad>? shown = null;
        shown = _page.Render<Keypad>(p => Fill(p));
        return shown;

        void Fill(ComponentParameterCollectionBuilder<Keypad> parameters) => parameters
            .Add(k => k.Pad, new AnswerPadView(["V", "mV"], false, [new WordView("jumps", "jumping")], true))
            .Add(k => k.Typed, _typed).Add(k => k.Unit, _unit).Add(k => k.IsBusy, isBusy)
            .Add(k => k.OnAnswer, _answers.Add)
            .Add(k => k.OnTyped, now =>
            {
                (_typed, _unit) = now;
                shown!.Render(Fill);
            });
    }

    private static void Press(IRenderedComponent<Keypad> pad, string text) =>
        pad.FindAll("button").First(b => b.TextContent.Trim() == text).Click();
}
