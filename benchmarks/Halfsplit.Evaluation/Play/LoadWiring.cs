using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Evaluation.Play;

/// <summary>
/// What a wiring diagram shows whoever follows it with a finger: how the load is fed, how its current returns, which relays
/// stand in the way, and how their coils are fed and switched.
/// </summary>
public sealed class LoadWiring
{
    /// <summary>A wire counts as live from this share of nominal volts.</summary>
    public const double LiveShare = 0.75;

    private readonly CircuitSimulator _simulator;
    private readonly OperatingPoint _healthy;

    public LoadWiring(CircuitSimulator simulator, Complaint complaint)
    {
        ArgumentNullException.ThrowIfNull(simulator);
        ArgumentNullException.ThrowIfNull(complaint);
        _simulator = simulator;
        Network = simulator.Network;
        Load = (Load)Network.Circuit[complaint.Load];
        _healthy = simulator.Simulate(new Arrangement(complaint.Condition), []);
        (Positive, Negative) = Driven(_healthy, Load);
        Feed = CurrentPath.Trace(_healthy, Network.NodeOf(Positive), upstream: true, Load.Id);
        Return = CurrentPath.Trace(_healthy, Network.NodeOf(Negative), upstream: false, Load.Id);
        Relays = [.. RelaysOn(Feed)];
        Fuses = [.. Feed.Owners.Select(Network.Circuit.Find).OfType<Fuse>()];
    }

    public CircuitNetwork Network { get; }

    public Load Load { get; }

    /// <summary>The load's terminals that drive it in the complaint's condition.</summary>
    public TerminalName Positive { get; }

    public TerminalName Negative { get; }

    /// <summary>From the load up to the battery.</summary>
    public CurrentPath Feed { get; }

    /// <summary>From the load down to the battery's negative post.</summary>
    public CurrentPath Return { get; }

    /// <summary>Relays whose contacts feed the load, nearest first.</summary>
    public ImmutableArray<Relay> Relays { get; }

    /// <summary>Fuses that feed the load, nearest first.</summary>
    public ImmutableArray<Fuse> Fuses { get; }

    /// <summary>How a relay's coil is fed and where its current goes.</summary>
    public (CurrentPath Feed, CurrentPath Return) CoilOf(Relay relay)
    {
        ArgumentNullException.ThrowIfNull(relay);
        // From outside the socket: the coil itself is no part of either way.
        return (
            CurrentPath.Trace(_healthy, Network.NodeOf(CoilFeed(relay)), upstream: true, null),
            CurrentPath.Trace(_healthy, Network.NodeOf(CoilReturn(relay)), upstream: false, null));
    }

    /// <summary>How a terminal is fed in the complaint's condition.</summary>
    public CurrentPath FeedOf(TerminalName terminal) => CurrentPath.Trace(_healthy, Network.NodeOf(terminal), upstream: true, terminal.Part);

    /// <summary>Where the current of a terminal goes in the complaint's condition.</summary>
    public CurrentPath ReturnOf(TerminalName terminal) => CurrentPath.Trace(_healthy, Network.NodeOf(terminal), upstream: false, terminal.Part);

    /// <summary>The coil's fed terminal, in the socket.</summary>
    public TerminalName CoilFeed(Relay relay)
    {
        ArgumentNullException.ThrowIfNull(relay);
        return IsFedAt86(relay) ? new(relay.Id, "86") : new(relay.Id, "85");
    }

    /// <summary>The coil's other terminal, in the socket.</summary>
    public TerminalName CoilReturn(Relay relay)
    {
        ArgumentNullException.ThrowIfNull(relay);
        return IsFedAt86(relay) ? new(relay.Id, "85") : new(relay.Id, "86");
    }

    /// <summary>Relays whose contacts are on a way, nearest first.</summary>
    public IEnumerable<Relay> RelaysOn(CurrentPath path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return path.Branches.Where(b => Network.Branches[b].Use == BranchUse.RelayContact)
            .Select(b => Network.Circuit[Network.Branches[b].Owner]).OfType<Relay>().Distinct();
    }

    /// <summary>How another load is fed in the healthy car; null where it does not work in this condition.</summary>
    public CurrentPath? FeedOf(Load load, string condition)
    {
        ArgumentNullException.ThrowIfNull(load);
        var point = _simulator.Simulate(new Arrangement(condition), []);
        return point.Load(load.Id).Condition == LoadCondition.Works
            ? CurrentPath.Trace(point, Network.NodeOf(Driven(point, load).Positive), upstream: true, load.Id)
            : null;
    }

    /// <summary>A motor that turns back and a lamp that is switched to ground at its filaments have their feed at the other terminal.</summary>
    private static (TerminalName Positive, TerminalName Negative) Driven(OperatingPoint point, Load load)
    {
        var (feed, back) = point.Driven(load);
        return point.Volts(feed) >= point.Volts(back) ? (feed, back) : (back, feed);
    }

    /// <summary>
    /// A condition one can hold in which this terminal of the healthy car is live; the complaint's own where that can be
    /// held, or where there is no other.
    /// </summary>
    public string HeldFor(TerminalName terminal, string commanded)
    {
        var conditions = Network.Circuit.Conditions;
        bool IsHeld(Condition c) => !c.NeedsHelper && c.AlternatorVolts is null && !c.EngineTurns;
        return Network.Circuit.FindCondition(commanded) is { } own && !IsHeld(own)
            && conditions.FirstOrDefault(c => IsHeld(c)
                && _simulator.Simulate(new Arrangement(c.Name), []).Volts(terminal) >= LiveShare * Network.Circuit.Battery.NominalVolts) is { } held
            ? held.Name
            : commanded;
    }

    private bool IsFedAt86(Relay relay) => _healthy.Volts(new(relay.Id, "86")) >= _healthy.Volts(new(relay.Id, "85"));
}
