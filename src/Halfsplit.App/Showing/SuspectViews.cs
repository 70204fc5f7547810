using Halfsplit.App.Views;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>The suspects, likeliest first.</summary>
internal static class SuspectViews
{
    private const double WorthALine = 0.005;

    public static string Name(JobSession session, SuspectOdds suspect) =>
        AppTexts.Catalog.Say(SuspectName.WithDegree(session.Circuit, suspect));

    /// <summary>"G2 resistive (Ground behind the rear seat), about 2 Ω: 31 %".</summary>
    public static string Line(JobSession session, SuspectOdds suspect) =>
        AppTexts.Say("app.suspect.line", Name(session, suspect), OddsWords.Of(suspect.Odds));

    /// <summary>The likeliest ones and what the rest adds up to.</summary>
    /// <param name="before">Odds by suspect before the last answer; null where nothing came before.</param>
    public static (SuspectView[] Shown, string? Others) Of(
        JobSession session, int most, IReadOnlyDictionary<string, double>? before)
    {
        var all = session.Investigation.Suspects;
        var count = Math.Max(1, all.Take(most).Count(s => s.Odds >= WorthALine));
        var others = all.Skip(count).ToList();
        return (
            [.. all.Take(count).Select(s => View(session, s, before))],
            others.Count == 0 ? null : AppTexts.Say("app.suspects.others", others.Count, OddsWords.Of(others.Sum(s => s.Odds))));
    }

    public static SuspectView View(JobSession session, SuspectOdds suspect, IReadOnlyDictionary<string, double>? before = null)
    {
        var now = OddsWords.Of(suspect.Odds);
        var was = before is null ? now : OddsWords.Of(before.GetValueOrDefault(suspect.Suspect.Id));
        return new SuspectView(suspect.Suspect.Id, Name(session, suspect), suspect.Odds, now, was == now ? null : was);
    }
}
