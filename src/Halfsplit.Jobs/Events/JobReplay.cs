using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Events;

/// <summary>Turns events into the state of a job. A pure function: the same events give the same state.</summary>
public static class JobReplay
{
    public static JobState Replay(JobDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Replay(document.Events);
    }

    /// <param name="events">In any order; sorted here by id.</param>
    public static JobState Replay(ImmutableArray<StoredEvent> events)
    {
        var sorted = JobEvents.Normalise([.. events]);
        var problems = ImmutableArray.CreateBuilder<Message>();
        var withdrawn = FindWithdrawn(sorted, problems);
        var inForce = ImmutableArray.CreateBuilder<JobEvent>();
        var unknown = ImmutableArray.CreateBuilder<UnknownEvent>();
        JobOpened? opened = null;
        foreach (var stored in sorted)
        {
            switch (stored.Event)
            {
                case UnknownEvent odd:
                    unknown.Add(odd);
                    if (odd.Problem is { } problem) problems.Add(problem);
                    break;
                case ReadingWithdrawn:
                    break;
                case JobOpened again when opened is not null:
                    // Two jobs in one: the first counts, and the person is told.
                    problems.Add(new Message("job.opened-twice", again.Id.ToString()));
                    break;
                case JobOpened first:
                    opened = first;
                    inForce.Add(first);
                    break;
                default:
                    if (!withdrawn.Contains(stored.Id)) inForce.Add(stored.Event);
                    break;
            }
        }

        if (opened is null) problems.Add(new Message("job.not-opened"));
        problems.AddRange(JobEvents.Conflicts(sorted));
        return new JobState
        {
            Opened = opened,
            InForce = inForce.DrainToImmutable(),
            Withdrawn = withdrawn,
            Unknown = unknown.DrainToImmutable(),
            Problems = problems.DrainToImmutable(),
        };
    }

    /// <summary>
    /// A withdrawal takes back only what sorts before it, so going backwards settles each one before what it aims
    /// at: a withdrawn withdrawal takes nothing back. How a job began can't be taken back.
    /// </summary>
    private static ImmutableHashSet<EventId> FindWithdrawn(
        ImmutableArray<StoredEvent> sorted, ImmutableArray<Message>.Builder problems)
    {
        var present = sorted.Select(stored => stored.Id).ToHashSet();
        var openings = sorted.Where(stored => stored.Event is JobOpened).Select(stored => stored.Id).ToHashSet();
        var withdrawn = ImmutableHashSet.CreateBuilder<EventId>();
        for (var at = sorted.Length - 1; at >= 0; at--)
        {
            if (sorted[at].Event is not ReadingWithdrawn withdrawal || withdrawn.Contains(withdrawal.Id)) continue;
            var target = withdrawal.Withdraws;
            if (target < withdrawal.Id && present.Contains(target) && !openings.Contains(target)) withdrawn.Add(target);
            else problems.Add(new Message("job.withdraws-nothing", withdrawal.Id.ToString(), target.ToString()));
        }

        return withdrawn.ToImmutable();
    }
}
