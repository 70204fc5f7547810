using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Checks;

/// <summary>
/// Every check that can be done on a circuit with what is at hand. Nothing is written by hand: checks follow from the
/// parts, the wiring and the conditions.
/// </summary>
public sealed partial class CheckCatalog
{
    private readonly CircuitNetwork _network;
    private readonly Complaint _complaint;
    private readonly DiagnosisOptions _options;
    private readonly ImmutableHashSet<string> _unreachable;
    private readonly Dictionary<string, Check> _checks = new(StringComparer.Ordinal);
    private readonly string _keyOff;

    private CheckCatalog(
        CircuitNetwork network, Complaint complaint, DiagnosisOptions options, ImmutableHashSet<string> unreachable)
    {
        _network = network;
        _complaint = complaint;
        _options = options;
        _unreachable = unreachable;
        _keyOff = RestCondition(network.Circuit);
    }

    /// <summary>All checks, in the order of their ids.</summary>
    /// <param name="unreachable">Names of places and parts the person cannot reach.</param>
    public static ImmutableArray<Check> Generate(
        CircuitNetwork network, Complaint complaint, DiagnosisOptions options, ImmutableHashSet<string> unreachable)
    {
        ArgumentNullException.ThrowIfNull(network);
        ArgumentNullException.ThrowIfNull(complaint);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(unreachable);
        var catalog = new CheckCatalog(network, complaint, options, unreachable);
        catalog.AddAll();
        return [.. catalog._checks.Values.OrderBy(c => c.Id, StringComparer.Ordinal)];
    }

    /// <summary>The condition in which nothing is switched on: where ohms may be measured.</summary>
    public static string RestCondition(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var rest = circuit.Conditions.FirstOrDefault(c =>
            c.Settings.Count == 0 && c.StarterAmps is null && c.AlternatorVolts is null && !c.EngineTurns);
        return (rest ?? circuit.Conditions[0]).Name;
    }

    /// <summary>The check that reproduces the complaint: look or listen at the load in its condition.</summary>
    public static Check Reproduce(Circuit circuit, Complaint complaint, CheckKind? kind = null)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(complaint);
        return WorkCheck(circuit[complaint.Load], complaint.Condition, kind);
    }

    /// <summary>The check that reads the battery's posts at rest, which proves the meter and its leads too.</summary>
    public static Check ReadPosts(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var battery = circuit.Battery.Id;
        return Check.Create(
            CheckKind.Reading, CheckSubject.Number, new Arrangement(RestCondition(circuit)),
            new Probe(Instrument.Volts, new(battery, "pos"), new(battery, "neg")));
    }

    private static Check WorkCheck(Part load, string condition, CheckKind? kind = null)
    {
        var heard = load is Motor or Solenoid or Starter or Heater { Sounds: true };
        return Check.Create(
            kind ?? (heard ? CheckKind.Listen : CheckKind.Look), CheckSubject.LoadWork, new Arrangement(condition),
            new Probe(heard ? Instrument.Ear : Instrument.Eye, null, null, load.Id));
    }

    private void AddAll()
    {
        if (CanReach(_network.Circuit.Battery))
        {
            Add(ReadPosts(_network.Circuit));
        }

        AddObservations();
        foreach (var condition in Conditions)
        {
            AddReadings(new Arrangement(condition.Name), everywhere: true);
        }

        foreach (var part in _network.Circuit.Parts.Where(CanReach))
        {
            switch (part)
            {
                case Connector:
                    AddUnplugged(part);
                    break;
                case Relay relay:
                    AddRelay(relay);
                    break;
                case Fuse { IsPluggable: true } fuse:
                    AddFuse(fuse);
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>The conditions this car can be brought into: none that needs the dead load.</summary>
    private IEnumerable<Condition> Conditions => _network.Circuit.Conditions.Where(c =>
        c.Name == _complaint.Condition || _complaint.Is != LoadCondition.Dead || c.IsPossibleWithout(_complaint.Load));

    /// <summary>What can be seen, heard and felt with everything in place.</summary>
    private void AddObservations()
    {
        var circuit = _network.Circuit;
        foreach (var condition in Conditions)
        {
            foreach (var load in circuit.Parts.OfType<Load>())
            {
                Add(WorkCheck(load, condition.Name));
            }
        }

        foreach (var part in circuit.Parts.Where(CanReach))
        {
            var energized = new Arrangement(_complaint.Condition);
            switch (part)
            {
                case Relay:
                    Add(CheckKind.Listen, CheckSubject.RelayClick, energized, Instrument.Ear, part.Id);
                    break;
                case Fuse:
                    Add(CheckKind.Look, CheckSubject.FuseLook, new Arrangement(_keyOff), Instrument.Eye, part.Id);
                    break;
                case Connector or Ground:
                    Add(CheckKind.Look, CheckSubject.PinFit, new Arrangement(_keyOff), Instrument.Eye, part.Id);
                    Add(CheckKind.Look, CheckSubject.JointHeat, energized, Instrument.Eye, part.Id);
                    Add(CheckKind.Look, CheckSubject.Wiggle, energized, Instrument.Volts, part.Id);
                    break;
                case Module module when module.Scan && _options.HasScanTool:
                    foreach (var output in module.Outputs)
                    {
                        var name = $"{module.Id}.{output.Name}";
                        Add(CheckKind.Look, CheckSubject.ScanCommand, energized, Instrument.Eye, name);
                        if (output.BiasVolts > 0)
                        {
                            Add(CheckKind.Look, CheckSubject.ScanCode, energized, Instrument.Eye, name);
                        }
                    }

                    break;
                default:
                    break;
            }
        }
    }

    private void AddUnplugged(Part connector)
    {
        var live = new Arrangement(_complaint.Condition).Unplug(connector.Id);
        var rest = new Arrangement(_keyOff).Unplug(connector.Id);
        AddReadings(live, everywhere: false, connector.Id);
        AddOhms(rest, connector.Id);
        if (!_options.HasTestLamp)
        {
            return;
        }

        foreach (var load in _network.Circuit.Parts.OfType<Load>().Where(l => l is not Starter))
        {
            foreach (var (feed, back) in HarnessSide(connector, load))
            {
                var watts = StandardLamp(load.RatedAmps * load.RatedVolts);
                Add(CheckKind.Reading, CheckSubject.LampGlow, live, Instrument.TestLamp, load.Id, feed, back, watts);
                Add(CheckKind.Reading, CheckSubject.Number, live, Instrument.VoltsLowImpedance, null, feed, back);
            }
        }
    }

    private void AddRelay(Relay relay)
    {
        var energized = new Arrangement(_complaint.Condition);
        var live = energized.Remove(relay.Id);
        var rest = new Arrangement(_keyOff).Remove(relay.Id);
        AddReadings(live, everywhere: false, relay.Id);
        AddReadings(rest, everywhere: false, relay.Id);
        Add(CheckKind.Reading, CheckSubject.Number, rest, Instrument.Ohms, null, new(relay.Id, "86p"), new(relay.Id, "85p"));
        foreach (var contact in relay.Terminals.Where(t => t.StartsWith("87", StringComparison.Ordinal)))
        {
            // A fuse blows again through a short that only the relay connects.
            Add(CheckKind.Reading, CheckSubject.Number, rest, Instrument.Ohms, null, new(relay.Id, contact), new(Metal.Body));
        }

        Add(CheckKind.Reading, CheckSubject.Number, live, Instrument.Volts, null, new(relay.Id, "86"), new(relay.Id, "85"));
        if (_options.HasTestLamp)
        {
            Add(CheckKind.Reading, CheckSubject.LampGlow, live, Instrument.TestLamp, null, new(relay.Id, "86"), new(relay.Id, "85"));
        }

        Add(CheckKind.Bench, CheckSubject.BenchRelay, rest, Instrument.Eye, relay.Id);
        AddSocketLooks(rest, relay);
        if (_options.HasSpareRelay)
        {
            Add(CheckKind.Swap, CheckSubject.SwapRelay, energized, Instrument.Ear, relay.Id);
        }

        if (relay.Contacts == RelayContacts.Break)
        {
            return;
        }

        foreach (var condition in Conditions.Where(c => c.Name == _complaint.Condition || IsHeldKeyOn(c)))
        {
            var bridged = new Arrangement(condition.Name).Remove(relay.Id)
                .WithJumper(new(relay.Id, "30"), new(relay.Id, "87"));
            Add(Check.Create(
                CheckKind.Listen, CheckSubject.LoadWork, bridged,
                new Probe(Instrument.Ear, null, null, _complaint.Load)));
            AddReadings(bridged, everywhere: true);
        }
    }

    private void AddFuse(Fuse fuse)
    {
        var live = new Arrangement(_complaint.Condition).Remove(fuse.Id);
        var rest = new Arrangement(_keyOff).Remove(fuse.Id);
        AddReadings(live, everywhere: false, fuse.Id);
        AddSocketLooks(rest, fuse);
        Add(CheckKind.Reading, CheckSubject.Buzzer, rest, Instrument.Continuity, null, new(fuse.Id, "1p"), new(fuse.Id, "2p"));
        Add(CheckKind.Reading, CheckSubject.Number, rest, Instrument.Ohms, null, new(fuse.Id, "2"), new(Metal.Body));
        Add(CheckKind.Reading, CheckSubject.Number, rest, Instrument.Ohms, null, new(fuse.Id, "1"), new(Metal.Body));
        if (_options.HasTestLamp)
        {
            // A lamp in place of the fuse shows a short and bears it; unplugging branches then finds where.
            AddLampForFuse(fuse, live);
            AddLampForFuse(fuse, rest);
            foreach (var connector in _network.Circuit.Parts.OfType<Connector>().Where(CanReach))
            {
                AddLampForFuse(fuse, live.Unplug(connector.Id));
            }

            foreach (var relay in _network.Circuit.Parts.OfType<Relay>().Where(CanReach))
            {
                AddLampForFuse(fuse, live.Remove(relay.Id));
            }
        }

        if (fuse.RatingAmps <= _options.MeterInUse.JackAmps)
        {
            Add(CheckKind.Reading, CheckSubject.Number, live, Instrument.AmpsInline, null, new(fuse.Id, "1"), new(fuse.Id, "2"));
        }
    }

    /// <summary>With the relay or fuse pulled, each terminal of its socket can be looked at.</summary>
    private void AddSocketLooks(Arrangement rest, Part part)
    {
        foreach (var terminal in part.Terminals)
        {
            Add(CheckKind.Look, CheckSubject.PinFit, rest, Instrument.Eye, $"{part.Id}.{terminal}");
        }
    }

    private void AddLampForFuse(Fuse fuse, Arrangement arrangement) => Add(
        CheckKind.Reading, CheckSubject.LampGlow, arrangement, Instrument.TestLamp, null,
        new(fuse.Id, "1"), new(fuse.Id, "2"), 21 * Scale * Scale);

    private double Scale => _network.Circuit.Battery.NominalVolts / 12;

    private bool IsHeldKeyOn(Condition condition) =>
        condition.Settings.Count > 0 && !condition.NeedsHelper && condition.AlternatorVolts is null && !condition.EngineTurns;
}
