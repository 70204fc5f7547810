using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;

namespace Halfsplit.Diagnosis;

/// <summary>What a suspect would show at a check.</summary>
/// <param name="Suspect">The suspect; null for the healthy car.</param>
/// <param name="Mean">The number, where one is shown; null where only words answer or nothing definite can be said.</param>
/// <param name="Spread">One standard deviation of the number.</param>
/// <param name="Word">The likeliest answer in words, or "OL"; null where only a number answers.</param>
public sealed record ExpectedReading(SuspectOdds? Suspect, double? Mean, double? Spread, string? Word)
{
    internal static ExpectedReading Of(Check check, SuspectOdds? suspect, Outlook outlook)
    {
        if (outlook.IsBroad)
        {
            return new ExpectedReading(suspect, null, null, null);
        }

        string? word = null;
        if (!outlook.Groups.IsDefaultOrEmpty && outlook.Groups.Length == check.Answers.Length)
        {
            var best = 0;
            for (var i = 1; i < outlook.Groups.Length; i++)
            {
                best = outlook.Groups[i] > outlook.Groups[best] ? i : best;
            }

            word = check.Answers[best][0].Id;
        }

        if (outlook.OverLimit > 0.5)
        {
            return new ExpectedReading(suspect, null, null, "OL");
        }

        return check.TakesNumber
            ? new ExpectedReading(suspect, outlook.Mean, outlook.Spread, word)
            : new ExpectedReading(suspect, null, null, word);
    }
}
