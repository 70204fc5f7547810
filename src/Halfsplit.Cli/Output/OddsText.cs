using Halfsplit.Diagnosis;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>Odds as people read them; never certainty.</summary>
public static class OddsText
{
    /// <summary>"31 %"; "over 99 %" and "under 1 %" at the ends.</summary>
    public static string Of(double odds) => CliTexts.Catalog.Say(OddsMessage.Of(odds));

    /// <summary>A bar of this many columns, filled to the odds.</summary>
    public static string Bar(double odds, int columns)
    {
        // A suspect that lives has a mark, and none fills the bar: nothing is certain.
        var filled = Math.Clamp((int)Math.Round(odds * columns), odds > 0.005 ? 1 : 0, columns - (odds < 1 ? 1 : 0));
        return new string('█', filled) + new string('·', columns - filled);
    }
}
