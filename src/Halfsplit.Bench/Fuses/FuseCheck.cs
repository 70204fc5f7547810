using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Fuses;

/// <summary>How a fuse's bridge looks through its body.</summary>
public enum FuseLook { Whole, Blown, Unclear }

/// <summary>What was seen and measured of a fuse; any of it may be missing, not all.</summary>
/// <param name="Ohms">Of the pulled fuse; positive infinity for OL.</param>
/// <param name="FirstTabVolts">In place, under its load, against the battery's negative post.</param>
public sealed record FuseSigns(FuseLook? Look = null, double? Ohms = null, double? FirstTabVolts = null, double? SecondTabVolts = null);

/// <summary>Whether a fuse is blown.</summary>
/// <param name="BlownOdds">From 0 to 1.</param>
/// <param name="Signs">The names of what was seen, as in <c>data/bench-fuse-signs.csv</c>.</param>
public sealed record FuseVerdict(FuseSigns Seen, double BlownOdds, ImmutableArray<string> Signs)
{
    /// <summary>Clear signs that speak for a whole fuse, where others speak as clearly for a blown one; else empty.</summary>
    public ImmutableArray<string> SpeakWhole { get; init; } = [];

    /// <summary>The clear signs against them; else empty.</summary>
    public ImmutableArray<string> SpeakBlown { get; init; } = [];

    /// <summary>The signs can hardly all be right.</summary>
    public bool Contradicts => SpeakWhole.Length > 0;
}

/// <summary>Blown or whole, from look, ohms and the volts on both test tabs.</summary>
public static class FuseCheck
{
    private static readonly double LowOhms = BenchDefaults.Table["fuse.low-ohms"], OpenOhms = BenchDefaults.Table["fuse.open-ohms"],
        DeadVolts = BenchDefaults.Table["fuse.dead-volts"];

    /// <summary>Two tabs of a whole fuse differ by less.</summary>
    private static readonly double SameVolts = BenchDefaults.Table["fuse.same-volts"];

    /// <summary>Odds from which on a fuse is called blown, or whole.</summary>
    private static readonly double Sure = BenchDefaults.Table["odds.sure"];

    private sealed record Sign(double IfWhole, double IfBlown);

    private static readonly ImmutableDictionary<string, Sign> Table = BenchData.Read("bench-fuse-signs.csv")
        .ToImmutableDictionary(r => r.Text("sign"), r => new Sign(r.Number("if_whole"), r.Number("if_blown")), StringComparer.Ordinal);

    public static Outcome<FuseVerdict> Of(FuseSigns signs)
    {
        ArgumentNullException.ThrowIfNull(signs);
        var limits = new InputLimits()
            .Unless(signs.Look is not null || signs.Ohms is not null || signs.FirstTabVolts is not null || signs.SecondTabVolts is not null, "bench-limit.nothing-seen")
            .Unless((signs.FirstTabVolts is null) == (signs.SecondTabVolts is null), "bench-limit.both-tabs")
            .Within("ohms", signs.Ohms is { } ohms && double.IsPositiveInfinity(ohms) ? null : signs.Ohms, "fuse-ohms", Unit.Ohm)
            .Within("tab-volts", signs.FirstTabVolts, "tab-volts", Unit.Volt)
            .Within("tab-volts", signs.SecondTabVolts, "tab-volts", Unit.Volt);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<FuseVerdict>(limits.Problems);
        }

        var names = Names(signs).ToImmutableArray();
        var (whole, blown) = (1 - BenchDefaults.Table["fuse.blown-before"], BenchDefaults.Table["fuse.blown-before"]);
        foreach (var name in names)
        {
            (whole, blown) = (whole * Table[name].IfWhole, blown * Table[name].IfBlown);
        }

        var odds = blown / (whole + blown);
        var clear = BenchDefaults.Table["fuse.clear-sign"];
        ImmutableArray<string> speakWhole = [.. names.Where(n => Table[n].IfWhole > clear * Table[n].IfBlown)];
        ImmutableArray<string> speakBlown = [.. names.Where(n => Table[n].IfBlown > clear * Table[n].IfWhole)];
        var most = BenchDefaults.Table["fuse.contradicted-most"];
        return Outcome.Of(speakWhole.Length == 0 || speakBlown.Length == 0
            ? new FuseVerdict(signs, odds, names)
            : new FuseVerdict(signs, Math.Clamp(odds, 1 - most, most), names) { SpeakWhole = speakWhole, SpeakBlown = speakBlown });
    }

    public static Answer Answer(FuseVerdict verdict)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        var judged = ImmutableArray.CreateBuilder<Message>();
        var isBlown = verdict.BlownOdds > Sure;
        var isWhole = verdict.BlownOdds < 1 - Sure;
        judged.Add(
            isBlown ? new Message("bench-fuse.blown", OddsMessage.Of(verdict.BlownOdds))
            : isWhole ? new Message("bench-fuse.whole", OddsMessage.Of(1 - verdict.BlownOdds))
            : new Message("bench-fuse.open", OddsMessage.Of(verdict.BlownOdds)));
        if (verdict.Contradicts)
        {
            judged.Add(new Message("bench-fuse.contradicts", Named(verdict.SpeakWhole), Named(verdict.SpeakBlown)));
            // What was measured slips more easily than what is seen lasts: the ohms first, they need no load and no feed.
            judged.Add(new Message(verdict.Seen.Ohms is null ? "bench-fuse.again-tabs" : "bench-fuse.again-ohms"));
        }

        judged.AddRange(verdict.Signs.Select(s => new Message($"bench-fuse.{s}")));
        if (isBlown)
        {
            judged.Add(new Message("bench-fuse.has-a-cause"));
        }

        return new Answer(
            new Message("bench-fuse.title"), Cautions(verdict), [new("blown-odds", OddsMessage.Of(verdict.BlownOdds))],
            judged.ToImmutable(), [new Message("bench-fuse.source")])
        {
            Measured = Measured(verdict.Seen),
            Found = isBlown ? "fuse-blown" : isWhole ? "fuse-whole" : null,
        };
    }

    private static ImmutableArray<BenchValue> Measured(FuseSigns seen)
    {
        var values = ImmutableArray.CreateBuilder<BenchValue>();
        if (seen.Ohms is { } ohms)
        {
            values.Add(new(BenchQuantity.FuseOhms, ohms));
        }

        foreach (var volts in new[] { seen.FirstTabVolts, seen.SecondTabVolts }.OfType<double>())
        {
            values.Add(new(BenchQuantity.TabVolts, volts));
        }

        return values.ToImmutable();
    }

    /// <summary>Look, ohms or tabs, in words, with "and" between.</summary>
    private static Message Named(ImmutableArray<string> signs) => signs.Select(SignOf).Aggregate((left, right) => new Message("bench-fuse-sign.and", left, right));

    private static Message SignOf(string sign) => new(sign switch
    {
        "looks-whole" or "looks-blown" or "looks-unclear" => "bench-fuse-sign.look",
        "ohms-low" or "ohms-between" or "ohms-none" => "bench-fuse-sign.ohms",
        _ => "bench-fuse-sign.tabs",
    });

    /// <summary>A fuse that is looked at or measured in ohms is pulled; volts are taken with the load on.</summary>
    private static ImmutableArray<Message> Cautions(FuseVerdict verdict) => verdict.Seen.FirstTabVolts is null
        ? [new Message("bench-caution.ohms-pulled")]
        : [new Message("bench-caution.ohms-pulled"), new Message("bench-caution.fuse-tabs"), new Message("bench-caution.live")];

    private static IEnumerable<string> Names(FuseSigns signs)
    {
        if (signs.Look is { } look)
        {
            yield return look switch
            {
                FuseLook.Whole => "looks-whole",
                FuseLook.Blown => "looks-blown",
                _ => "looks-unclear",
            };
        }

        if (signs.Ohms is { } ohms)
        {
            yield return ohms < LowOhms ? "ohms-low" : ohms < OpenOhms ? "ohms-between" : "ohms-none";
        }

        if (signs is { FirstTabVolts: { } first, SecondTabVolts: { } second })
        {
            var (low, high) = (Math.Min(first, second), Math.Max(first, second));
            yield return high < DeadVolts ? "tabs-dead"
                : low >= high - SameVolts ? "tabs-live"
                : low < DeadVolts ? "one-tab-live"
                : "tabs-differ";
        }
    }
}
