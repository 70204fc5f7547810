namespace Halfsplit.App.Showing;

/// <summary>Odds as people read them; never certainty.</summary>
internal static class OddsWords
{
    private const double Nearly = 0.99;

    public static string Of(double odds)
    {
        var percent = (int)Math.Round(odds * 100);
        return odds > Nearly ? AppTexts.Say("app.odds.over") : odds < 1 - Nearly ? AppTexts.Say("app.odds.under") : AppTexts.Say("app.odds.percent", percent);
    }
}
