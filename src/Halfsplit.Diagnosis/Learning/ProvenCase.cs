using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Learning;

/// <summary>How much of a complaint the table's weights ascribe to a suspect.</summary>
/// <param name="Suspect">The suspect's id.</param>
/// <param name="Kind">Its kind and mode.</param>
/// <param name="Share">Share of all suspects, 0 to 1.</param>
public sealed record FaultShare(string Suspect, string Kind, double Share);

/// <summary>What the table's weights made one expect behind a complaint of a circuit, before anything was learned.</summary>
public sealed class CaseExpectation
{
    private readonly Circuit _circuit;
    private readonly ImmutableArray<FaultMode> _modes;

    private CaseExpectation(Circuit circuit, ImmutableArray<FaultMode> modes, ImmutableArray<FaultShare> shares)
    {
        _circuit = circuit;
        _modes = modes;
        Shares = shares;
    }

    public string Circuit => _circuit.Title;

    /// <summary>In the order of the suspects; they add up to one.</summary>
    public ImmutableArray<FaultShare> Shares { get; }

    /// <summary>Works out what is expected.</summary>
    public static CaseExpectation Of(Circuit circuit, Complaint complaint)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(complaint);
        var space = HypothesisSpace.Create(new CircuitSimulator(NetworkCompiler.Compile(circuit)), complaint);
        var weights = new double[space.Suspects.Length];
        foreach (var car in space.Hypotheses.Where(h => !h.IsNone))
        {
            weights[car.Suspect] += Math.Exp(car.LogPrior);
        }

        var total = weights.Sum();
        var modes = space.Suspects.Where(s => !s.IsNone).Select(s => s.Modes[0]).ToImmutableArray();
        return new CaseExpectation(
            circuit, modes,
            [.. modes.Select((m, i) => new FaultShare(m.Id, FailureHistory.KindOf(m), weights[i] / total))]);
    }

    /// <summary>True for the circuit of this title; case and blanks at the ends do not matter.</summary>
    public bool IsOf(string title) =>
        string.Equals(_circuit.Title.Trim(), (title ?? "").Trim(), StringComparison.OrdinalIgnoreCase);

    /// <summary>The table's weight of a suspect in its place; 0 where it is none behind this complaint.</summary>
    public double WeightOf(string suspect) => _modes.FirstOrDefault(m => m.Id == suspect) is { } mode
        ? FailureWeights.Of(mode, FaultPlace.EnvironmentOf(_circuit, mode))
        : 0;

    /// <summary>
    /// The case of a finished job. The fault is the suspect that was blamed when the repair that cured was done; of two
    /// faults at once the one that this repair mends. Where nobody was blamed it is the likeliest one that the repair mends.
    /// </summary>
    /// <param name="job">Names the job for good.</param>
    /// <param name="blamed">The suspect blamed; may be empty.</param>
    /// <param name="repair">Id of the repair that cured.</param>
    /// <returns>Null where the repair mends nothing that could be behind the complaint.</returns>
    public ProvenCase? Proven(string job, string blamed, string repair)
    {
        ArgumentNullException.ThrowIfNull(blamed);
        var named = blamed.Split(" + ");
        var mended = _modes.Select((mode, i) => (mode, i))
            .Where(m => RepairCatalog.For(_circuit, m.mode, []).Id == repair).Select(m => Shares[m.i]).ToList();
        var fault = mended.Find(s => named.Contains(s.Suspect))
            ?? mended.OrderByDescending(s => s.Share).ThenBy(s => s.Suspect, StringComparer.Ordinal).FirstOrDefault();
        return fault is null ? null : new ProvenCase(job, this, fault);
    }
}

/// <summary>A finished job: what was wrong, and what had been expected.</summary>
/// <param name="Job">Names the job for good, so that a copy of it does not count again.</param>
public sealed record ProvenCase(string Job, CaseExpectation Expected, FaultShare Fault);
