using System.Globalization;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Fuses;

/// <summary>A fuse as it is named: its rating and its kind.</summary>
/// <param name="Rating">Amps.</param>
public sealed record FuseSpec(double Rating, FuseType Type)
{
    private static readonly Dictionary<string, FuseType> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        [""] = FuseType.BladeStandard, ["standard"] = FuseType.BladeStandard, ["mini"] = FuseType.BladeMini, ["maxi"] = FuseType.BladeMaxi,
        ["link"] = FuseType.Link,
    };

    /// <summary>Reads <c>15A</c>, <c>15 A mini</c>, <c>40 maxi</c>; without a kind it is the standard blade.</summary>
    public static Outcome<FuseSpec> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (TypedQuantity.Number(text) is not var (rating, behind) || !Words.TryGetValue(WithoutAmps(behind), out var type))
        {
            return Outcome.Wrong<FuseSpec>(new Message("bench-limit.fuse", text));
        }

        if (FuseTable.IsStandard(type, rating))
        {
            return Outcome.Of(new FuseSpec(rating, type));
        }

        var sold = string.Join(", ", FuseTable.Ratings(type).Select(r => r.ToString("0.#", CultureInfo.InvariantCulture)));
        return Outcome.Wrong<FuseSpec>(new Message("bench-limit.fuse-rating", text, sold));
    }

    /// <summary>Cold: the typical value of its series, and how far a single fuse lies from it.</summary>
    public Measure ColdOhms
    {
        get
        {
            var (cold, spread) = (FuseTable.ColdOhms(Type, Rating), BenchDefaults.Table["fuse.ohms-spread"]);
            return new Measure(cold, Unit.Ohm, new ValueRange(cold * (1 - spread), cold * (1 + spread)));
        }
    }

    /// <summary>Amps at which it melts before anybody reads a meter: with more it is blown.</summary>
    public double MostAmps => Rating * BenchDefaults.Table.RangeOf("limit.fuse-times-rated").High;

    public Message Say() => new($"bench-fuse.kind-{Word}", new Figure(Rating, "0.#"));

    private string Word => Type switch
    {
        FuseType.BladeMini => "mini",
        FuseType.BladeMaxi => "maxi",
        FuseType.Link => "link",
        _ => "standard",
    };

    /// <summary>"A mini" and "mini" are the same.</summary>
    private static string WithoutAmps(string behind) =>
        (behind.StartsWith("A", StringComparison.OrdinalIgnoreCase) ? behind[1..] : behind).Trim();
}
