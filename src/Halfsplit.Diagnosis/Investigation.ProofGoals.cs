using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>How many proofs of the worst case are asked for at most, beside the complaint's condition and the volts.</summary>
    private const int MostWorstCases = 5;

    private const int MostSiblings = 2;

    private (Assessment Of, ImmutableArray<ProofGoal> Goals)? _proofs;

    /// <summary>Default until asked for.</summary>
    private ImmutableArray<Check> _acrossLoad;

    /// <summary>Where the load complained of is driven; null until asked for.</summary>
    private (TerminalName Feed, TerminalName Return)? _driven;

    /// <summary>
    /// What has to be seen after the last repair: the complaint's condition, the volts across the working load, then the
    /// worst cases that apply to what was mended.
    /// </summary>
    private ImmutableArray<ProofGoal> ProofsFor(Assessment now)
    {
        if (_proofs is { } known && ReferenceEquals(known.Of, now))
        {
            return known.Goals;
        }

        var repair = now.Repairs[^1];
        var blamed = now.Suspects.FirstOrDefault(s => s.Suspect.Modes.Any(m => RepairOf(m).Id == repair.Id));
        var goals = ImmutableArray.CreateBuilder<ProofGoal>();
        var reproduce = CheckCatalog.Reproduce(Circuit, Complaint, CheckKind.Proof);
        goals.Add(new ProofGoal(reproduce, [reproduce.Id], new Message("reason.proof"), true));
        if (Cheapest(now, AcrossLoad(), mayOpen: true) is { } across)
        {
            goals.Add(new ProofGoal(across, [.. AcrossLoad().Select(c => c.Id)], new Message("reason.proof-volts"), true));
        }

        goals.AddRange(WorstCases(now, repair, blamed is null ? null : now.LikeliestCar(blamed.Suspect)).Take(MostWorstCases));
        _proofs = (now, goals.ToImmutable());
        return goals.ToImmutable();
    }

    private IEnumerable<ProofGoal> WorstCases(Assessment now, Repair repair, Hypothesis? car)
    {
        foreach (var goal in BlownFuses(now, repair, car).SelectMany(f => FuseProofs(now, f)))
        {
            yield return goal;
        }

        if (IsJoint(repair) || repair.Action == "mend-wire")
        {
            ImmutableArray<Check> drops = car is null ? [] : Drops(now, car);
            // The reading that showed the fault shows best that it is gone.
            var known = drops.Where(d => now.Observations.Any(o => d.Id == AsProof(o.Check).Id)).ToImmutableArray();
            ImmutableArray<Check> atIt = [.. drops.Where(d => IsAt(repair, d.Probe))];
            if ((Cheapest(now, known, mayOpen: false) ?? Cheapest(now, atIt, mayOpen: false) ?? Cheapest(now, drops, mayOpen: false)) is { } drop)
            {
                yield return new ProofGoal(drop, [.. drops.Select(d => d.Id)], new Message("reason.proof-drop", Describe.Target(Circuit, repair.Target)));
            }

            var wiggle = Check.Create(
                CheckKind.Proof, CheckSubject.Wiggle, new Arrangement(HeldCondition ?? Complaint.Condition),
                new Probe(Instrument.Volts, null, null, repair.Target.Split(' ')[0]));
            yield return new ProofGoal(wiggle, [wiggle.Id], new Message("reason.proof-wiggle"));
        }

        if (Circuit[Complaint.Load] is Motor or Starter && Cheapest(now, AmpsOfLoad(now), mayOpen: false) is { } amps)
        {
            yield return new ProofGoal(amps, [.. AmpsOfLoad(now).Select(c => c.Id)], new Message("reason.proof-amps"));
        }

        foreach (var sibling in car is null ? [] : Siblings(now, car))
        {
            yield return new ProofGoal(sibling, [sibling.Id], new Message("reason.proof-sibling"));
        }

        if (Moves(repair))
        {
            var again = OfLoad(CheckSubject.WorkAgain, Complaint.Condition);
            yield return new ProofGoal(again, [again.Id], new Message("reason.proof-again-and-again"));
        }

        if (HeldCondition is { } held && GetsHot(repair))
        {
            var hot = OfLoad(CheckSubject.WorkHot, held);
            yield return new ProofGoal(hot, [hot.Id], new Message("reason.proof-hot"));
        }
    }

    /// <summary>Amps through the fuse, or the volts across it, with the most switched on; then the fuse still whole.</summary>
    private IEnumerable<ProofGoal> FuseProofs(Assessment now, string fuse)
    {
        // All that the fuse feeds, in a condition that can be held if there is one.
        var amps = Circuit.Conditions.ToDictionary(c => c.Name, c => AmpsThrough(fuse, c.Name), StringComparer.Ordinal);
        var condition = Circuit.Conditions
            .Where(c => amps[c.Name] >= 0.9 * amps.Values.Max())
            .MinBy(c => c.NeedsHelper ? 1 : 0)!.Name;
        bool IsItsOwn(Check c) => c.Probe switch
        {
            { Instrument: Instrument.AmpsClamp } => Math.Abs(
                Math.Abs(_forecaster.MeanOf(Safety.SafetyScreen.HealthyCar(), c with { Arrangement = new Arrangement(condition) }, []).Value)
                - amps[condition]) < 0.02 * amps[condition],
            { Instrument: Instrument.Volts, Red: { } red, Black: { } black } => red.Part == fuse && black.Part == fuse,
            _ => false,
        };
        ImmutableArray<Check> loaded = [.. OfferedNow(now)
            .Where(c => c.Subject == CheckSubject.Number && c.Arrangement.Key == new Arrangement(Complaint.Condition).Key && IsItsOwn(c))
            .Select(c => AsProof(c with { Arrangement = new Arrangement(condition) }))];
        if (Cheapest(now, loaded, mayOpen: false) is { } current)
        {
            yield return new ProofGoal(
                current, [.. loaded.Select(c => c.Id)], new Message("reason.proof-fuse-amps", Describe.Part(Circuit, fuse)));
        }

        var look = Check.Create(
            CheckKind.Proof, CheckSubject.FuseLook, new Arrangement(CheckCatalog.RestCondition(Circuit)),
            new Probe(Instrument.Eye, null, null, fuse));
        yield return new ProofGoal(look, [look.Id], new Message("reason.proof-fuse-whole", Describe.Part(Circuit, fuse)));
    }

    /// <summary>Fuses that were seen blown, were replaced, or blow from what was blamed.</summary>
    private IEnumerable<string> BlownFuses(Assessment now, Repair repair, Hypothesis? car) => now.Observations
        .Where(o => o.Check.Subject == CheckSubject.FuseLook && o.RepairsBefore.Length < now.Repairs.Length
            && o.Value is ReadingParse.Word { Answer: var word } && word == AnswerWord.Blown)
        .Select(o => o.Check.Probe.About!)
        .Concat(Circuit.Find(repair.Target) is Fuse ? [repair.Target] : [])
        .Concat(car is null ? [] : _forecaster.Simulator.Blown(car.Faults))
        .Where(f => Circuit.Find(f) is Fuse)
        .Distinct()
        .Order(StringComparer.Ordinal);

    private double AmpsThrough(string fuse, string condition)
    {
        var point = _forecaster.Simulator.Simulate(new Arrangement(condition), []);
        var most = 0.0;
        foreach (var branch in Network.BranchesOf(fuse))
        {
            most = Math.Max(most, Math.Abs(point.Amps(branch)));
        }

        return most;
    }

    /// <summary>Volts over a stretch that shows what was blamed and next to nothing in a healthy car, everything in place.</summary>
    private ImmutableArray<Check> Drops(Assessment now, Hypothesis car)
    {
        const double Small = 0.6;
        const double Shows = 0.1;
        bool IsLoaded(Arrangement arrangement) => Circuit.Conditions.Any(c => c.Name == arrangement.Key)
            && Fares(Complaint.Load, arrangement.Condition, []) != LoadCondition.Dead;
        return [.. OfferedNow(now)
            .Where(c => c.Subject == CheckSubject.Number && c.Probe.Instrument == Instrument.Volts && IsLoaded(c.Arrangement))
            .Where(c => Math.Abs(_forecaster.MeanOf(Safety.SafetyScreen.HealthyCar(), c, []).Value) is var healthy && healthy < Small
                && Math.Abs(_forecaster.MeanOf(car, c, []).Value) > healthy + Shows)
            .Select(AsProof)];
    }

    /// <summary>A lead lies on what was mended, or on an end of the wire.</summary>
    private bool IsAt(Repair repair, Probe probe)
    {
        var wire = Circuit.Wires.FirstOrDefault(w => w.Id == repair.Target);
        var part = repair.Target.Split('.', ' ')[0];
        return Touches(probe.Red) || Touches(probe.Black);

        bool Touches(TerminalName? lead) => lead is { } on && (wire is null ? on.Part == part : on.Part == wire.From.Part || on.Part == wire.To.Part);
    }

    /// <summary>The volts across the load complained of, everything in place.</summary>
    private ImmutableArray<Check> AcrossLoad()
    {
        if (_acrossLoad.IsDefault)
        {
            var plain = new Arrangement(Complaint.Condition).Key;
            _acrossLoad = [.. _allChecks.Values
                .Where(c => IsAcrossLoad(c) && c.Arrangement.Key == plain)
                .OrderBy(c => c.Id, StringComparer.Ordinal)
                .Select(AsProof)];
        }

        return _acrossLoad;
    }

    private bool IsAcrossLoad(Check check)
    {
        var (feed, back) = _driven ??= _forecaster.Simulator.Simulate(new Arrangement(Complaint.Condition), []).Driven((Load)Circuit[Complaint.Load]);
        return check is { Subject: CheckSubject.Number, Probe: { Instrument: Instrument.Volts, Red: { } red, Black: { } black } }
            && Network.NodeOf(red) == Network.NodeOf(feed) && Network.NodeOf(black) == Network.NodeOf(back);
    }

    private ImmutableArray<Check> AmpsOfLoad(Assessment now)
    {
        var healthy = _forecaster.Simulator.Simulate(new Arrangement(Complaint.Condition), []);
        var amps = Math.Abs(healthy.Load(Complaint.Load).Amps);
        return [.. OfferedNow(now)
            .Where(c => c.Probe.Instrument == Instrument.AmpsClamp && c.Arrangement.Key == new Arrangement(Complaint.Condition).Key)
            .Where(c => Math.Abs(Math.Abs(_forecaster.MeanOf(Safety.SafetyScreen.HealthyCar(), c, []).Value) - amps) < 0.02 * amps)
            .Select(AsProof)];
    }

    /// <summary>
    /// Other loads that what was blamed puts out, each in a condition in which it gets most of the volts: how two motors in series share them
    /// hangs on how they differ, and one may well turn slowly with nothing wrong.
    /// </summary>
    private IEnumerable<Check> Siblings(Assessment now, Hypothesis car)
    {
        var found = new List<(int Rank, Check Check)>();
        foreach (var load in Circuit.Parts.OfType<Load>().Where(l => l.Id != Complaint.Load && l is Motor or Lamp or Led or Heater or Starter))
        {
            var condition = Circuit.Conditions
                .Where(c => WorksOnFullVolts(load.Id, c.Name) && Fares(load.Id, c.Name, car.Faults) != LoadCondition.Works)
                .MinBy(c => c.Name == Complaint.Condition ? 0 : c.NeedsHelper ? 2 : 1);
            if (condition is not null)
            {
                var check = CheckCatalog.Reproduce(
                    Circuit, Complaint with { Load = load.Id, Condition = condition.Name }, CheckKind.Proof);
                var seen = now.Observations.Any(o => o.Check.Probe.About == load.Id && o.Check.Subject == CheckSubject.LoadWork);
                found.Add((seen ? 0 : 1, check));
            }
        }

        return found.OrderBy(f => f.Rank).ThenBy(f => f.Check.Id, StringComparer.Ordinal).Take(MostSiblings).Select(f => f.Check);
    }

    /// <summary>A condition that can be held in which the load does what it should in the complaint's; null if there is none.</summary>
    private string? HeldCondition
    {
        get
        {
            var wanted = Fares(Complaint.Load, Complaint.Condition, []);
            return Circuit.Conditions
                .Where(c => !c.NeedsHelper && Fares(Complaint.Load, c.Name, []) == wanted)
                .OrderBy(c => c.Name == Complaint.Condition ? 0 : c.EngineTurns || c.AlternatorVolts is not null ? 2 : 1)
                .FirstOrDefault()?.Name;
        }
    }

    private bool WorksOnFullVolts(string load, string condition)
    {
        const double Most = 0.75;
        var state = _forecaster.Simulator.Simulate(new Arrangement(condition), []).Load(load);
        return state.Condition == LoadCondition.Works && Math.Abs(state.Volts) >= Most * Circuit.Battery.NominalVolts;
    }

    private LoadCondition Fares(string load, string condition, ImmutableArray<Fault> faults) =>
        _forecaster.Simulator.Simulate(new Arrangement(condition), faults).Load(load).Condition;

    private Check OfLoad(CheckSubject subject, string condition) => Check.Create(
        CheckKind.Proof, subject, new Arrangement(condition),
        CheckCatalog.Reproduce(Circuit, Complaint).Probe);

    private Check? Cheapest(Assessment now, ImmutableArray<Check> checks, bool mayOpen) => checks
        .Where(c => mayOpen || Access.PlacesOf(Circuit, c)
            .All(p => now.AfterRepair.Arrangement.Opened.Contains(p) || Circuit.FindPlace(p)!.OpenMinutes <= EasyToOpen))
        .OrderBy(c => Effort.WeighedMinutesOf(Circuit, Options, now.AfterRepair, c))
        .ThenBy(c => c.Id, StringComparer.Ordinal)
        .FirstOrDefault();

    /// <summary>A place that a proof of the worst case may open: minutes.</summary>
    private const double EasyToOpen = 1;

    private static bool IsJoint(Repair repair) => repair.Action is "mend-contact" or "clean-ground" or "latch";

    /// <summary>What has contacts or moves may work once and not the next time.</summary>
    private bool Moves(Repair repair) =>
        Circuit.Find(repair.Target.Split(' ')[0]) is Relay or Switch or Motor or Starter or Solenoid or Module or Breaker;

    /// <summary>What warms up in use may fail only then; nobody wants five minutes of cranking or of the horn.</summary>
    private bool GetsHot(Repair repair) => Circuit[Complaint.Load] switch
    {
        Motor or Heater { Sounds: false } => true,
        Lamp or Led => repair.Target != Complaint.Load,
        _ => false,
    };

    /// <summary>
    /// Before a module is blamed its feeds and grounds must have stood while it worked: each pair that can be reached is
    /// read once in the complaint's condition, from its feed to its own ground.
    /// </summary>
    private Check? ModuleFeedToProve(Assessment now, Module module)
    {
        var feeds = module.Feeds.Select(f => Network.NodeOf(new(module.Id, f))).ToHashSet();
        var grounds = module.Grounds.Select(g => Network.NodeOf(new(module.Id, g))).ToHashSet();
        var key = new Arrangement(Complaint.Condition).Key;
        bool IsPair(Check c) => c is { Subject: CheckSubject.Number, Probe: { Instrument: Instrument.Volts, Red: { } red, Black: { } black } }
            && c.Arrangement.Key == key && feeds.Contains(Network.NodeOf(red)) && grounds.Contains(Network.NodeOf(black));
        var read = now.Observations.Where(o => IsPair(o.Check)).Select(o => Network.NodeOf(o.Check.Probe.Red!.Value)).ToHashSet();
        return OfferedNow(now)
            .Where(c => IsPair(c) && !read.Contains(Network.NodeOf(c.Probe.Red!.Value)) && !now.SkippedChecks.Contains(c.Id))
            .OrderBy(c => Effort.WeighedMinutesOf(Circuit, Options, now.Position, c))
            .ThenBy(c => c.Id, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static Check AsProof(Check check) =>
        Check.Create(CheckKind.Proof, check.Subject, check.Arrangement, check.Probe);

    /// <summary>A proof by its id: any check's proof, and those that only a proof asks for.</summary>
    private Check? FindProof(string id)
    {
        const string Prefix = "proof ";
        if (!id.StartsWith(Prefix, StringComparison.Ordinal))
        {
            return null;
        }

        if (_allChecks.TryGetValue(id[Prefix.Length..], out var plain))
        {
            return AsProof(plain);
        }

        return OnlyProofs().FirstOrDefault(c => c.Id == id) ?? InAnotherCondition(id[Prefix.Length..]);
    }

    /// <summary>After a repair a reading may be taken in a condition that the car could not be brought into before.</summary>
    private Check? InAnotherCondition(string id)
    {
        var bar = id.IndexOf(" | ", StringComparison.Ordinal);
        if (bar < 0 || Circuit.FindCondition(id[(bar + 3)..]) is not { } condition)
        {
            return null;
        }

        return _allChecks.TryGetValue($"{id[..bar]} | {Complaint.Condition}", out var plain)
            ? AsProof(plain with { Arrangement = new Arrangement(condition.Name) })
            : null;
    }

    private IEnumerable<Check> OnlyProofs()
    {
        foreach (var condition in Circuit.Conditions)
        {
            foreach (var load in Circuit.Parts.OfType<Load>())
            {
                var work = CheckCatalog.Reproduce(
                    Circuit, Complaint with { Load = load.Id, Condition = condition.Name }, CheckKind.Proof);
                yield return work;
                yield return Check.Create(CheckKind.Proof, CheckSubject.WorkAgain, work.Arrangement, work.Probe);
                yield return Check.Create(CheckKind.Proof, CheckSubject.WorkHot, work.Arrangement, work.Probe);
            }

            foreach (var target in _singles.Suspects.Where(s => !s.IsNone).Select(s => RepairOf(s.Modes[0]).Target.Split(' ')[0]).Distinct())
            {
                yield return Check.Create(
                    CheckKind.Proof, CheckSubject.Wiggle, new Arrangement(condition.Name), new Probe(Instrument.Volts, null, null, target));
            }
        }
    }

    /// <param name="Ask">The check that is asked for.</param>
    /// <param name="Accepts">Ids of the checks that prove the same.</param>
    /// <param name="Reason">Why it is asked for.</param>
    /// <param name="IsEssential">At least one of these must have been done for a repair to count as proven.</param>
    private sealed record ProofGoal(Check Ask, ImmutableArray<string> Accepts, Message Reason, bool IsEssential = false);
}
