using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Diagnosis;

/// <summary>
/// The engine's one façade: a circuit, a complaint, the readings so far; what to check next and what is wrong. The
/// terminal and the app call this and nothing below it. Deterministic: the same calls give the same answers on every
/// machine. Not thread-safe.
/// </summary>
public sealed partial class Investigation
{
    private readonly Forecaster _forecaster;
    private readonly HypothesisSpace _unnoticed;
    private readonly Planner _planner;
    private readonly ImmutableDictionary<string, Check> _allChecks;
    private readonly List<Entry> _entries = [];
    private ImmutableArray<Check> _offered;
    private ImmutableHashSet<string> _offeredWithout = [];
    private Assessment? _assessment;

    private Investigation(
        Circuit circuit, Complaint complaint, DiagnosisOptions options, Forecaster forecaster, HypothesisSpace singles, Planner planner,
        ImmutableDictionary<string, Check> allChecks)
    {
        Circuit = circuit;
        Complaint = complaint;
        Options = options;
        _forecaster = forecaster;
        _unnoticed = singles;
        _planner = planner;
        _allChecks = allChecks;
    }

    public Circuit Circuit { get; }

    public Complaint Complaint { get; }

    public DiagnosisOptions Options { get; }

    public CircuitNetwork Network => _forecaster.Network;

    /// <summary>Every outcome so far, withdrawn ones left out, in order.</summary>
    public IEnumerable<Observation> Observations => Assess().Observations;

    /// <summary>All suspects with their odds, likeliest first; they add up to one.</summary>
    public ImmutableArray<SuspectOdds> Suspects => Assess().Suspects;

    /// <summary>Opens an investigation.</summary>
    /// <param name="circuit">The circuit of the car.</param>
    /// <param name="complaint">What the person comes with.</param>
    /// <param name="options">What is at hand; null for the usual.</param>
    /// <param name="noticed">What was noticed before any measurement; its order does not matter.</param>
    /// <param name="history">What finished jobs taught; null for the table's weights alone.</param>
    /// <exception cref="ArgumentException">The complaint's load or condition is not in the circuit.</exception>
    public static Investigation Open(
        Circuit circuit, Complaint complaint, DiagnosisOptions? options = null, IEnumerable<Noticed>? noticed = null,
        FailureHistory? history = null)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(complaint);
        if (circuit.Find(complaint.Load) is not Load || circuit.FindCondition(complaint.Condition) is null)
        {
            throw new ArgumentException($"The circuit has no load {complaint.Load} or no condition \"{complaint.Condition}\".", nameof(complaint));
        }

        options ??= DiagnosisOptions.Default;
        var everything = options with
        {
            HasClamp = true, HasTestLamp = true, HasScanTool = true, HasSpareRelay = true, LeadMetres = 1000, Tools = default,
        };
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit), options.MeterInUse);
        var forecaster = new Forecaster(simulator, complaint.Load, options.CarsKept);
        var opened = new Investigation(
            circuit, complaint, options, forecaster, HypothesisSpace.Create(simulator, complaint, history), new Planner(forecaster, options),
            CheckCatalog.Generate(forecaster.Network, complaint, everything, []).ToImmutableDictionary(c => c.Id, StringComparer.Ordinal));
        foreach (var what in noticed ?? [])
        {
            opened.Notice(what.ToString(), what);
        }

        return opened;
    }

    /// <summary>
    /// The same circuit, complaint, tools and history from the start, nothing noticed, with what has been simulated so far
    /// kept: for the next of many cars of one sheet. The two must not be used at the same time.
    /// </summary>
    public Investigation Anew() => new(Circuit, Complaint, Options, _forecaster, _unnoticed, _planner, _allChecks);

    /// <summary>A check by its id: any that could ever be offered, repairs and proofs included. Null if there is none.</summary>
    public Check? FindCheck(string id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return _allChecks.GetValueOrDefault(id) ?? SpecialChecks().FirstOrDefault(c => c.Id == id) ?? FindProof(id);
    }

    /// <summary>Takes an outcome.</summary>
    /// <param name="entry">A name of the caller's for this entry; <see cref="Withdraw"/> uses it.</param>
    public void Record(string entry, Check check, ReadingValue value)
    {
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(value);
        Append(new Entry(entry, check, value, null));
    }

    /// <summary>The person can't do this check; with a place, nothing in that place.</summary>
    /// <param name="place">Name of a place or a part to give up; null to leave out only this check.</param>
    public void Skip(string entry, Check check, string? place = null)
    {
        ArgumentNullException.ThrowIfNull(check);
        Append(new Entry(entry, check, null, place));
    }

    /// <summary>Takes an entry back as if it had never been; false if there is no such entry.</summary>
    public bool Withdraw(string entry)
    {
        var removed = _entries.RemoveAll(e => e.Id == entry) > 0;
        _assessment = removed ? null : _assessment;
        return removed;
    }

    /// <summary>What a typed answer to this check may be, and what would be plausible.</summary>
    public ExpectedAnswer Expect(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var predicted = check.TakesNumber
            ? Expected(check, 12).Append(ExpectedHealthy(check)).Where(e => e.Mean is not null).Select(e => e.Mean!.Value).ToImmutableArray()
            : [];
        return check.Expected(predicted, Circuit.Battery.NominalVolts);
    }

    /// <summary>What the likeliest suspects would answer, the readings so far known.</summary>
    /// <param name="most">How many suspects at most.</param>
    public ImmutableArray<ExpectedReading> Expected(Check check, int most)
    {
        ArgumentNullException.ThrowIfNull(check);
        var assessment = Assess();
        return [.. assessment.Suspects
            .Where(s => !s.Suspect.IsNone)
            .Take(most)
            .Select(s =>
            {
                var car = assessment.LikeliestCar(s.Suspect);
                return ExpectedReading.Of(check, s, assessment.Posterior.HindsightOf(car).Of(_forecaster.Of(car, check, assessment.Repairs)));
            })];
    }

    /// <summary>What the healthy car would answer.</summary>
    public ExpectedReading ExpectedHealthy(Check check) => ExpectedReading.Of(
        check, null, Outlook.Of(_forecaster.Of(Safety.SafetyScreen.HealthyCar(), check, [])));

    private void Append(Entry entry)
    {
        _entries.Add(entry);
        _assessment = null;
    }

    private IEnumerable<Check> SpecialChecks() =>
        _singles.Suspects.Where(s => !s.IsNone)
            .Select(s => RepairOf(s.Modes[0]))
            .DistinctBy(r => r.Id)
            .Select(RepairCheck)
            .Append(PutBackCheck);

    private Repair RepairOf(Simulation.Faults.FaultMode mode) => RepairCatalog.For(Circuit, mode, []);

    /// <summary>One entry of the person: an outcome, or a check given up.</summary>
    private sealed record Entry(string Id, Check Check, ReadingValue? Value, string? GivenUp);
}
