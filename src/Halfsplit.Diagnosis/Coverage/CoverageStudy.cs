using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Coverage;

/// <summary>Works out a <see cref="CoverageReport"/> by simulating every check on every suspect.</summary>
/// <param name="prior">The odds once the complaint is known.</param>
/// <param name="classOf">The repair that mends a suspect.</param>
internal sealed class CoverageStudy(
    Forecaster forecaster, DiagnosisOptions options, Posterior prior, Func<Suspect, string> classOf)
{
    private readonly SafetyScreen _safety = new(forecaster, options);
    private readonly CarsOfSuspects _cars = new(prior.Space);

    /// <param name="atHand">Checks that can be done.</param>
    /// <param name="others">Checks that can't, with what is not at hand for them.</param>
    /// <param name="complaint">What reproduces the complaint: it shows every suspect, and tells none.</param>
    public CoverageReport Run(
        ImmutableArray<Check> atHand, IEnumerable<(Check Check, ImmutableArray<Message> Lacks)> others, Check complaint)
    {
        var space = prior.Space;
        var classes = space.Suspects.Select(classOf).ToArray();
        var left = new PairsLeft(forecaster, Pairs(space, classes));
        // What needs no new arrangement costs the least to simulate and parts the most.
        foreach (var check in ByMinutes(atHand).OrderBy(c => c.Arrangement.Removed.Count + c.Arrangement.Unplugged.Count + c.Arrangement.Jumpers.Length))
        {
            left.Apply(check, IsSafe);
        }

        Again(left, atHand);
        var grouping = new Grouping(space, prior, classes, left.Left);
        var missing = others
            .Select(o => new LackingCheck(o.Check, Minutes(o.Check), o.Lacks))
            .OrderBy(o => o.Lacks.Length).ThenBy(o => o.Minutes).ThenBy(o => o.Check.Id, StringComparer.Ordinal)
            .ToList();
        var points = HiddenPoints.Of(forecaster.Network, forecaster.Network.Circuit.Conditions.Select(c => c.Name))
            .Select(p => p with { Minutes = Minutes(p.Check) })
            .OrderBy(p => p.Minutes).ThenBy(p => p.Check.Id, StringComparer.Ordinal)
            .ToList();
        var groups = grouping.Groups.Select(g => Finish(g, left, missing, points)).ToImmutableArray();
        var apart = space.Suspects.Length - 1 - grouping.Groups.Where(g => !g.OnlyAtWorst).SelectMany(g => g.Members).Distinct().Count();
        return new CoverageReport(
            space.Suspects.Length - 1, classes.Where((_, i) => !space.Suspects[i].IsNone).Distinct(StringComparer.Ordinal).Count(),
            atHand.Length, apart, groups, Unseen(space, atHand, complaint));
    }

    private List<CarPair> Pairs(HypothesisSpace space, string[] classes)
    {
        var pairs = new List<CarPair>();
        for (var a = 0; a < space.Suspects.Length; a++)
        {
            for (var b = a + 1; b < space.Suspects.Length; b++)
            {
                if (space.Suspects[a].IsNone || space.Suspects[b].IsNone || classes[a] == classes[b])
                {
                    continue;
                }

                var likeliest = _cars.AtLikeliest(a, b).ToList();
                pairs.AddRange(likeliest.Select(p => new CarPair(a, b, p.Item1, p.Item2, true)));
                pairs.AddRange(_cars.AtWorst(a, b).Except(likeliest).Select(p => new CarPair(a, b, p.Item1, p.Item2, false)));
            }
        }

        return pairs;
    }

    private SuspectGroup Finish(
        Grouping.Group group, PairsLeft left, List<LackingCheck> missing, List<ExtraPoint> points)
    {
        var pairs = left.Left
            .Where(p => (p.IsLikeliest || group.OnlyAtWorst) && group.Members.Contains(p.A) && group.Members.Contains(p.B))
            .ToList();
        return new SuspectGroup(
            [.. group.Members.Select(i => prior.Space.Suspects[i])],
            group.Members.Sum(i => prior.SuspectOdds[i]),
            group.OnlyAtWorst,
            missing.FirstOrDefault(m => left.PartsAny(m.Check, pairs, IsSafe)),
            points.FirstOrDefault(p => left.PartsAny(p.Check, pairs, (_, _) => true)));
    }

    /// <summary>Suspects that answer like a healthy car wherever one looks but at the load itself.</summary>
    private ImmutableArray<Suspect> Unseen(HypothesisSpace space, ImmutableArray<Check> atHand, Check complaint)
    {
        var pairs = new List<CarPair>();
        for (var i = 0; i < space.Suspects.Length; i++)
        {
            if (_cars.Likeliest(i) is { } car)
            {
                pairs.Add(new CarPair(i, i, car, SafetyScreen.HealthyCar(), true));
            }
        }

        var left = new PairsLeft(forecaster, pairs);
        foreach (var check in ByMinutes(atHand).Where(c => c.Subject != CheckSubject.LoadWork || c.Probe.About != complaint.Probe.About))
        {
            left.Apply(check, IsSafe);
            if (left.Left.Count == 0)
            {
                return [];
            }
        }

        Again(left, atHand);
        return [.. left.Left.Select(p => space.Suspects[p.A])];
    }

    /// <summary>Volts once more with the meter's own load, on the few pairs that are left.</summary>
    private void Again(PairsLeft left, ImmutableArray<Check> atHand)
    {
        left.IsCareful = true;
        foreach (var check in ByMinutes(atHand.Where(c => c.Subject == CheckSubject.Number && c.Probe.Instrument == Instrument.Volts)))
        {
            left.Apply(check, IsSafe);
        }
    }

    /// <summary>Once readings have left only these two, it is they that must not come to harm.</summary>
    private bool IsSafe(Check check, CarPair pair) => _safety.Allows(check, [pair.CarA, pair.CarB], []);

    private IEnumerable<Check> ByMinutes(IEnumerable<Check> checks) =>
        checks.OrderBy(Minutes).ThenBy(c => c.Id, StringComparer.Ordinal);

    private double Minutes(Check check) => Effort.MinutesOf(
        forecaster.Network.Circuit, options, Position.Start(forecaster.Network.Circuit), check);
}
