using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis;

public sealed partial class Investigation
{
    /// <summary>Odds of a repair from which it is the best next step.</summary>
    private const double FindingOdds = 0.95;

    /// <summary>Odds from which a suspect is worth naming as not cleared.</summary>
    private const double WorthNaming = 0.002;

    private const int RankedChecks = 6;

    /// <summary>Cars, checks and nodes of a first sight of the next step.</summary>
    private const int SightCars = 12, SightChecks = 12, SightNodes = 200;

    /// <summary>The last repair is proven and everything is put back; known without planning.</summary>
    public bool IsProven => ProofStep(Assess()) is { IsProven: true };

    /// <summary>What to do now.</summary>
    public NextStep Next() => Next(Planned);

    /// <summary>
    /// What to do now as a first sight gives it: planned with few cars, the checks that take least to foresee and a small
    /// budget. As safe as <see cref="Next()"/>, in a fraction of the time; to be shown where that takes longer than a person
    /// waits. Only a check is worth showing: a repair, or the end, is not seen at first sight.
    /// </summary>
    public NextStep NextAtFirstSight() => Next(now => Problem(now, OpenChecks(now).Where(IsSeenAtOnce), SightCars, SightChecks).Solve(SightNodes));

    /// <summary>What a settled car answers without being asked: volts, amps through a clamp, and what is seen or heard.</summary>
    private static bool IsSeenAtOnce(Check check) => check.Probe.Instrument is Instrument.Volts or Instrument.AmpsClamp or Instrument.Eye or Instrument.Ear;

    private NextStep Next(Func<Assessment, Plan> planned)
    {
        var now = Assess();
        if (ProofStep(now) is { } proof)
        {
            return proof;
        }

        foreach (var (check, reason) in FirstChecks(now))
        {
            if (!IsDone(now, check) && !now.SkippedChecks.Contains(check.Id))
            {
                return Step(now, check, new Message(reason), null, []);
            }
        }

        if ((IntermittentStep(now) ?? DoubtStep(now)) is { } first)
        {
            return first;
        }

        var plan = planned(now);
        var best = plan.Best;
        if (best.Check is { } next)
        {
            return Step(now, next, new Message("reason.least-cost", best.Bits), null, Alternatives(now, plan)) with { Plan = plan };
        }

        if (best.IsHandOver)
        {
            return ProofToRepeat(now) ?? Outside(now, HandOverReason(now)) with { Finding = PresentFinding(), Plan = plan };
        }

        var top = RankClasses(now).First(c => c.Repair is not null && best.Repairs.Any(r => r.Id == c.Repair.Id));
        if (DecisiveStep(now, top) is { } again)
        {
            return again with { Plan = plan };
        }

        if (FeedToProve(now, top) is { } feed)
        {
            return Step(now, feed, new Message("reason.prove-feed", Describe.Part(Circuit, top.Repair!.Target)), null, []) with { Plan = plan };
        }

        return Step(now, RepairCheck(top.Repair!), new Message("reason.repair"), MakeFinding(now, top), Alternatives(now, plan))
            with { Plan = plan };
    }

    /// <summary>Nothing fits, or what is left would cost more here than in a workshop.</summary>
    private static Message HandOverReason(Assessment now) => new(
        now.Posterior.NoneOdds > 0.5 ? "reason.nothing-fits" : "reason.hand-over");

    private Plan Planned(Assessment now) => _planner.Plan(
        now.Posterior, OpenChecks(now), now.Position, now.Repairs, suspect => RepairsLeft(now, suspect), RepairCheck,
        Options.PlanningNodes);

    /// <summary>A small cut of the present problem, for comparing the planner with the exact optimum.</summary>
    internal Planning.Sequencing.RepairProblem ProblemCut(int cars, int checks) => Problem(Assess(), OpenChecks(Assess()), cars, checks).Problem;

    private PlanningProblem Problem(Assessment now, IEnumerable<Check> open, int cars, int checks) => _planner.Problem(
        now.Posterior, open, now.Position, now.Repairs, suspect => RepairsLeft(now, suspect), RepairCheck, cars, checks);

    /// <summary>The repairs that mend a suspect and were not done yet, cheapest first; none for "none of these".</summary>
    private ImmutableArray<Repair> RepairsLeft(Assessment now, Suspect suspect) => [.. suspect.Modes
        .Select(RepairOf)
        .DistinctBy(r => r.Id)
        .Where(r => now.Repairs.All(d => d.Id != r.Id))
        .OrderBy(r => r.Price.Middle).ThenBy(r => r.Id, StringComparer.Ordinal)];

    private ImmutableArray<RankedCheck> Alternatives(Assessment now, Plan plan) => [.. plan.Steps
        .Skip(1)
        .Where(s => s.Check is not null)
        .Take(RankedChecks - 1)
        .Select(s => new RankedCheck(s.Check!, Effort.Of(Circuit, Options, now.Position, s.Check!), Risk.MinutesOf(Circuit, s.Check!), s.Bits))];

    /// <summary>The finding as it stands, whether or not another check would still pay.</summary>
    public Finding? PresentFinding()
    {
        var now = Assess();
        var top = RankClasses(now)[0];
        return top.Repair is null ? null : MakeFinding(now, top);
    }

    /// <summary>The best checks now, best first.</summary>
    public ImmutableArray<RankedCheck> RankedNow() => Ranked(Assess());

    private ImmutableArray<RankedCheck> Ranked(Assessment now) =>
        _planner.Rank(now.Posterior, OpenChecks(now), now.Position, now.Repairs, ClassOf, RankedChecks);

    /// <summary>True where this check may still be asked for.</summary>
    internal bool MayAsk(string id) => OpenChecks(Assess()).Any(c => c.Id == id);

    /// <summary>While the load works only what does not turn on the fault's being there tells anything.</summary>
    private IEnumerable<Check> OpenChecks(Assessment now) => OfferedNow(now).Where(c => !now.SkippedChecks.Contains(c.Id) && !IsDone(now, c)
        && !(now.IsFaultAway && (ComesAndGoes.ShowsState(c.Subject) || c.Subject == CheckSubject.Wiggle)));

    /// <summary>A check says nothing new when it was done since the last repair.</summary>
    private static bool IsDone(Assessment now, Check check) =>
        now.Observations.Any(o => o.Check.Id == check.Id && o.RepairsBefore.Length == now.Repairs.Length);

    private IEnumerable<(Check Check, string Reason)> FirstChecks(Assessment now)
    {
        if (_entries.Any(e => e.Check.Subject == CheckSubject.Repair))
        {
            yield break;
        }

        yield return (CheckCatalog.Reproduce(Circuit, Complaint), "reason.reproduce");
        var posts = CheckCatalog.ReadPosts(Circuit);
        if (OfferedNow(now).Any(c => c.Id == posts.Id))
        {
            yield return (posts, "reason.posts");
        }
    }

    private NextStep Step(
        Assessment now, Check check, Message reason, Finding? finding, ImmutableArray<RankedCheck> alternatives)
    {
        var effort = check.Subject == CheckSubject.Repair
            ? RepairEffort(check, finding?.Repair.Renews ?? [])
            : Effort.Of(Circuit, Options, now.Position, check);
        return new NextStep(
            check, effort, reason, Cautions.For(Circuit, Options, now.Position, check), finding, alternatives, false);
    }

    /// <summary>What is mended by the same repair is one class; a pair of faults needs two repairs.</summary>
    private string ClassOf(Suspect suspect) => suspect.IsNone
        ? Suspect.NoneId
        : string.Join(" + ", suspect.Modes.Select(m => RepairOf(m).Id).Distinct().Order(StringComparer.Ordinal));

    private List<ClassOdds> RankClasses(Assessment now)
    {
        var done = now.Repairs.Select(r => r.Id).ToHashSet(StringComparer.Ordinal);
        return [.. now.Suspects
            .GroupBy(s => ClassOf(s.Suspect), StringComparer.Ordinal)
            .Select(g => new ClassOdds(
                g.Sum(s => s.Odds),
                g.First().Suspect.Modes.Select(RepairOf).Where(r => !done.Contains(r.Id))
                    .OrderBy(r => r.Price.Middle).FirstOrDefault(),
                [.. g]))
            .OrderByDescending(c => c.Odds)
            .ThenBy(c => c.Suspects[0].Suspect.Id, StringComparer.Ordinal)];
    }

    private Finding MakeFinding(Assessment now, ClassOdds top)
    {
        var likeliest = now.LikeliestCar(top.Suspects[0].Suspect);
        var blown = _forecaster.Simulator.Blown(likeliest.Faults);
        var repair = top.Repair! with { Renews = [.. blown.Where(f => f != top.Repair!.Target)] };
        return new Finding(
            repair, top.Odds,
            [.. top.Suspects.Where(s => s.Odds >= WorthNaming || s == top.Suspects[0])],
            [.. now.Suspects.Where(s => s.Odds >= WorthNaming && !top.Suspects.Contains(s))],
            RestsOn(now, likeliest), top.Odds >= FindingOdds);
    }

    /// <summary>The readings that speak for the finding, measured against what they would have been worth for anyone.</summary>
    private ImmutableArray<string> RestsOn(Assessment now, Hypothesis blamed)
    {
        var none = now.Posterior.Space.Hypotheses.First(h => h.IsNone);
        return [.. now.Observations
            .Select(o => (o.Id, Gain: Posterior.LogLikelihoodOf(_forecaster, blamed, o) - Posterior.LogLikelihoodOf(_forecaster, none, o)))
            .Where(o => o.Gain > 0)
            .OrderByDescending(o => o.Gain)
            .Select(o => o.Id)];
    }

    /// <summary>
    /// Before a load is bought its feed and ground must have carried its current: with a dead load in place nothing
    /// flowed, and battery volts there clear nothing. A lamp of about its watts on its plug settles it.
    /// </summary>
    private Check? FeedToProve(Assessment now, ClassOdds top)
    {
        if (Circuit.Find(top.Repair!.Target) is Module module)
        {
            return ModuleFeedToProve(now, module);
        }

        if (Circuit.Find(top.Repair!.Target) is not Load load || IsProvenLoaded(now, top, load))
        {
            return null;
        }

        return CheckCatalog.Generate(Network, Complaint, Options, now.GivenUp)
            .FirstOrDefault(c => IsLampFor(c, load)
                && !now.SkippedChecks.Contains(c.Id) && !IsDone(now, c)
                && _planner.IsSafe(now.Posterior, c, now.Repairs, ClassOf));
    }

    private bool IsProvenLoaded(Assessment now, ClassOdds top, Load load)
    {
        var car = now.LikeliestCar(top.Suspects[0].Suspect);
        return now.Observations.Any(o => o.RepairsBefore.Length == now.Repairs.Length
            && (IsLampFor(o.Check, load)
                || o.Check.Subject == CheckSubject.Number && o.Check.Probe.Instrument == Instrument.Volts
                && Math.Abs(_forecaster.PointOf(car, o.Check, o.RepairsBefore).Load(load.Id).Amps) >= 0.5 * load.RatedAmps));
    }

    /// <summary>A lamp in place of the load; of several filaments, of one that is lit when all is well.</summary>
    private bool IsLampFor(Check check, Load load) => check.Probe.About == load.Id && check.Subject == CheckSubject.LampGlow
        && (load is not Lamp { Filaments.Length: > 1 }
            || Math.Abs(_forecaster.MeanOf(SafetyScreen.HealthyCar(), check, []).Value) > DeadShare * Circuit.Battery.NominalVolts);

    private sealed record ClassOdds(double Odds, Repair? Repair, ImmutableArray<SuspectOdds> Suspects);
}
