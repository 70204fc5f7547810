using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How often a proof is asked for before it is believed to fail, and how often of these with the leads at the same points.</summary>
    private const int MostProofs = 3, MostAtSamePoints = 2;

    /// <summary>Share of the nominal volts below which no load is seen to work; common practice, no published source.</summary>
    private const double DeadShare = 0.3;

    /// <summary>Probability from which an answer is usual for a healthy car.</summary>
    private const double UsualAnswer = 0.3;

    /// <summary>Share of the healthy volts that a load must have to count as proven; common practice, no published source.</summary>
    private const double HealthyShare = 0.92;

    /// <summary>The same where the parts of the car may differ widely.</summary>
    private const double LeastShare = 0.8;

    /// <summary>Share of the healthy amps that a proof may be off; common practice, no published source.</summary>
    private const double AmpsShare = 0.3;

    /// <summary>Volts by which a drop may exceed the healthy one; common practice, no published source.</summary>
    private const double DropVolts = 0.05;

    private Check RepairCheck(Repair repair) => Check.Create(
        CheckKind.Repair, CheckSubject.Repair, new Arrangement(CheckCatalog.RestCondition(Circuit)),
        new Probe(Instrument.Eye, null, null, repair.Target), repair.Id);

    private Repair RepairNamed(Check check) => _singles.Suspects
        .Where(s => !s.IsNone)
        .Select(s => RepairOf(s.Modes[0]))
        .First(r => r.Id == check.RepairId);

    /// <param name="renews">Fuses that have blown from it: they are renewed once it is mended.</param>
    private Effort RepairEffort(Check check, ImmutableArray<string> renews)
    {
        var repair = RepairNamed(check);
        var position = Assess().Position;
        var access = Effort.Of(Circuit, Options, position, check);
        var minutes = access.Minutes + repair.Minutes;
        List<Message> steps = [.. access.Steps[..^1], new Message($"repair.{repair.Action}", Describe.Target(Circuit, repair.Target))];
        foreach (var fuse in renews.Select(Circuit.Find).OfType<Fuse>())
        {
            position = position.After(Circuit, check);
            var renewal = RepairCatalog.For(Circuit, FaultCatalog.For(_forecaster.Simulator).First(m => m.Part == fuse.Id && m.Mode == FaultModes.Open), []);
            check = RepairCheck(renewal);
            access = Effort.Of(Circuit, Options, position, check);
            minutes += access.Minutes + renewal.Minutes;
            steps.AddRange([.. access.Steps[..^1], new Message("repair.renew-fuse", Describe.Part(Circuit, fuse.Id), fuse.RatingAmps)]);
        }

        return new Effort(Math.Round(minutes, 2), [.. steps]);
    }

    /// <summary>After a repair: what is still to prove, then to put back; the finished job; or null when there is nothing to prove or it failed.</summary>
    private NextStep? ProofStep(Assessment now)
    {
        if (now.Repairs.Length == 0)
        {
            return null;
        }

        var proven = 0;
        foreach (var goal in ProofsFor(now))
        {
            var outcome = OutcomeOf(now, goal);
            if (outcome is null && !now.SkippedChecks.Contains(goal.Ask.Id))
            {
                return Step(now, goal.Ask, goal.Reason, null, []);
            }

            if (outcome is not null && !Passes(outcome))
            {
                if (!IsAtTheWrongPin(now, goal))
                {
                    return null;
                }

                continue;
            }

            proven += outcome is not null && goal.IsEssential ? 1 : 0;
        }

        // A repair whose proofs were all skipped is not proven: what can't be done never proves.
        return proven == 0
            ? new NextStep(null, null, new Message("reason.unproven"), [], null, [], false)
            : now.IsPutBack
                ? new NextStep(null, null, new Message("reason.proven"), [], PresentFinding(), [], true)
                : PutBackStep(now);
    }

    private static Observation? OutcomeOf(Assessment now, ProofGoal goal) => now.Observations.LastOrDefault(o =>
        o.RepairsBefore.Length == now.Repairs.Length && goal.Accepts.Contains(o.Check.Id));

    /// <summary>
    /// What was blamed is mended and nothing else is likelier, yet a proof failed: a doubtful answer is asked again, the
    /// second time at other points if there are any.
    /// </summary>
    private NextStep? ProofToRepeat(Assessment now)
    {
        var last = now.Observations.LastOrDefault(o =>
            o.Check.Kind == CheckKind.Proof && o.RepairsBefore.Length == now.Repairs.Length);
        if (last is null)
        {
            return null;
        }

        var goal = ProofsFor(now).FirstOrDefault(g => g.Accepts.Contains(last.Check.Id));
        var same = TakenSince(now, [last.Check.Id]);
        if (same >= MostAtSamePoints && goal is not null && Elsewhere(now, goal) is { } other)
        {
            return Step(now, other, new Message("reason.proof-elsewhere"), null, []);
        }

        return (goal is null ? same : TakenSince(now, goal.Accepts)) < MostProofs
            ? Step(now, last.Check, new Message("reason.proof-again"), null, [])
            : null;
    }

    private static int TakenSince(Assessment now, ImmutableArray<string> ids) =>
        now.Observations.Count(o => ids.Contains(o.Check.Id) && o.RepairsBefore.Length == now.Repairs.Length);

    /// <summary>The same proof with the leads at points where it was not taken yet.</summary>
    private Check? Elsewhere(Assessment now, ProofGoal goal) => Cheapest(
        now,
        [.. goal.Accepts
            .Where(id => TakenSince(now, [id]) == 0 && !now.SkippedChecks.Contains(id))
            .Select(FindProof)
            .OfType<Check>()
            .Where(c => !Access.PlacesOf(Circuit, c).Overlaps(now.GivenUp))],
        mayOpen: false);

    /// <summary>
    /// A load that is seen to work has volts: who reads next to none across it, again and again, is at the wrong pin. That
    /// proves nothing either way.
    /// </summary>
    private bool IsAtTheWrongPin(Assessment now, ProofGoal goal)
    {
        bool ShowsNone(Observation o) => o.Value is ReadingParse.Number number && IsAcrossLoad(o.Check)
            && Math.Abs(number.Value) < DeadShare * Circuit.Battery.NominalVolts;
        var since = now.Observations.Where(o => o.RepairsBefore.Length == now.Repairs.Length).ToList();
        var taken = since.Where(o => goal.Accepts.Contains(o.Check.Id)).ToList();
        return taken.Count >= MostProofs && taken.TrueForAll(ShowsNone) && Elsewhere(now, goal) is null
            && since.Exists(o => o.Check.Id == CheckCatalog.Reproduce(Circuit, Complaint, CheckKind.Proof).Id && Passes(o));
    }

    /// <summary>A proof passes when the healthy car would answer so too: a fan on its low speed may well turn slowly.</summary>
    private bool Passes(Observation proof)
    {
        var healthy = _forecaster.Of(Safety.SafetyScreen.HealthyCar(), proof.Check, []);
        return proof.Value switch
        {
            ReadingParse.Word word => proof.Check.GroupOf(word.Answer) is >= 0 and var group
                && group < healthy.Groups.Length && healthy.Groups[group] > UsualAnswer,
            ReadingParse.Number { Unsteady: true } => false,
            ReadingParse.Number number when IsAcrossLoad(proof.Check) => Math.Abs(number.Value)
                >= Math.Min(((Load)Circuit[Complaint.Load]).Works.Low, LeastHealthy(healthy)),
            ReadingParse.Number { Quantity: Quantity.Amperes } number => Math.Abs(Math.Abs(number.Value) - Math.Abs(healthy.Mean))
                <= Math.Max(3 * healthy.Spread, AmpsShare * Math.Abs(healthy.Mean)),
            ReadingParse.Number number => Math.Abs(number.Value) <= Math.Abs(healthy.Mean) + Math.Max(3 * healthy.Spread, DropVolts),
            _ => false,
        };
    }

    /// <summary>
    /// The least volts of a load that is fed as it should be: resistors and motors differ, and a load that runs on a part
    /// of the volts differs with them.
    /// </summary>
    private static double LeastHealthy(Forecast healthy)
    {
        var mean = Math.Abs(healthy.Mean);
        return Math.Min(HealthyShare * mean, Math.Max(LeastShare * mean, mean - (2.5 * healthy.Spread)));
    }
}
