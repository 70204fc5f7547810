using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

public sealed partial class JobSession
{
    /// <summary>What was noticed and counts, in the order in which it was said.</summary>
    public IReadOnlyList<(string Id, Noticed What)> Noticed =>
        [.. Investigation.NoticedThings.Where(n => !n.What.Kind.IsFromBench)];

    /// <summary>Takes something that was noticed, before or after any reading.</summary>
    public SessionOutcome Notice(Noticed what)
    {
        ArgumentNullException.ThrowIfNull(what);
        if (Closed() is { } closed)
        {
            return closed;
        }

        if (Noticed.Any(n => n.What == what))
        {
            return new SessionOutcome.Misplaced(new Message("noticed.already", what.ToString()));
        }

        if (Contradicted(what) is { } other)
        {
            return new SessionOutcome.Misplaced(new Message("noticed.contradicts", what.ToString(), other.ToString()));
        }

        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new ThingNoticed(id, at, what.Kind.Name) { About = what.About });
    }

    /// <summary>Takes back something that was noticed.</summary>
    public SessionOutcome WithdrawNoticed(Noticed what, string? reason = null)
    {
        ArgumentNullException.ThrowIfNull(what);
        var said = Noticed.FirstOrDefault(n => n.What == what);
        if (said.What is null || !EventId.TryParse(said.Id, out var target))
        {
            return new SessionOutcome.Misplaced(new Message("noticed.not-said", what.ToString()));
        }

        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new ReadingWithdrawn(id, at, target) { Reason = reason });
    }

    /// <summary>What was said of the same thing and can't be so together with this.</summary>
    private Noticed? Contradicted(Noticed what) => FirstContradiction([.. Noticed.Select(n => n.What), what]);

    /// <summary>The first of these that a later one contradicts: one of the same group about the same thing, neither including the other.</summary>
    public static Noticed? FirstContradiction(IReadOnlyList<Noticed> things)
    {
        ArgumentNullException.ThrowIfNull(things);
        for (var i = 0; i < things.Count; i++)
        {
            for (var j = i + 1; j < things.Count; j++)
            {
                var (one, other) = (things[i], things[j]);
                if (one != other && one.Kind.Group.Length > 0 && one.Kind.Group == other.Kind.Group
                    && (one.About is null || other.About is null || one.About == other.About)
                    && one.Kind.Includes != other.Kind.Name && other.Kind.Includes != one.Kind.Name)
                {
                    return one;
                }
            }
        }

        return null;
    }

    private void TakeNoticed(ThingNoticed noticed)
    {
        if (NoticedChoice.Find(Circuit, Investigation.Complaint, noticed.Name, noticed.About) is { } what)
        {
            Investigation.Notice(noticed.Id.ToString(), what);
        }
        else
        {
            _problems.Add(new Message("session.unknown-noticed", noticed.About is null ? noticed.Name : $"{noticed.Name}:{noticed.About}"));
        }
    }
}
