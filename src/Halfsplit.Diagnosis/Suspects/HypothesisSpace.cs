using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Suspects;

/// <summary>
/// All cars that could stand behind a complaint: every fault mode in every degree that causes it, plus "none of these".
/// A fault that does not cause the complaint in the simulation is no suspect.
/// </summary>
public sealed class HypothesisSpace
{
    /// <summary>Chance that a person reports a load as dead that is weak, or the other way round; an assumption.</summary>
    private const double NearReport = 0.05;

    /// <summary>Chance that a load which fails in one way or another while parts chatter fails as reported; an assumption.</summary>
    private const double EitherWay = 0.15;

    /// <summary>A fault that leaves a load more than this share of what it has in the healthy car is not why it is weak; an assumption.</summary>
    private const double LoweredShare = 0.97;

    /// <summary>Amps out of a battery at rest that mean smoke; common practice, no published source.</summary>
    private const double FireAmps = 60;

    /// <summary>Thresholds of relays, motors and fuses differ from car to car; three draws stand for them. An assumption.</summary>
    internal const double EarlyThresholds = 0.87, LateThresholds = 1.13;

    private static readonly (double Factor, double Weight)[] ThresholdDraws = [(EarlyThresholds, 0.25), (1, 0.5), (LateThresholds, 0.25)];

    private readonly CircuitSimulator _simulator;
    private readonly Complaint _complaint;
    private readonly FailureHistory _history;
    private readonly NoticedEvidence? _noticed;

    /// <summary>How the load fares in a healthy car: at a fan's low speed it is weak by design.</summary>
    private readonly LoadState _healthy;

    /// <summary>The same pairs are tried again after each reading.</summary>
    private readonly Dictionary<(Fault, Fault), double> _reportedPairs = [];

    private HypothesisSpace(
        CircuitSimulator simulator, Complaint complaint, FailureHistory history, NoticedEvidence? noticed,
        ImmutableArray<Suspect> suspects, ImmutableArray<Hypothesis> hypotheses)
    {
        _simulator = simulator;
        _complaint = complaint;
        _history = history;
        _noticed = noticed;
        Suspects = suspects;
        Hypotheses = hypotheses;
        _healthy = Point([], 1).Load(complaint.Load);
    }

    /// <summary>The last is "none of these" in a space of single faults; pairs follow it.</summary>
    public ImmutableArray<Suspect> Suspects { get; }

    public ImmutableArray<Hypothesis> Hypotheses { get; }

    /// <summary>The single-fault space of a complaint.</summary>
    /// <param name="history">What finished jobs taught; null for the table's weights alone.</param>
    public static HypothesisSpace Create(CircuitSimulator simulator, Complaint complaint, FailureHistory? history = null)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        ArgumentNullException.ThrowIfNull(complaint);
        history ??= FailureHistory.None;
        var space = new HypothesisSpace(simulator, complaint, history, null, [], []);
        var suspects = ImmutableArray.CreateBuilder<Suspect>();
        var drafts = new List<Draft>();
        foreach (var mode in FaultCatalog.For(simulator))
        {
            var found = space.Cars(mode);
            if (found.Count == 0)
            {
                continue;
            }

            var weight = space.WeightOf(mode);
            // The weight of a mode is shared among all its degrees, those that cause no complaint included:
            // a joint that is usually only a little bad is a weaker suspect for a dead load.
            var share = weight / Math.Max(1, mode.Severities.Length);
            drafts.AddRange(found.Select(c => new Draft(suspects.Count, [c.Fault], c.Factor, share * c.Weight, c.Cell)));
            suspects.Add(Suspect.Of(mode));
        }

        var total = drafts.Sum(d => d.Weight);
        drafts.Add(new Draft(
            suspects.Count, [], 1, (total > 0 ? total : 1) * FailureWeights.NoneOfTheseShare, null));
        suspects.Add(Suspect.None);
        return new HypothesisSpace(simulator, complaint, history, null, suspects.ToImmutable(), Number(drafts, 0));
    }

    /// <summary>The same space of single faults with what was noticed weighed in before any reading.</summary>
    internal HypothesisSpace Noticing(NoticedEvidence noticed) => new(
        _simulator, _complaint, _history, noticed, Suspects, Weigh(Hypotheses, Suspects, noticed));

    /// <summary>Adds those of these pairs that cause the complaint together.</summary>
    internal HypothesisSpace WithPairs(IReadOnlyList<FaultPair> tried)
    {
        var suspects = Suspects.ToBuilder();
        var drafts = new List<Draft>();
        var totalSingle = Math.Max(1e-9, Suspects.Where(s => s.Modes.Length == 1).Sum(s => WeightOf(s.Modes[0])));
        foreach (var pair in tried)
        {
            var (firsts, seconds) = (pair.First, pair.Second);
            var weight = FailureWeights.PairShare * WeightOf(firsts.Mode) * WeightOf(seconds.Mode) / totalSingle * firsts.Share * seconds.Share;
            var found = false;
            foreach (var first in firsts.Faults)
            {
                foreach (var second in seconds.Faults)
                {
                    var reported = ReportedPair(first, second);
                    if (reported > 0.1)
                    {
                        drafts.Add(new Draft(
                            suspects.Count, [first, second], 1, weight * reported,
                            Cell(seconds.Mode, second, seconds.IsWide), Cell(firsts.Mode, first, firsts.IsWide)));
                        found = true;
                    }
                }
            }

            if (found)
            {
                suspects.Add(Suspect.Of(firsts.Mode, seconds.Mode));
            }
        }

        var all = suspects.ToImmutable();
        var pairs = Number(drafts, Hypotheses.Length);
        return new HypothesisSpace(
            _simulator, _complaint, _history, _noticed, all,
            Hypotheses.AddRange(_noticed is null ? pairs : Weigh(pairs, all, _noticed)));
    }

    private List<(Fault Fault, double Factor, double Weight, SeverityCell? Cell)> Cars(FaultMode mode)
    {
        var cars = new List<(Fault, double, double, SeverityCell?)>();
        var faults = mode.Faults().ToList();
        var points = faults.ConvertAll(f => Point([f], 1));
        for (var i = 0; i < faults.Count; i++)
        {
            var cell = Cell(mode, faults[i], wide: false);
            // Thresholds differ from car to car; that matters where the next degree already finds other states.
            var edge = (i > 0 && !points[i].HasSameStates(points[i - 1]))
                || (i + 1 < points.Count && !points[i].HasSameStates(points[i + 1]));
            if (!edge)
            {
                Add(points[i], faults[i], 1, 1, cell);
                continue;
            }

            foreach (var (factor, weight) in ThresholdDraws)
            {
                Add(factor == 1 ? points[i] : Point([faults[i]], factor), faults[i], factor, weight, cell);
            }
        }

        return cars;

        void Add(OperatingPoint point, Fault fault, double factor, double weight, SeverityCell? cell)
        {
            var reported = Reported(point);
            if (reported > 0 && !IsOnFire([fault]))
            {
                cars.Add((fault, factor, weight * reported, cell));
            }
        }
    }

    private OperatingPoint Point(ImmutableArray<Fault> faults, double factor) => _simulator.Simulate(
        new Arrangement(_complaint.Condition), faults, new SimulationOptions(factor));

    /// <summary>How likely a person with this car comes with this complaint; 0 where they would not.</summary>
    private double Reported(OperatingPoint point)
    {
        var state = point.Load(_complaint.Load);
        if (_complaint.Is == LoadCondition.Weak && _healthy.Condition == LoadCondition.Works && state.Condition != LoadCondition.Dead)
        {
            // Just above what counts as full work in the sheet's car it may be below it in this one, if the fault lowers it at all.
            var weak = state.Share < LoweredShare * _healthy.Share ? 1 - WordForecasts.FullWork(state) : 0;
            return weak >= NearReport ? weak : 0;
        }

        if (!point.IsSteady && state.Condition < _healthy.Condition && _complaint.Is < _healthy.Condition)
        {
            // Where parts chatter in the sheet's car one or the other of them wins in this one.
            return EitherWay;
        }

        return state.Condition == _complaint.Is ? 1
            : state.Condition >= _healthy.Condition || _complaint.Is == LoadCondition.Works ? 0 : NearReport;
    }

    private double ReportedPair(Fault first, Fault second)
    {
        if (!_reportedPairs.TryGetValue((first, second), out var reported))
        {
            ImmutableArray<Fault> faults = [first, second];
            reported = Reported(Point(faults, 1));
            _reportedPairs[(first, second)] = reported = reported > 0 && IsOnFire(faults) ? 0 : reported;
        }

        return reported;
    }

    /// <summary>A short with no fuse before it: not a car that waits for a meter.</summary>
    private bool IsOnFire(ImmutableArray<Fault> faults) =>
        faults.Any(f => f.Mode is FaultModes.ShortToGround or FaultModes.ShortToFeed)
        && _simulator.Simulate(new Arrangement(CheckCatalog.RestCondition(_simulator.Network.Circuit)), faults).BatteryAmps > FireAmps;

    private SeverityCell? Cell(FaultMode mode, Fault fault, bool wide)
    {
        if (fault.Severity is not { } severity || mode.Unit != SeverityUnit.Ohms)
        {
            return null;
        }

        // A degree read from readings lies between those of the mode: its cell is as wide as that of the nearest.
        var degrees = mode.Severities;
        var nearest = degrees.MinBy(d => Math.Abs(Math.Log(d / severity)));
        var index = degrees.IndexOf(nearest);
        var next = degrees[Math.Min(1, degrees.Length - 1)];
        var below = severity * (index > 0 ? degrees[index - 1] / nearest : nearest / next);
        var above = index + 1 < degrees.Length ? severity * degrees[index + 1] / nearest : severity * severity / below;
        // A cell reaches half-way to its neighbours; its spread is that of a uniform one, a little wider so that
        // neighbouring cells meet without a gap.
        var width = 0.5 * Math.Log(Math.Max(above, severity * 1.01) / Math.Min(below, severity / 1.01));
        var spread = 1.2 * width / Math.Sqrt(12) * (wide ? 3 : 1);
        var network = _simulator.Network;
        // Both contacts of a changeover relay and all of a switch are as bad as each other.
        ImmutableArray<(int, double)> moved = [.. network.BranchesOf(mode.Part).ToArray()
            .Where(branch => Moves(mode.Mode, network.Branches[branch].Use))
            .Select(branch => (branch, spread * (mode.Mode == FaultModes.Shorted ? 1 : severity / (network.Branches[branch].Ohms + severity))))];
        return moved.IsEmpty ? null : new SeverityCell(fault, moved);
    }

    private static bool Moves(string mode, BranchUse use) => mode == FaultModes.ContactResistive
        ? use is BranchUse.RelayContact or BranchUse.SwitchContact
        : use is not (BranchUse.Coil or BranchUse.Suppression);

    /// <summary>Its weight before any complaint, what finished jobs taught included.</summary>
    internal double WeightOf(FaultMode mode) =>
        FailureWeights.Of(mode, FaultPlace.EnvironmentOf(_simulator.Network.Circuit, mode)) * _history.FactorOf(mode);

    private static ImmutableArray<Hypothesis> Weigh(
        ImmutableArray<Hypothesis> cars, ImmutableArray<Suspect> suspects, NoticedEvidence noticed) =>
        [.. cars.Select(c => c with { LogPrior = c.LogPrior + noticed.LogLikelihood(suspects[c.Suspect], c) })];

    private static ImmutableArray<Hypothesis> Number(List<Draft> drafts, int first)
    {
        var numbered = ImmutableArray.CreateBuilder<Hypothesis>(drafts.Count);
        foreach (var draft in drafts)
        {
            numbered.Add(new Hypothesis(
                first + numbered.Count, draft.Suspect, draft.Faults, draft.Factor, Math.Log(draft.Weight), draft.Cell ?? draft.Beside)
            {
                Beside = draft.Cell is null ? null : draft.Beside,
            });
        }

        return numbered.ToImmutable();
    }

    private sealed record Draft(
        int Suspect, ImmutableArray<Fault> Faults, double Factor, double Weight, SeverityCell? Cell, SeverityCell? Beside = null);
}
