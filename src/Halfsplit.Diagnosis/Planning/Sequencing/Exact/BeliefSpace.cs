using System.Numerics;

namespace Halfsplit.Diagnosis.Planning.Sequencing.Exact;

/// <summary>
/// Packs what is known into a <see cref="Belief"/> and unpacks it into odds. The odds depend on what was seen only, never
/// on the order it was seen in, to the last digit.
/// </summary>
internal sealed class BeliefSpace
{
    private readonly RepairProblem _problem;
    private readonly int[] _shift;
    private readonly ulong[] _digit;

    /// <summary>For each check and state, the states in which it shows the same with the same odds.</summary>
    private readonly ulong[][] _alike;

    /// <summary>For each check and outcome, the states in which it may show.</summary>
    private readonly ulong[][] _possible;

    /// <summary>For each repair, the states it may cure and those it cures for certain.</summary>
    private readonly ulong[] _curable;
    private readonly ulong[] _certain;

    /// <exception cref="ArgumentException">More than 64 states, 32 repairs, or outcomes of all checks together that need more than 64 bits.</exception>
    public BeliefSpace(RepairProblem problem)
    {
        _problem = problem;
        if (problem.StateCount > 64 || problem.Repairs.Length > 32)
            throw new ArgumentException("At most 64 states and 32 repairs.", nameof(problem));
        _shift = new int[problem.Checks.Length];
        _digit = new ulong[problem.Checks.Length];
        var bits = 0;
        for (var check = 0; check < problem.Checks.Length; check++)
        {
            var width = 32 - BitOperations.LeadingZeroCount((uint)problem.Checks[check].OutcomeCount);
            _shift[check] = bits;
            _digit[check] = (1UL << width) - 1;
            bits += width;
        }

        if (bits > 64)
            throw new ArgumentException("The outcomes of the checks do not fit into 64 bits.", nameof(problem));
        _alike = [.. problem.Checks.Select(c => Alike(c, problem.StateCount))];
        _possible = [.. problem.Checks.Select(c => Possible(c, problem.StateCount))];
        _curable = [.. problem.Repairs.Select(r => Mask(r.Cures, c => c > 0))];
        _certain = [.. problem.Repairs.Select(r => Mask(r.Cures, c => c >= 1))];
    }

    /// <summary>Nothing seen, nothing tried.</summary>
    public Belief Start => new(Mask(_problem.Weights, w => w > 0), 0, 0, _problem.Costs.Start);

    /// <summary>What is known at a point of the work; its odds are not looked at, as they follow from the rest.</summary>
    public Belief Of(RepairStanding standing)
    {
        var belief = Start with { Position = standing.Position };
        for (var check = 0; check < standing.Shown.Length; check++)
        {
            if (standing.Shown[check] >= 0)
                belief = Shown(belief, check, standing.Shown[check], belief.Position);
        }

        for (var repair = 0; repair < standing.Failed.Length; repair++)
        {
            if (standing.Failed[repair])
                belief = NotCured(belief, repair, belief.Position);
        }

        return belief;
    }

    /// <summary>The outcome a check has shown; −1 if it was not done.</summary>
    public int OutcomeOf(in Belief belief, int check) => (int)((belief.Checks >> _shift[check]) & _digit[check]) - 1;

    public static bool HasFailed(in Belief belief, int repair) => (belief.Failed >> repair & 1) != 0;

    /// <summary>True if the check can show the same only, whatever is still possible.</summary>
    public bool TellsNothing(ulong alive, int check) =>
        alive == 0 || (alive & ~_alike[check][BitOperations.TrailingZeroCount(alive)]) == 0;

    /// <summary>True if the repair may cure something that is still possible.</summary>
    public bool MayCure(ulong alive, int repair) => (alive & _curable[repair]) != 0;

    /// <summary>What is known after a check has shown an outcome; no state is alive if it cannot.</summary>
    public Belief Shown(in Belief belief, int check, int outcome, int position) => new(
        belief.Alive & _possible[check][outcome], belief.Checks | (ulong)(outcome + 1) << _shift[check], belief.Failed, position);

    /// <summary>What is known after a repair did not cure.</summary>
    public Belief NotCured(in Belief belief, int repair, int position) =>
        new(belief.Alive & ~_certain[repair], belief.Checks, belief.Failed | 1U << repair, position);

    /// <summary>
    /// The same without what no longer matters: checks that would show the same in every state left, repairs that cure
    /// none of them. Ways that lead to equal odds and equal choices so meet in one belief.
    /// </summary>
    public Belief Reduced(in Belief belief)
    {
        var checks = belief.Checks;
        for (var check = 0; check < _alike.Length; check++)
        {
            if (TellsNothing(belief.Alive, check))
                checks &= ~(_digit[check] << _shift[check]);
        }

        var failed = belief.Failed;
        for (var repair = 0; repair < _curable.Length; repair++)
        {
            if (!MayCure(belief.Alive, repair))
                failed &= ~(1U << repair);
        }

        return belief with { Checks = checks, Failed = failed };
    }

    /// <summary>Odds of each state; they add up to one.</summary>
    public void Weigh(in Belief belief, Span<double> weights)
    {
        var reduced = Reduced(belief);
        var sum = 0.0;
        for (var state = 0; state < weights.Length; state++)
        {
            weights[state] = (belief.Alive >> state & 1) == 0 ? 0 : Weight(reduced, state);
            sum += weights[state];
        }

        for (var state = 0; state < weights.Length; state++)
            weights[state] /= sum;
    }

    private double Weight(in Belief belief, int state)
    {
        var weight = _problem.Weights[state];
        for (var check = 0; check < _shift.Length; check++)
        {
            if (OutcomeOf(belief, check) is >= 0 and var outcome)
                weight *= _problem.Checks[check].Odds[(state * _problem.Checks[check].OutcomeCount) + outcome];
        }

        for (var repair = 0; repair < _curable.Length; repair++)
        {
            if (HasFailed(belief, repair))
                weight *= 1 - _problem.Repairs[repair].Cures[state];
        }

        return weight;
    }

    private static ulong[] Alike(ProblemCheck check, int states)
    {
        var alike = new ulong[states];
        for (var first = 0; first < states; first++)
        {
            for (var second = 0; second < states; second++)
            {
                if (Row(check, first).SequenceEqual(Row(check, second)))
                    alike[first] |= 1UL << second;
            }
        }

        return alike;
    }

    private static ulong[] Possible(ProblemCheck check, int states)
    {
        var possible = new ulong[check.OutcomeCount];
        for (var state = 0; state < states; state++)
        {
            for (var outcome = 0; outcome < check.OutcomeCount; outcome++)
            {
                if (Row(check, state)[outcome] > 0)
                    possible[outcome] |= 1UL << state;
            }
        }

        return possible;
    }

    private static ReadOnlySpan<double> Row(ProblemCheck check, int state) =>
        check.Odds.AsSpan(state * check.OutcomeCount, check.OutcomeCount);

    private static ulong Mask(double[] values, Func<double, bool> isIn)
    {
        var mask = 0UL;
        for (var i = 0; i < values.Length; i++)
            mask |= isIn(values[i]) ? 1UL << i : 0;
        return mask;
    }
}
