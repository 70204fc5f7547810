using Halfsplit.Diagnosis.Learning;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

/// <summary>What finished jobs taught, as the engine takes it and as the job file keeps it.</summary>
public static class HistoryOfJob
{
    /// <summary>As the job file keeps it; null where there is nothing to keep.</summary>
    public static HistoryUsed? ToKeep(FailureHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return history.Jobs == 0 ? null : new HistoryUsed(
            history.Jobs, history.CircuitJobs, history.KindStrength, history.CircuitStrength)
        {
            Kinds = [.. history.Kinds.Select(ToKeep)],
            Suspects = [.. history.Suspects.Select(ToKeep)],
        };
    }

    /// <summary>As the engine takes it.</summary>
    public static FailureHistory ToUse(HistoryUsed? kept) => kept is null
        ? FailureHistory.None
        : new FailureHistory(
            kept.Jobs, kept.CircuitJobs, [.. kept.Kinds.Select(ToUse)], [.. kept.Suspects.Select(ToUse)],
            kept.KindStrength, kept.CircuitStrength);

    private static CountUsed ToKeep(LearnedCount count) => new(count.Name, count.Jobs, count.Expected);

    private static LearnedCount ToUse(CountUsed count) => new(count.Name, count.Jobs, count.Expected);
}
