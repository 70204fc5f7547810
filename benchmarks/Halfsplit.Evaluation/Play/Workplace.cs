using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Evaluation.Cars;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Play;

/// <summary>
/// What all players of one complaint share: the sheet, the tools, the checks on offer, the repairs there are and the proof
/// of a repair. Not thread-safe: one for each thread.
/// </summary>
public sealed class Workplace
{
    private readonly Dictionary<string, ReadingValue> _healthyAnswers = new(StringComparer.Ordinal);
    private readonly PracticeCar _healthy;
    private readonly ImmutableArray<FaultMode> _modes;

    public Workplace(Circuit circuit, Complaint complaint, Variant variant)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(complaint);
        ArgumentNullException.ThrowIfNull(variant);
        Circuit = circuit;
        Complaint = complaint;
        Variant = variant;
        // Twice the minutes at the same price of an hour is the same to whoever weighs them as twice the price.
        Options = DiagnosisOptions.Default with
        {
            CarsKept = 2_000_000,
            Economy = Economy.Default with { HourValue = Economy.Default.HourValue * variant.Minutes },
        };
        Opened = Investigation.Open(circuit, complaint, Options);
        Proving = Opened.Anew();
        Simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit), Options.MeterInUse);
        _healthy = PracticeCar.Of(Simulator, complaint, Options.MeterInUse, [], null);
        _modes = FaultCatalog.For(Simulator);
        Wiring = new LoadWiring(Simulator, complaint);
        Offered = CheckCatalog.Generate(Simulator.Network, complaint, Options, [])
            .ToImmutableDictionary(c => c.Id, StringComparer.Ordinal);
        Prior = [.. Opened.Suspects.Where(s => !s.Suspect.IsNone)
            .GroupBy(s => RepairOf(s.Suspect.Modes[0]))
            .Select(g => (g.Key, g.Sum(s => s.Odds)))
            .OrderByDescending(r => Math.Round(r.Item2, 9)).ThenBy(r => r.Key.Id, StringComparer.Ordinal)];
    }

    public Circuit Circuit { get; }

    public Complaint Complaint { get; }

    public Variant Variant { get; }

    public DiagnosisOptions Options { get; }

    /// <summary>The engine with nothing entered; start anew from it.</summary>
    public Investigation Opened { get; }

    public CircuitSimulator Simulator { get; }

    public LoadWiring Wiring { get; }

    /// <summary>Every check that can be done with the tools at hand.</summary>
    public ImmutableDictionary<string, Check> Offered { get; }

    /// <summary>Repairs by how likely each is before anything is measured, likeliest first.</summary>
    public ImmutableArray<(Repair Repair, double Odds)> Prior { get; }

    /// <summary>Only for the proof of repairs; empty between them.</summary>
    internal Investigation Proving { get; }

    /// <summary>The repair of a way to fail.</summary>
    public Repair RepairOf(FaultMode mode) => RepairCatalog.For(Circuit, mode, []);

    /// <summary>The repair of a fault.</summary>
    public Repair? RepairOf(Fault fault) => ModeOf(fault) is { } mode ? RepairOf(mode) : null;

    /// <summary>The way to fail that a fault is an example of; another of the same part where the sheet has none such.</summary>
    public FaultMode? ModeOf(Fault fault)
    {
        ArgumentNullException.ThrowIfNull(fault);
        return _modes.FirstOrDefault(m => m.Part == fault.Part && m.Mode == fault.Mode)
            ?? _modes.FirstOrDefault(m => m.Part == fault.Part);
    }

    /// <summary>
    /// Repairs of whatever lies on these branches and could cause the complaint, by how often such things fail.
    /// </summary>
    public IEnumerable<Repair> RepairsOn(IEnumerable<int> branches)
    {
        ArgumentNullException.ThrowIfNull(branches);
        var network = Simulator.Network;
        var pieces = branches.Select(b => network.Branches[b]).ToList();
        var targets = pieces.Select(b => b.Target).OfType<string>().ToHashSet(StringComparer.Ordinal);
        // A socket's terminal is not the fuse that sits in it.
        var owners = pieces.Where(b => b.Use is not BranchUse.Socket and not BranchUse.Wire).Select(b => b.Owner).ToHashSet(StringComparer.Ordinal);
        return _modes.Where(m => targets.Contains(m.Part)
                || (m.Kind is not "wire" and not "cavity" and not "socket" && owners.Contains(m.Owner)))
            .GroupBy(RepairOf)
            .Where(g => Prior.Any(p => p.Repair.Id == g.Key.Id))
            // Where volts are lost in a piece it is no short that loses them.
            .OrderByDescending(g => g.Sum(m => m.Mode is FaultModes.ShortToGround or FaultModes.ShortToFeed
                ? 0 : FailureWeights.Of(m, FaultPlace.EnvironmentOf(Circuit, m))))
            .ThenBy(g => g.Key.Id, StringComparer.Ordinal)
            .Select(g => g.Key);
    }

    /// <summary>The repair as something that is done from where the car stands.</summary>
    public Check CheckOf(Repair repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        return Check.Create(
            CheckKind.Repair, CheckSubject.Repair, new Arrangement(CheckCatalog.RestCondition(Circuit)),
            new Probe(Instrument.Eye, null, null, repair.Target), repair.Id);
    }

    /// <summary>A volts check that the tools at hand allow; null where they don't.</summary>
    public Check? Volts(Arrangement arrangement, TerminalName red, TerminalName black) =>
        Find(Check.Create(CheckKind.Reading, CheckSubject.Number, arrangement, new Probe(Instrument.Volts, red, black)));

    /// <summary>The same check if it is on offer; null otherwise.</summary>
    public Check? Find(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return Offered.GetValueOrDefault(check.Id);
    }

    /// <summary>What the healthy car of the sheet would answer, without noise.</summary>
    public ReadingValue Healthy(Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return _healthyAnswers.TryGetValue(check.Id, out var known) ? known : _healthyAnswers[check.Id] = _healthy.Answer(check);
    }
}
