using System.Globalization;
using Halfsplit.App.Desk;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.App.Tests.Desk;

/// <summary>Thinking ahead: what is foreseen is what comes, and leaves no trace.</summary>
public sealed class AheadTests
{
    [Fact]
    public void The_step_foreseen_for_a_word_or_for_none_is_the_step_that_comes()
    {
        var (thinker, desk) = (New(), New());
        var begun = desk.Answer(new DeskRequest("begin") { Wish = new JobWish("headlamps", "left headlamp dark") });
        thinker.Answer(new DeskRequest("open") { Lines = [.. begun.Keep!.Lines.Select(l => l.Line)] });
        var step = desk.Answer(new DeskRequest("next")).Step!;

        var seen = 0;
        for (var index = 0; Ahead(thinker, step.Check!, index) is { } ahead; index++)
        {
            seen++;
            if (ahead.Word is not { } word)
            {
                continue;
            }

            var other = New();
            other.Answer(new DeskRequest("open") { Lines = [.. begun.Keep.Lines.Select(l => l.Line)] });
            other.Answer(word == "skip"
                ? new DeskRequest("skip") { Check = step.Check, Reason = "not-sure" }
                : new DeskRequest("record") { Check = step.Check, Typed = word.Replace('-', ' '), Confirmed = true });
            Assert.Equal(other.Answer(new DeskRequest("next")).Step!.Check, ahead.Step.Check);
        }

        Assert.True(seen >= 3, $"{seen} answers foreseen");
        Assert.Empty(thinker.Answer(new DeskRequest("job")).Job!.Entries);
        Assert.Null(thinker.Answer(new DeskRequest("job")).Keep);
    }

    private static AheadView? Ahead(EngineDesk desk, string check, int index) => desk.Answer(
        new DeskRequest("ahead") { Check = check, Text = index.ToString(CultureInfo.InvariantCulture) }).Ahead;

    private static EngineDesk New() => new(EventStamps.OfThisMachine);
}
