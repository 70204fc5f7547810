using Halfsplit.Diagnosis;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>Odds as people read them, on one line; never certainty.</summary>
internal static class OddsWords
{
    public static string Of(double odds) => AppTexts.Catalog.Say(OddsMessage.Of(odds)).Replace(" %", "\u00a0%", StringComparison.Ordinal);
}
