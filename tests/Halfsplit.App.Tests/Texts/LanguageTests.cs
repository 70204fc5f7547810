using System.Text.RegularExpressions;
using Halfsplit.App.Desk;
using Halfsplit.App.Link;
using Halfsplit.App.Tests.Desk;
using Halfsplit.Circuits.Messages;
using Xunit;

namespace Halfsplit.App.Tests.Texts;

/// <summary>The language is the whole app's, so that these run beside no others.</summary>
[CollectionDefinition("language", DisableParallelization = true)]
public sealed class OneLanguageAtATime;

[Collection("language")]
public sealed partial class LanguageTests : IDisposable
{
    public void Dispose() => AppTexts.Language = Language.English;

    [Fact]
    public void Every_language_has_the_same_texts_with_the_same_gaps()
    {
        var (english, german) = (AppTexts.Source.All(Language.English), AppTexts.Source.All(Language.German));

        Assert.NotEmpty(english);
        Assert.Empty(english.Keys.Except(german.Keys));
        Assert.Empty(german.Keys.Except(english.Keys));
        Assert.All(english, text => Assert.Equal(Gaps(text.Value), Gaps(german[text.Key])));
    }

    [Fact]
    public async Task An_open_job_is_said_anew_when_another_language_is_chosen_and_loses_nothing()
    {
        var shelf = new MemoryShelf();
        var bench = new Workbench(new DeskEngine(shelf), shelf);
        await bench.BeginAsync(new JobWish("headlamps", "left headlamp dark"), _ => Task.CompletedTask);
        await bench.RecordAsync("dark");
        await bench.RecordAsync("12.4 V");
        await bench.ChooseAsync(null, new PointsWish("F21.2p", "BAT.neg", "volts", "dipped beam"));
        await bench.KeepDraftAsync(bench.Draft with { Check = bench.Step!.Check, Typed = "1.5 V" });
        var (check, lines) = (bench.Step.Check, await shelf.LinesAsync(bench.Job!.Id));
        Assert.Equal(["dark", "12.4 V"], bench.Job.Entries.Select(e => e.Value));

        AppTexts.Language = Language.German;
        await bench.SpeakAnewAsync();

        Assert.Equal(["dunkel", "12,4 V"], bench.Job.Entries.Select(e => e.Value));
        Assert.Equal("Diese ist selbst gewählt.", bench.Step.Reason);
        Assert.Equal("Volt DC", bench.Step.Leads!.Setting);
        Assert.All(bench.Step.Scale!.Ticks, tick => Assert.DoesNotContain('.', tick.Label));
        Assert.Equal(check, bench.Step.Check);
        Assert.Equal("1.5 V", bench.Draft.Typed);
        Assert.Equal(lines, await shelf.LinesAsync(bench.Job.Id));
    }

    [Fact]
    public async Task What_is_answered_in_german_is_kept_as_what_is_answered_in_english()
    {
        AppTexts.Language = Language.German;
        var shelf = new MemoryShelf();
        var bench = new Workbench(new DeskEngine(shelf), shelf);
        await bench.BeginAsync(new JobWish("headlamps", "left headlamp dark"), _ => Task.CompletedTask);
        var dark = bench.Step!.Pad.Words.Single(w => w.Text == "dunkel");

        await bench.RecordAsync(dark.Typed);

        Assert.Contains("\"dark\"", (await shelf.LinesAsync(bench.Job!.Id))[^1], StringComparison.Ordinal);
    }

    private static List<string> Gaps(string text) =>
        [.. Gap().Matches(text).Select(m => m.Groups[1].Value).Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"(?<!\{)\{(\d)(?::[^}]*)?\}")]
    private static partial Regex Gap();
}
