using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Answers;

/// <summary>Says odds: never 0 and never 100 %.</summary>
public static class Odds
{
    private const double Least = 0.01, Most = 0.99;

    /// <param name="odds">From 0 to 1.</param>
    public static Message Say(double odds) => odds switch
    {
        < Least => new Message("bench-odds.under-one"),
        > Most => new Message("bench-odds.over-ninety-nine"),
        _ => new Message("bench-unit.percent", new Figure(100 * odds, "0")),
    };
}
