using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>A check with what it is expected to tell and what it takes.</summary>
/// <param name="Risk">Minutes that sparing its risks is worth.</param>
/// <param name="Bits">Expected information about which repair is needed.</param>
public sealed record RankedCheck(Check Check, Effort Effort, double Risk, double Bits)
{
    /// <summary>Bits per minute, the risk weighed in.</summary>
    public double Score => Bits / Math.Max(0.05, Effort.Minutes + Risk);
}

/// <summary>Ranks checks by information per minute of the change of arrangement they need. Deterministic.</summary>
public sealed class Planner(Forecaster forecaster, DiagnosisOptions options)
{
    /// <summary>Cars planned with.</summary>
    private const int MostCars = 120;

    /// <summary>Bits below which a check is not worth mentioning.</summary>
    public const double LeastBits = 0.02;

    /// <summary>Cars of the first look.</summary>
    private const int FewCars = 40;

    /// <summary>Checks kept after the first look.</summary>
    private const int Looked = 80;

    /// <summary>Checks that are computed in full after the quick look.</summary>
    private const int Screened = 24;

    /// <summary>With fewer safe checks than these the next best are looked at, so many times at most.</summary>
    private const int FewestSafe = 4, MostRounds = 12;

    /// <summary>A check that tells a smaller share of what it promised has been told already; so many times the next best are looked at.</summary>
    private const double ToldShare = 0.4;

    private const int ToldRounds = 4;

    /// <summary>Checks kept because they tell most, whatever they take: a look ahead may find them worth their minutes.</summary>
    private const int Telling = 6;

    private readonly Screening _screening = new(forecaster);
    private readonly SafetyScreen _safety = new(forecaster, options);
    private readonly ManyMinutes _minutes = new(forecaster.Network.Circuit, options);

    /// <summary>Room for one quick look.</summary>
    private Outlook[] _looked = [];

    /// <summary>The checks that tell most per minute, best first; empty when nothing that can be done would tell anything.</summary>
    /// <param name="most">How many at most.</param>
    public ImmutableArray<RankedCheck> Rank(
        Posterior posterior, IEnumerable<Check> checks, Position position, ImmutableArray<Repair> repairs,
        Func<Suspects.Suspect, string> classOf, int most)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        ArgumentNullException.ThrowIfNull(checks);
        var partition = Partition.Of(posterior, classOf, MostCars);
        var best = new BestOf<RankedCheck>(most);
        foreach (var (check, _, bits) in Safe(posterior, partition, partition, checks, position, repairs, 0))
        {
            var ranked = new RankedCheck(check, Effort.Of(Circuit, options, position, check), Risk.MinutesOf(Circuit, check), bits);
            best.Offer(ranked, ranked.Score);
        }

        return [.. best.Items];
    }

    /// <summary>What to do now: checks, repairs and handing over weighed in money, looking ahead.</summary>
    /// <param name="mends">The repairs still open for each suspect, none where nothing helps.</param>
    /// <param name="carryingOut">The check that stands for carrying out a repair.</param>
    /// <param name="nodes">Budget of nodes.</param>
    public Plan Plan(
        Posterior posterior, IEnumerable<Check> checks, Position position, ImmutableArray<Repair> repairs,
        Func<Suspects.Suspect, ImmutableArray<Repair>> mends, Func<Repair, Check> carryingOut, int nodes) =>
        Problem(posterior, checks, position, repairs, mends, carryingOut, MostCars, int.MaxValue).Solve(nodes);

    /// <summary>The problem that is planned with.</summary>
    /// <param name="mostCars">Cars at most, picked at even steps of the summed odds.</param>
    /// <param name="mostChecks">Checks at most, those with the most bits per minute.</param>
    internal PlanningProblem Problem(
        Posterior posterior, IEnumerable<Check> checks, Position position, ImmutableArray<Repair> repairs,
        Func<Suspects.Suspect, ImmutableArray<Repair>> mends, Func<Repair, Check> carryingOut, int mostCars, int mostChecks)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        ArgumentNullException.ThrowIfNull(checks);
        ArgumentNullException.ThrowIfNull(mends);
        ArgumentNullException.ThrowIfNull(carryingOut);
        string ClassOf(Suspects.Suspect suspect) => string.Join(" + ", mends(suspect).Select(r => r.Id));
        var living = Partition.Of(posterior, ClassOf, MostCars);
        var partition = living.Thin(mostCars);
        var choices = PlanningProblem.Choices(partition, posterior.Space, mends, carryingOut);
        // Safe for every car that is likely, not only for the few that are planned with.
        var seen = Safe(posterior, partition, living, checks, position, repairs, Telling)
            .ConvertAll(c => new SeenCheck(c.Check, c.Bits, Information.Outcomes(c.Check, c.Outlooks, out var count), count));
        if (seen.Count > mostChecks)
        {
            double Minutes(SeenCheck c) => Effort.WeighedMinutesOf(Circuit, options, position, c.Check);
            seen = [.. seen.OrderByDescending(c => Math.Round(c.Bits / Minutes(c), 9)).ThenBy(c => c.Check.Id, StringComparer.Ordinal).Take(mostChecks)];
        }

        return new PlanningProblem(Circuit, options, partition, position, seen, choices);
    }

    /// <summary>What each answer to a check would leave, likeliest first.</summary>
    public ImmutableArray<ForeseenOutcome> Foresee(
        Posterior posterior, Check check, ImmutableArray<Repair> repairs, Func<Suspects.Suspect, string> classOf)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        ArgumentNullException.ThrowIfNull(check);
        var partition = Partition.Of(posterior, classOf, MostCars);
        return new Foresight(forecaster, partition, posterior.Space).Of(check, Outlooks(posterior, partition, check, repairs));
    }

    /// <summary>What each car answers, the readings so far known.</summary>
    private Outlook[] Outlooks(Posterior posterior, Partition partition, Check check, ImmutableArray<Repair> repairs)
    {
        var outlooks = new Outlook[partition.Cars.Count];
        var column = forecaster.ColumnOf(check);
        for (var i = 0; i < outlooks.Length; i++)
        {
            var car = partition.Cars[i];
            outlooks[i] = car.IsNone ? Outlook.Broad : posterior.HindsightOf(car).Of(forecaster.Of(car, column, repairs));
        }

        return outlooks;
    }

    private Circuit Circuit => forecaster.Network.Circuit;

    /// <summary>
    /// The promising checks that may be done. Where hardly one of them may, or what they promised has been told by readings so
    /// far, the next best are looked at, without what is like those.
    /// </summary>
    /// <param name="living">Every car that must not come to harm.</param>
    private List<(Check Check, Outlook[] Outlooks, double Bits)> Safe(
        Posterior posterior, Partition partition, Partition living, IEnumerable<Check> checks, Position position, ImmutableArray<Repair> repairs,
        int telling)
    {
        if (partition.ClassCount < 2)
        {
            return [];
        }

        var candidates = _minutes.FewestFirst(position, checks).Select(c => new Candidate(c.Check, c.Minutes)).ToList();
        var few = partition.Thin(FewCars);
        var left = new HashSet<(string, Instrument)>();
        var safe = new Dictionary<string, Candidate>(StringComparer.Ordinal);
        for (var round = 1; ; round++)
        {
            var before = left.Count;
            var (promised, told) = (0.0, 0.0);
            foreach (var candidate in Promising(candidates.Where(c => !left.Contains(c.Like)), partition, few, repairs, telling))
            {
                if (candidate.Outlooks is null)
                {
                    candidate.Outlooks = Outlooks(posterior, partition, candidate.Check, repairs);
                    candidate.Bits = Information.Bits(partition, candidate.Check, candidate.Outlooks);
                    candidate.IsSafe = candidate.Bits >= LeastBits && _safety.Allows(candidate.Check, living, repairs);
                }

                if (candidate.IsSafe)
                {
                    safe[candidate.Check.Id] = candidate;
                    (promised, told) = (Math.Max(promised, candidate.Rough), Math.Max(told, candidate.Bits));
                }

                if (!candidate.IsSafe && candidate.Bits >= LeastBits || posterior.HasNumbers && candidate.Bits < ToldShare * candidate.Rough)
                {
                    left.Add(candidate.Like);
                }
            }

            var isDisappointing = posterior.HasNumbers && told < ToldShare * promised && round < ToldRounds;
            if (safe.Count >= FewestSafe && !isDisappointing || left.Count == before || round == MostRounds)
            {
                break;
            }
        }

        // From several rounds the best are taken as they are from one.
        var perMinute = safe.Values.OrderByDescending(s => Math.Round(s.Bits / s.Minutes, 9)).ThenBy(s => s.Check.Id, StringComparer.Ordinal).Take(Screened);
        var most = safe.Values.OrderByDescending(s => Math.Round(s.Bits, 9)).ThenBy(s => s.Check.Id, StringComparer.Ordinal).Take(telling);
        return [.. perMinute.UnionBy(most, s => s.Check.Id).OrderBy(s => s.Minutes).ThenBy(s => s.Check.Id, StringComparer.Ordinal)
            .Select(s => (s.Check, s.Outlooks!, s.Bits))];
    }

    /// <summary>
    /// The checks worth computing in full: those with the most bits per minute on a few cars, the better ones of them on all;
    /// and beside them those with the most bits, whatever they take.
    /// </summary>
    private List<Candidate> Promising(
        IEnumerable<Candidate> byMinutes, Partition partition, Partition few, ImmutableArray<Repair> repairs, int telling)
    {
        double OnFew(Candidate c) => double.IsNaN(c.RoughOnFew) ? c.RoughOnFew = RoughBits(c.Check, few, repairs) : c.RoughOnFew;
        double OnAll(Candidate c) => double.IsNaN(c.Rough) ? c.Rough = RoughBits(c.Check, partition, repairs) : c.Rough;
        return few.Cars.Count < partition.Cars.Count
            ? Screen(Screen(byMinutes, OnFew, few.Entropy, Looked, telling), OnAll, partition.Entropy, Screened, telling)
            : Screen(byMinutes, OnAll, partition.Entropy, Screened, telling);
    }

    private double RoughBits(Check check, Partition partition, ImmutableArray<Repair> repairs)
    {
        if (_looked.Length < partition.Cars.Count)
        {
            _looked = new Outlook[partition.Cars.Count];
        }

        var outlooks = _looked.AsSpan(0, partition.Cars.Count);
        _screening.Look(check, partition.Cars, repairs, outlooks);
        return Information.Bits(partition, check, outlooks);
    }

    /// <param name="bitsOf">The bits that a check promises.</param>
    /// <param name="entropy">Bits that are missing.</param>
    private static List<Candidate> Screen(
        IEnumerable<Candidate> byMinutes, Func<Candidate, double> bitsOf, double entropy, int most, int telling)
    {
        var kept = new BestOf<Candidate>(most);
        var tells = new BestOf<Candidate>(Math.Max(1, telling));
        foreach (var candidate in byMinutes)
        {
            // No check can tell more than everything: dearer ones can no longer win a place.
            if (telling == 0 && kept.IsFull && entropy / candidate.Minutes < kept.Least)
            {
                break;
            }

            var bits = bitsOf(candidate);
            if (bits >= LeastBits)
            {
                kept.Offer(candidate, bits / candidate.Minutes);
                tells.Offer(candidate, bits);
            }
        }

        var items = telling > 0 ? kept.Items.Union(tells.Items) : kept.Items;
        return [.. items.OrderBy(k => k.Minutes).ThenBy(k => k.Check.Id, StringComparer.Ordinal)];
    }

    /// <summary>True if a check may be done on every car that is still likely.</summary>
    public bool IsSafe(
        Posterior posterior, Check check, ImmutableArray<Repair> repairs, Func<Suspects.Suspect, string> classOf) =>
        _safety.Allows(check, Partition.Of(posterior, classOf, MostCars), repairs);
}
