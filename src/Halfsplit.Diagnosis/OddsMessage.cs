using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis;

/// <summary>Odds as people read them; never certainty.</summary>
public static class OddsMessage
{
    /// <summary>"31 %"; "over 99 %" and "under 1 %" at the ends.</summary>
    public static Message Of(double odds)
    {
        var percent = Math.Round(100 * odds);
        return percent > 99 || odds > 0.99 ? new Message("odds.over")
            : percent < 1 || odds < 0.01 ? new Message("odds.under")
            : new Message("odds.percent", percent);
    }
}
