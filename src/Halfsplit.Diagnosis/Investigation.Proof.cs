using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How often the same proof is asked for before it is believed to fail.</summary>
    private const int MostProofs = 3;

    /// <summary>Probability from which an answer is usual for a healthy car.</summary>
    private const double UsualAnswer = 0.3;

    /// <summary>Share of the healthy volts that a load must have to count as proven; common practice, no published source.</summary>
    private const double HealthyShare = 0.92;

    private Check RepairCheck(Repair repair) => Check.Create(
        CheckKind.Repair, CheckSubject.Repair, new Arrangement(CheckCatalog.RestCondition(Circuit)),
        new Probe(Instrument.Eye, null, null, repair.Target), repair.Id);

    private Repair RepairNamed(Check check) => _singles.Suspects
        .Where(s => !s.IsNone)
        .Select(s => RepairOf(s.Modes[0]))
        .First(r => r.Id == check.RepairId);

    private Effort RepairEffort(Check check)
    {
        var repair = RepairNamed(check);
        var access = Effort.Of(Circuit, Options, Assess().Position, check);
        return new Effort(
            Math.Round(access.Minutes + repair.Minutes, 2),
            [.. access.Steps[..^1], new Message($"repair.{repair.Action}", Describe.Target(Circuit, repair.Target))]);
    }

    /// <summary>The complaint's condition again, then the volts across the working load where they can be reached.</summary>
    private IEnumerable<Check> ProofChecks()
    {
        yield return CheckCatalog.Reproduce(Circuit, Complaint, CheckKind.Proof);
        if (AcrossLoad() is { } across)
        {
            yield return Check.Create(CheckKind.Proof, CheckSubject.Number, across.Arrangement, across.Probe);
        }
    }

    /// <summary>The volts across the load complained of, everything in place.</summary>
    private Check? AcrossLoad()
    {
        var load = (Load)Circuit[Complaint.Load];
        var pos = Network.NodeOf(new(load.Id, load.Across.Pos));
        var neg = Network.NodeOf(new(load.Id, load.Across.Neg));
        var key = new Arrangement(Complaint.Condition).Key;
        return _allChecks.Values
            .Where(c => c.Subject == CheckSubject.Number && c.Probe.Instrument == Instrument.Volts && c.Arrangement.Key == key
                && Network.NodeOf(c.Probe.Red!.Value) == pos && Network.NodeOf(c.Probe.Black!.Value) == neg)
            .OrderBy(c => c.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    /// <summary>After a repair: what is still to prove; the finished job; or null when there is nothing to prove or it failed.</summary>
    private NextStep? ProofStep(Assessment now)
    {
        if (now.Repairs.Length == 0)
        {
            return null;
        }

        var proven = 0;
        foreach (var proof in ProofChecks())
        {
            var outcome = now.Observations.LastOrDefault(o =>
                o.Check.Id == proof.Id && o.RepairsBefore.Length == now.Repairs.Length);
            if (outcome is null && !now.SkippedChecks.Contains(proof.Id))
            {
                return Step(now, proof, new Message("reason.proof"), null, []);
            }

            if (outcome is not null && !Passes(outcome))
            {
                return null;
            }

            proven += outcome is null ? 0 : 1;
        }

        // A repair whose proofs were all skipped is not proven.
        return proven == 0
            ? new NextStep(null, null, new Message("reason.unproven"), [], null, [], false)
            : new NextStep(null, null, new Message("reason.proven"), [], PresentFinding(), [], true);
    }

    /// <summary>
    /// What was blamed is mended and nothing else is likelier, yet a proof failed: a doubtful answer is asked again.
    /// </summary>
    private Check? ProofToRepeat(Assessment now)
    {
        var last = now.Observations.LastOrDefault(o =>
            o.Check.Kind == CheckKind.Proof && o.RepairsBefore.Length == now.Repairs.Length);
        return last is not null && now.Observations.Count(o =>
            o.Check.Id == last.Check.Id && o.RepairsBefore.Length == now.Repairs.Length) < MostProofs
            ? last.Check
            : null;
    }

    /// <summary>A proof passes when the healthy car would answer so too: a fan on its low speed may well turn slowly.</summary>
    private bool Passes(Observation proof)
    {
        var healthy = _forecaster.Of(Safety.SafetyScreen.HealthyCar(), proof.Check, []);
        return proof.Value switch
        {
            ReadingParse.Word word => proof.Check.GroupOf(word.Answer) is >= 0 and var group
                && healthy.Groups[group] > UsualAnswer,
            ReadingParse.Number number => Math.Abs(number.Value)
                >= Math.Min(((Load)Circuit[Complaint.Load]).Works.Low, HealthyShare * Math.Abs(healthy.Mean)),
            _ => false,
        };
    }
}
