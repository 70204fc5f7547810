using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>Odds as people read them; never certainty.</summary>
internal static class OddsWords
{
    public static string Of(double odds) => AppTexts.Catalog.Say(OddsMessage.Of(odds));
}
