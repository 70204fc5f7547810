using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Noticing;

/// <summary>
/// How likely a car shows a sign that people notice. What the simulation can tell it tells; for the rest there are shares
/// by kind of fault.
/// </summary>
internal sealed class Signs
{
    /// <summary>The sign that a part's own fault is what is wrong: a new part would have cured it.</summary>
    public const string OwnFault = "own-fault";

    /// <summary>The sign that the load is fed and does not turn.</summary>
    public const string Stalled = "stalled";

    /// <summary>How often a load that hums without turning is heard; an assumption.</summary>
    private const double HumHeard = 0.6;

    /// <summary>Share of what water brings out in a wet place that it brings out in a dry one; an assumption.</summary>
    private const double WetElsewhere = 0.25;

    /// <summary>Watts beyond the healthy car's in one small part from which it smells; an assumption.</summary>
    private const double BurningWatts = 5;

    private readonly Circuit _circuit;
    private readonly Complaint _complaint;
    private readonly CarSeen _healthy;
    private readonly ImmutableArray<Condition> _conditions;
    private readonly ImmutableArray<string> _clickers;
    private readonly ImmutableArray<(string Load, string Condition)> _others;
    private readonly ModuleCodes _codes;

    public Signs(CircuitSimulator simulator, Complaint complaint)
    {
        _circuit = simulator.Network.Circuit;
        _complaint = complaint;
        _healthy = new CarSeen(simulator, [], [], 1);
        _clickers = Clickers();
        _conditions = [.. _circuit.Conditions.Where(c => c.Name == complaint.Condition || c.IsPossibleWithout(complaint.Load))];
        _others = [.. _circuit.Parts.OfType<Load>()
            .Where(l => l.Id != complaint.Load && WorksIn(l.Id) is not null)
            .Select(l => (l.Id, WorksIn(l.Id)!))];
        _codes = new ModuleCodes(_circuit, _conditions, _healthy);
    }

    /// <summary>Probability, 0 to 1, that what was noticed is so in this car.</summary>
    public double Of(Noticed what, CarSeen car)
    {
        var point = car.In(_complaint.Condition);
        return what.Kind.Sign switch
        {
            "silent" => 1 - Math.Max(Clicks(car, point, null), Sound(point)),
            "clicks" => Clicks(car, point, what.About),
            "chatters" => Chatters(point, what.About) ? 1 : 0,
            Stalled => point.Load(_complaint.Load).Stalled ? 1 : 0,
            "fuse-gone" => Fuses(what.About).Any(f => point.IsBlown(f) || car.Has(f, FaultModes.Open)) ? 1 : 0,
            // A fuse that failed by age is cured by a new one; one that an overload took blows again.
            "fuse-blows" => Fuses(what.About).Any(f => point.IsBlown(f) && !car.Has(f, FaultModes.Open)) ? 1 : 0,
            "others-suffer" => _others.Any(o => (what.About ?? o.Load) == o.Load && !Works(car, o)) ? 1 : 0,
            "works" => _others.Where(o => o.Load == what.About).All(o => Works(car, o)) ? 1 : 0,
            "hot" => Math.Max(Stated("hot", car, what.About), Normal.Step((Watts(car, point, what.About) - WordForecasts.WarmWatts) / 0.4)),
            "burning" => Math.Max(Stated("burning", car, null), Normal.Step((Watts(car, point, null) - BurningWatts) / 1.0)),
            "wet" => car.Most(m => NoticedTable.ShareOf("wet", m.Kind, m.Mode)
                * (FaultPlace.EnvironmentOf(_circuit, m) == PlaceEnvironment.Wet ? 1 : WetElsewhere)),
            "worked-on" => car.Most(m => FaultPlace.Of(_circuit, m) == what.About ? 1 : 0),
            OwnFault => car.Most(m => IsCuredByNew(m, what.About!) ? 1 : 0),
            "code" => _codes.Any(car, what.About!),
            "code-open" => _codes.Of(car, what.About!, CodeClass.Open),
            "code-low" => _codes.Of(car, what.About!, CodeClass.Low),
            "code-high" => _codes.Of(car, what.About!, CodeClass.High),
            "supply-low" => _codes.SupplyLow(car, what.About!),
            var stated => what.Ohms is { } ohms ? Measured(stated, car, what, ohms) : Stated(stated, car, what.About),
        };
    }

    private static double Stated(string sign, CarSeen car, string? about) =>
        car.Most(m => about is null || m.Owner == about ? NoticedTable.ShareOf(sign, m.Kind, m.Mode) : 0);

    /// <summary>
    /// With the ohms that were measured: a fault whose own ohms are far from them is no reason for what speaks for such a fault, and one
    /// whose own ohms are as measured is not cleared by what speaks against.
    /// </summary>
    private static double Measured(string sign, CarSeen car, Noticed what, double ohms)
    {
        var speaksFor = what.Kind.IfSo > what.Kind.Otherwise;
        return car.Most(m =>
        {
            var share = m.Owner == what.About ? NoticedTable.ShareOf(sign, m.Kind, m.Mode) : 0;
            if (m.Mode == FaultModes.ContactOpen && m.Owner == what.About && ohms < PartFit.Of("ohms-open"))
            {
                // What conducted is not open: nothing speaks for it, and all that speaks against counts.
                return speaksFor ? 0 : 1;
            }

            return m.Mode != FaultModes.ContactResistive || car.SeverityOf(m) is not { } own ? share
                : share * (speaksFor ? PartFit.Likeness(ohms, own) : 1 - PartFit.Likeness(ohms, own));
        });
    }

    /// <summary>The part's own faults; not those of its socket, and not a module's reasons for doing nothing.</summary>
    private static bool IsCuredByNew(FaultMode mode, string part) =>
        mode.Owner == part && mode.Kind != "socket" && mode.Mode != FaultModes.NotCommanded;

    /// <summary>The relays that pull in when the condition begins; where none does, those that are in.</summary>
    private ImmutableArray<string> Clickers()
    {
        var condition = _circuit.FindCondition(_complaint.Condition)!;
        var pulled = _circuit.Parts.OfType<Relay>().Select(r => r.Id)
            .Where(r => _healthy.In(condition.Name).IsPulledIn(r)).ToImmutableArray();
        var fresh = condition.After is { } before
            ? [.. pulled.Where(r => !_healthy.In(before).IsPulledIn(r))]
            : pulled;
        return fresh.Length > 0 ? fresh : pulled;
    }

    private double Clicks(CarSeen car, OperatingPoint point, string? relay) =>
        Chatters(point, relay) || _clickers.Any(r => (relay ?? r) == r && Pulls(car, point, r))
            || (relay is not null && Pulls(car, point, relay)) ? 1 : 0;

    private static bool Pulls(CarSeen car, OperatingPoint point, string relay) =>
        point.IsPulledIn(relay) && !car.Has(relay, FaultModes.Welded, FaultModes.Stuck);

    private static bool Chatters(OperatingPoint point, string? relay) =>
        relay is null ? !point.IsSteady : point.Chatter.Contains(relay);

    /// <summary>A load that moves or sounds is heard; a lamp is not.</summary>
    private double Sound(OperatingPoint point)
    {
        var state = point.Load(_complaint.Load);
        return _circuit[_complaint.Load] is Lamp or Led ? 0
            : state.Condition != LoadCondition.Dead ? 1
            : state.Stalled ? HumHeard
            : 0;
    }

    private IEnumerable<string> Fuses(string? about) =>
        about is not null ? [about] : _circuit.Parts.OfType<Fuse>().Select(f => f.Id);

    /// <summary>Where a load shows whether it works: the complaint's condition, else the first in which a healthy car's does.</summary>
    private string? WorksIn(string load) => Works(_healthy, (load, _complaint.Condition))
        ? _complaint.Condition
        : _conditions.FirstOrDefault(c => Works(_healthy, (load, c.Name)))?.Name;

    private static bool Works(CarSeen car, (string Load, string Condition) other) =>
        car.In(other.Condition).Load(other.Load).Condition == LoadCondition.Works;

    /// <summary>The most heat beyond the healthy car's in one joint or contact.</summary>
    private double Watts(CarSeen car, OperatingPoint point, string? about)
    {
        var healthy = _healthy.In(_complaint.Condition);
        var branches = point.Network.Branches;
        var most = 0.0;
        for (var i = 0; i < branches.Length; i++)
        {
            var isSmall = branches[i].Use is BranchUse.Cavity or BranchUse.Socket or BranchUse.GroundPoint
                || (about is null && branches[i].Use is BranchUse.Wire or BranchUse.RelayContact or BranchUse.SwitchContact);
            if (isSmall && (about is null || branches[i].Owner == about))
            {
                most = Math.Max(most, Heat(point, i) - Heat(healthy, i));
            }
        }

        return most;
    }

    private static double Heat(OperatingPoint point, int branch)
    {
        var amps = point.Amps(branch);
        return amps * amps * point.Ohms(branch);
    }
}
