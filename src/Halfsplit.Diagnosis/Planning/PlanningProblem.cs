using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning.Sequencing;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>A check with the probability of each of its outcomes for each car, row by row.</summary>
internal sealed record SeenCheck(Check Check, double Bits, double[] Outcomes, int OutcomeCount);

/// <summary>The present situation as a finite problem: the cars still likely, the best checks, their repairs.</summary>
internal sealed class PlanningProblem
{
    /// <summary>
    /// Handing over can't be taken back, and a look ahead that ends somewhere reckons going on too dear rather than too cheap: handing over
    /// has to be cheaper by this factor.
    /// </summary>
    private const double ClearlyCheaper = 1.02;

    /// <summary>
    /// Ways whose costs differ by no more than so many times what is only estimated of them can't be told apart: the check that tells most per
    /// cost comes first. The factor is an assumption, its effect measured in docs/diagnosis.md.
    /// </summary>
    public const double Slack = 3;

    /// <summary>Odds of a class below which its repair is not planned with.</summary>
    private const double LeastOdds = 1e-3;

    private const int MostRepairs = 32;

    /// <summary>Cars of one class whose answers differ by no more than this are planned with as one.</summary>
    private const double Alike = 0.03;

    private readonly IReadOnlyList<SeenCheck> _checks;
    private readonly IReadOnlyList<RepairChoice> _repairs;
    private readonly RepairProblem _problem;
    private readonly double _rightParts;

    public PlanningProblem(
        Circuit circuit, DiagnosisOptions options, Partition partition, Position position,
        IReadOnlyList<SeenCheck> checks, IReadOnlyList<(RepairChoice Choice, bool[] Cures)> repairs)
    {
        _checks = checks;
        _repairs = [.. repairs.Select(r => r.Choice)];
        var (first, weights) = Merged(partition, checks);
        var economy = options.EconomyInUse;
        for (var car = 0; car < partition.Cars.Count; car++)
        {
            _rightParts += partition.Weights[car] * repairs.Where(r => r.Cures[car]).Select(r => r.Choice.Price).DefaultIfEmpty().Min();
        }

        _problem = new RepairProblem(
            weights,
            [.. checks.Select(c => new ProblemCheck(c.OutcomeCount, Rows(c, first)))],
            [.. repairs.Select(r => new ProblemRepair(
                [.. first.Select(car => r.Cures[car] ? 1.0 : 0.0)], r.Choice.Price + (r.Choice.Price > 0 ? economy.WrongRepair : 0)))],
            new CarCosts(circuit, options, position, [.. checks.Select(c => c.Check)], _repairs),
            economy.HandOver);
    }

    /// <summary>What can be tried: one repair per class of suspects, likeliest first.</summary>
    public static List<(RepairChoice Choice, bool[] Cures)> Choices(
        Partition partition, HypothesisSpace space, Func<Suspect, ImmutableArray<Repair>> mends, Func<Repair, Check> carryingOut)
    {
        var sets = partition.Cars.Select(c => mends(space.Suspects[c.Suspect])).ToList();
        var odds = new Dictionary<string, double>(StringComparer.Ordinal);
        var choices = new Dictionary<string, RepairChoice>(StringComparer.Ordinal);
        for (var car = 0; car < sets.Count; car++)
        {
            if (sets[car].IsEmpty)
            {
                continue;
            }

            var choice = new RepairChoice([.. sets[car].Select(r => (r, carryingOut(r)))]);
            choices.TryAdd(choice.Id, choice);
            odds[choice.Id] = odds.GetValueOrDefault(choice.Id) + partition.Weights[car];
        }

        return [.. choices.Values
            .Where(c => odds[c.Id] >= LeastOdds)
            .OrderByDescending(c => Math.Round(odds[c.Id], 9)).ThenBy(c => c.Id, StringComparer.Ordinal)
            .Take(MostRepairs)
            .Select(c => (c, sets.Select(s => !s.IsEmpty && s.All(r => c.Steps.Any(d => d.Repair.Id == r.Id))).ToArray()))];
    }

    /// <summary>The problem itself, for comparing the planner with the exact optimum.</summary>
    public RepairProblem Problem => _problem;

    /// <summary>The plan.</summary>
    public Plan Solve(int nodes)
    {
        var search = new LookAhead(_problem, nodes, Slack);
        var ranked = search.Rank(_problem.Weights, _problem.Costs.Start, 0);
        var steps = ranked.Select(Step).Select(s => s with { Way = s.Way with { Cost = s.Way.Cost + _rightParts } }).ToList();
        var check = steps.FindIndex(s => s.Check is not null);
        if (steps[0].IsHandOver && check > 0 && steps[check].Way.Cost <= ClearlyCheaper * steps[0].Way.Cost)
        {
            steps.Insert(0, steps[check]);
            steps.RemoveAt(check + 1);
        }

        return new Plan([.. steps], search.NodesSpent);
    }

    private PlannedStep Step(PlannedAction planned) => planned.Action switch
    {
        LookAhead.HandOver => new PlannedStep(null, [], 0, 0, planned.Value),
        var action when action < _checks.Count => new PlannedStep(_checks[action].Check, [], _checks[action].Bits, 0, planned.Value),
        var action => new PlannedStep(null, [.. _repairs[action - _checks.Count].Steps.Select(s => s.Repair)], 0, CureOdds(action), planned.Value),
    };

    private double CureOdds(int action)
    {
        var odds = 0.0;
        for (var state = 0; state < _problem.StateCount; state++)
        {
            odds += _problem.Weights[state] * _problem.Repairs[action - _checks.Count].Cures[state];
        }

        return odds;
    }

    /// <summary>The first car of each group of like ones, and the groups' weights.</summary>
    private static (List<int> First, double[] Weights) Merged(Partition partition, IReadOnlyList<SeenCheck> checks)
    {
        var first = new List<int>();
        var weights = new List<double>();
        for (var car = 0; car < partition.Cars.Count; car++)
        {
            var group = first.FindIndex(f => partition.Classes[f] == partition.Classes[car] && AreAlike(checks, f, car));
            if (group < 0)
            {
                first.Add(car);
                weights.Add(partition.Weights[car]);
            }
            else
            {
                weights[group] += partition.Weights[car];
            }
        }

        return (first, [.. weights]);
    }

    private static bool AreAlike(IReadOnlyList<SeenCheck> checks, int first, int second)
    {
        foreach (var check in checks)
        {
            for (var outcome = 0; outcome < check.OutcomeCount; outcome++)
            {
                if (Math.Abs(check.Outcomes[(first * check.OutcomeCount) + outcome]
                    - check.Outcomes[(second * check.OutcomeCount) + outcome]) > Alike)
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static double[] Rows(SeenCheck check, List<int> cars)
    {
        var rows = new double[cars.Count * check.OutcomeCount];
        for (var i = 0; i < cars.Count; i++)
        {
            for (var outcome = 0; outcome < check.OutcomeCount; outcome++)
            {
                rows[(i * check.OutcomeCount) + outcome] = ((1 - Information.Slip) * check.Outcomes[(cars[i] * check.OutcomeCount) + outcome])
                    + (Information.Slip / check.OutcomeCount);
            }
        }

        return rows;
    }
}
