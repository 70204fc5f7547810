using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Events;

/// <summary>Sets of events.</summary>
public static class JobEvents
{
    /// <summary>
    /// The union of two sets of events, sorted by id. Merging is commutative, associative and idempotent. Two events
    /// with one id and the same content are one; with different content both are kept, see <see cref="Conflicts"/>.
    /// </summary>
    public static ImmutableArray<StoredEvent> Merge(
        ImmutableArray<StoredEvent> first, ImmutableArray<StoredEvent> second) => Normalise([.. first, .. second]);

    /// <summary>Sorts by id and drops what is there twice.</summary>
    internal static ImmutableArray<StoredEvent> Normalise(StoredEvent[] events)
    {
        Array.Sort(events, Compare);
        var merged = ImmutableArray.CreateBuilder<StoredEvent>(events.Length);
        HashSet<string>? contents = null;
        foreach (var candidate in events)
        {
            if (merged.Count == 0 || merged[^1].Id != candidate.Id)
            {
                contents = null;
            }
            else if (merged[^1].Line == candidate.Line)
            {
                continue;
            }
            else
            {
                // Of equal contents the line that sorts first stays, whichever side it came from.
                contents ??= [merged[^1].Content()];
                if (!contents.Add(candidate.Content())) continue;
            }

            merged.Add(candidate);
        }

        return merged.DrainToImmutable();
    }

    /// <summary>A message for each id that stands for different contents: a sign of a damaged or altered copy.</summary>
    public static ImmutableArray<Message> Conflicts(ImmutableArray<StoredEvent> events)
    {
        var conflicts = ImmutableArray.CreateBuilder<Message>();
        foreach (var group in events.GroupBy(stored => stored.Id))
        {
            var different = group.Select(stored => stored.Content()).Distinct().Count();
            if (different > 1) conflicts.Add(new Message("job.event-conflict", group.Key.ToString(), different));
        }

        return conflicts.DrainToImmutable();
    }

    private static int Compare(StoredEvent left, StoredEvent right)
    {
        var byId = left.Id.CompareTo(right.Id);
        return byId != 0 ? byId : string.CompareOrdinal(left.Line, right.Line);
    }
}
