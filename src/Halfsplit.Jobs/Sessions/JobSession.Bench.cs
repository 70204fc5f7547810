using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Sessions;

public sealed partial class JobSession
{
    /// <summary>What was found on the bench and counts, in the order in which it was attached.</summary>
    public IReadOnlyList<(string Id, Noticed What)> BenchResults => [.. Investigation.NoticedThings.Where(n => n.What.Kind.IsFromBench)];

    /// <summary>Takes a result from the bench as evidence on the part it speaks of; once.</summary>
    /// <param name="aid">The aid that found it.</param>
    /// <param name="what">What was found, of which part.</param>
    /// <param name="typed">What the aid was told.</param>
    /// <param name="measured">What was measured of the part, to be held against the job's own readings; null where nothing compares.</param>
    /// <param name="confirmed">The person measured again and stands by it.</param>
    public SessionOutcome Attach(
        string aid, Noticed what, IEnumerable<string> typed, IReadOnlyList<BenchValue>? measured = null, bool confirmed = false)
    {
        ArgumentNullException.ThrowIfNull(what);
        measured ??= [];
        if (Closed() is { } closed)
        {
            return closed;
        }

        if (WhyNotAttached(what) is { } refusal)
        {
            return new SessionOutcome.Misplaced(refusal);
        }

        var misfit = new BenchFit(Investigation.Network).Misfit(Entries, what, measured);
        if (misfit is not null && !confirmed)
        {
            return new SessionOutcome.Doubted(misfit);
        }

        var (id, at) = _stamps.Next(Document.LastId);
        return Keep(new PartFound(id, at, aid, what.Kind.Name, what.About!)
        {
            Typed = [.. typed],
            Ohms = measured.Where(m => m.What == BenchQuantity.ContactOhms).Select(m => (double?)m.Value).FirstOrDefault(),
            Confirmed = misfit is not null,
        });
    }

    /// <summary>Takes a result from the bench back.</summary>
    public SessionOutcome WithdrawBench(Noticed what, string? reason = null)
    {
        ArgumentNullException.ThrowIfNull(what);
        // A merge may have brought it in twice.
        var targets = State.Found.Where(f => f.Found == what.Kind.Name && f.Part == what.About).ToList();
        if (targets.Count == 0)
        {
            return new SessionOutcome.Misplaced(new Message("found.not-attached", what.ToString()));
        }

        return WithdrawAll(targets, reason);
    }

    private Message? WhyNotAttached(Noticed what)
    {
        var results = BenchResults.Select(r => r.What).ToList();
        if (results.Contains(what))
        {
            return new Message("found.already", what.ToString());
        }

        if (FirstContradiction([.. results, what]) is { } other)
        {
            return new Message("found.contradicts", what.ToString(), other.ToString());
        }

        // After a repair nobody can say whether the old part or the new one lay on the bench.
        if (State.Repairs.Any(r => RepairOf(r) is { } repair && repair.Target == what.About))
        {
            return new Message("found.after-repair", what.About!);
        }

        return what.Kind.InsteadOf is { } subject
            && Entries.FirstOrDefault(e => e.Check is { } check && e.Value is { } value && !IsNotSure(value)
                && check.Subject == subject && check.Probe.About == what.About) is { } same
            ? new Message("found.measured-before", what.About!, same.Number)
            : null;
    }

    private Repair? RepairOf(RepairDone done) => StoredChecks.FindRepair(Investigation, done.Repair) is { } check ? RepairOf(check) : null;

    private void TakeFound(PartFound found)
    {
        if (PartFindings.Find(Circuit, Investigation.Complaint, found.Found, found.Part) is { } what)
        {
            what = what with { Ohms = found.Ohms };
            // A copy of the same result, come by a merge, says nothing more.
            if (!Investigation.NoticedThings.Any(n => n.What == what))
            {
                Investigation.Notice(found.Id.ToString(), what);
            }
        }
        else
        {
            _problems.Add(new Message("session.unknown-found", $"{found.Found}:{found.Part}"));
        }
    }
}
