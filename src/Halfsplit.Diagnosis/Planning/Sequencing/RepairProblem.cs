namespace Halfsplit.Diagnosis.Planning.Sequencing;

/// <summary>
/// A small, finite problem of choosing checks and repairs: what the planner and the exact solver both work on. Exactly
/// one state holds. A check shows one of its outcomes; a repair is tried, seen to cure or not, and a cure ends the work.
/// Handing over ends it at any time. The aim is the least expected cost to the end.
/// </summary>
/// <param name="Weights">Odds of each state beforehand; they add up to one.</param>
/// <param name="Checks">What can be observed.</param>
/// <param name="Repairs">What can be tried.</param>
/// <param name="Costs">What an action costs from where things stand, and where it leaves them.</param>
/// <param name="HandOver">Cost of ending without a cure, whatever the state; infinite where that is not allowed.</param>
internal sealed record RepairProblem(
    double[] Weights, ProblemCheck[] Checks, ProblemRepair[] Repairs, IChangeCosts Costs, double HandOver)
{
    /// <summary>Number of states.</summary>
    public int StateCount => Weights.Length;

    /// <summary>Actions are numbered checks first, then repairs.</summary>
    public int ActionCount => Checks.Length + Repairs.Length;
}

/// <summary>A check of a <see cref="RepairProblem"/>. Done twice it shows the same again.</summary>
/// <param name="OutcomeCount">How many outcomes it has.</param>
/// <param name="Odds">Probability of outcome o in state s at <c>[s * OutcomeCount + o]</c>; each row adds up to one. Independent of other checks, given the state.</param>
internal sealed record ProblemCheck(int OutcomeCount, double[] Odds);

/// <summary>A repair of a <see cref="RepairProblem"/>. Tried twice it cures no more than once.</summary>
/// <param name="Cures">Probability that it cures in each state.</param>
/// <param name="WrongCost">What it costs in addition when it does not cure.</param>
internal sealed record ProblemRepair(double[] Cures, double WrongCost);

/// <summary>Costs that depend on how things stand: places open, parts unplugged, key on. Positions are numbered from 0.</summary>
internal interface IChangeCosts
{
    /// <summary>How things stand at first.</summary>
    int Start { get; }

    /// <summary>Cost of an action from a position; above 0.</summary>
    double Cost(int position, int action);

    /// <summary>Minutes in it, for show.</summary>
    double Minutes(int position, int action) => 0;

    /// <summary>What has to be bought for it, for show.</summary>
    double Price(int action) => 0;

    /// <summary>How things stand after it.</summary>
    int After(int position, int action);
}
