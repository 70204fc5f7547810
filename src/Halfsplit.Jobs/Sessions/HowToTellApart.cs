using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Explaining;

namespace Halfsplit.Jobs.Sessions;

/// <summary>At a finding: who else is alive, and what would tell them from the blamed one.</summary>
public static class HowToTellApart
{
    /// <summary>The suspects left open, as long as the finding still has to be acted upon.</summary>
    public static ImmutableArray<OpenSuspect> StillOpen(JobSession session)
    {
        ArgumentNullException.ThrowIfNull(session);
        return session.IsDone || session.Next is not { Finding: not null, IsProven: false } ? [] : session.Investigation.NotProven();
    }

    /// <summary>The check that would tell it from the blamed one, with what is lacking for it.</summary>
    public static Message Of(JobSession session, OpenSuspect suspect)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(suspect);
        if (suspect is not { PartedBy: { } check, Effort: { } effort })
        {
            return new Message("open-suspects.by-none");
        }

        var title = CheckTitle.Of(session.Circuit, check);
        return suspect.Lacks.Length == 0
            ? new Message("open-suspects.by-now", title, new Figure(effort.Minutes, "0.#"))
            : new Message("open-suspects.by-lacking", title, suspect.Lacks.AsEnumerable().Aggregate((all, next) => new Message("title.and", all, next)));
    }
}
