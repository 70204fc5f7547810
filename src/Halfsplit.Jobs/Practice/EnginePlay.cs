using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Jobs.Practice;

/// <summary>What a play of a practice car took.</summary>
/// <param name="Checks">Readings and looks, proofs left out.</param>
/// <param name="Repairs">Ids of the repairs done, in order.</param>
/// <param name="Minutes">All of it by the table of times.</param>
/// <param name="Money">Middle prices of all that was bought.</param>
/// <param name="IsProven">The load works again.</param>
public sealed record PlayScore(int Checks, IReadOnlyList<string> Repairs, double Minutes, double Money, bool IsProven)
{
    public static PlayScore Of(JobSession session, bool isProven)
    {
        ArgumentNullException.ThrowIfNull(session);
        var repairs = session.Entries.Where(e => e.Event is RepairDone && e.Check is not null).ToList();
        return new PlayScore(
            session.Entries.Count(e => e.Event is ReadingTaken),
            [.. repairs.Select(e => e.Check!.RepairId!)],
            Math.Round(session.MinutesSpent, 1),
            Math.Round(repairs.Sum(e => session.RepairOf(e.Check!)?.Price.Middle ?? 0), 0),
            isProven);
    }
}

/// <summary>The engine plays a practice car by its own advice.</summary>
public static class EnginePlay
{
    private const int MostSteps = 80;

    public static PlayScore Run(JobDocument opened, PracticeCar car)
    {
        ArgumentNullException.ThrowIfNull(car);
        var session = JobSession.Open(opened, NothingKept.Instance).Session
            ?? throw new ArgumentException("The job can't be opened.", nameof(opened));
        for (var i = 0; i < MostSteps && !session.IsDone && session.Next.Check is { } check; i++)
        {
            var answer = car.Answer(check);
            if (check.Kind == CheckKind.Repair && session.RepairOf(check) is { } repair)
            {
                car.Repair(repair);
            }

            if (answer is ReadingParse.Word { Answer: var word } && word == AnswerWord.NotSure)
            {
                session.Skip(check, null, SkipReason.NotSure);
            }
            else
            {
                session.Record(AsTyped(answer), check, confirmed: true);
            }
        }

        return PlayScore.Of(session, session.Next.IsProven);
    }

    /// <summary>The answer as a person would type it.</summary>
    public static string AsTyped(ReadingValue value) => value switch
    {
        ReadingParse.Word word => word.Answer.Text,
        ReadingParse.OverLimit => "OL",
        _ => value.ToString()!,
    };
}
