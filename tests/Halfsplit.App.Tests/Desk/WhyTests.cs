using Halfsplit.App.Desk;
using Halfsplit.App.Link;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.App.Tests.Desk;

/// <summary>What the page says of why a check comes first.</summary>
public sealed class WhyTests
{
    private readonly EngineDesk _desk = new(new EventStamps(new EventIdSource(TimeProvider.System), TimeProvider.System));

    [Fact]
    public void A_check_that_comes_first_though_another_is_cheaper_says_why()
    {
        _desk.Answer(new DeskRequest("begin") { Wish = new JobWish("headlamps", "left headlamp dark") });
        Record("dead");
        Record("12.6 V");

        Assert.EndsWith(AppTexts.Say("reason.costs-alike"), _desk.Answer(new DeskRequest("next")).Step!.Why!.RunnerUp, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_a_rule_decides_too_it_says_what_buying_now_costs_and_what_the_risk_weighs()
    {
        _desk.Answer(new DeskRequest("begin") { Wish = new JobWish("headlamps", "left headlamp dark") });
        Record("dead");

        Assert.Null(_desk.Answer(new DeskRequest("sight")).Step!.Money);
        var why = _desk.Answer(new DeskRequest("why")).Why!;

        Assert.NotNull(why.Money!.BuyNow);
        Assert.Equal(AppTexts.Say("app.why.risk", "0.6", "hot parts, moving parts"), why.Risk);
    }

    private void Record(string typed) => Assert.Null(_desk.Answer(
        new DeskRequest("record") { Typed = typed, Check = _desk.Answer(new DeskRequest("next")).Step!.Check, Confirmed = true }).Problem);
}
