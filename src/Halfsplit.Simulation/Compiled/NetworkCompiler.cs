using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Devices;

namespace Halfsplit.Simulation.Compiled;

/// <summary>Turns a circuit into nodes, branches and devices.</summary>
public static partial class NetworkCompiler
{
    /// <summary>Compiles a circuit; the result serves every fault, condition and arrangement.</summary>
    public static CircuitNetwork Compile(Circuit circuit)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var build = new Build(circuit);
        foreach (var wire in circuit.Wires)
        {
            var ohms = Math.Max(1e-5, WireTable.OhmsPerMetre(wire.Spec.Gauge.SquareMillimetres) * wire.Spec.Length);
            build.Plain(wire.From, wire.To, BranchUse.Wire, wire.Id, wire.Id, ohms, WireSpread(build, wire.Spec));
        }

        foreach (var part in circuit.Parts)
        {
            if (part.IsPluggable)
            {
                foreach (var name in part.Terminals)
                {
                    build.Plain(
                        new(part.Id, name), new(part.Id, name + "p"), BranchUse.Socket, part.Id, $"{part.Id}.{name}",
                        build.Defaults["socket.contact-ohms"]);
                }
            }

            Add(build, part);
        }

        build.Devices.Add(new PlainDevice([.. build.PlainBranches]));
        return new CircuitNetwork(
            circuit, build.Nodes, [.. build.Names], [.. build.Branches], [.. build.Devices]);
    }

    /// <summary>Spread of a wire's ohms: lengths in sheets are estimates. Common practice, no published source.</summary>
    private const double WireTolerance = 0.15;

    private const double LoadTolerance = 0.08;

    /// <summary>Spread of the logarithm of a wire's ohms; what is marked as a guess widens it, each for itself.</summary>
    private static double WireSpread(Build build, PathWire wire)
    {
        var gauge = wire.GaugeGuessed ? build.Spread("guessed.wire-gauge") : 0;
        var length = wire.LengthGuessed ? build.Spread("guessed.wire-length") : 0;
        return gauge == 0 && length == 0 ? WireTolerance : Math.Sqrt((WireTolerance * WireTolerance) + (gauge * gauge) + (length * length));
    }

    private static void Add(Build build, Part part)
    {
        switch (part)
        {
            case Battery battery:
                AddBattery(build, battery);
                break;
            case Connector connector:
                foreach (var cavity in build.Circuit.Cavities(connector.Id))
                {
                    build.Plain(
                        new(part.Id, cavity + "a"), new(part.Id, cavity + "b"), BranchUse.Cavity, part.Id,
                        $"{part.Id}.{cavity}", build.Defaults["connector.contact-ohms"]);
                }

                break;
            case Ground ground:
                build.Plain(
                    new(part.Id), new(ground.Metal), BranchUse.GroundPoint, part.Id, part.Id,
                    build.Defaults["ground.point-ohms"]);
                break;
            case Fuse fuse:
                AddFuse(build, fuse);
                break;
            case Breaker breaker:
                build.Devices.Add(new BreakerDevice(breaker, build.Element(
                    part, "1", "2", BranchUse.FuseElement, build.Defaults.BreakerOhms, 0.3)));
                break;
            case Ptc ptc:
                build.Devices.Add(new PtcDevice(
                    ptc, build.Element(part, "1", "2", BranchUse.FuseElement, ptc.ColdOhms, 0.3),
                    build.Defaults.PtcTrippedOhms));
                break;
            case Relay relay:
                AddRelay(build, relay);
                break;
            case Switch change:
                AddSwitch(build, change);
                break;
            case Module module:
                AddModule(build, module);
                break;
            case Diode diode:
                build.Devices.Add(new DiodeDevice(
                    part.Id, build.Element(part, "a", "k", BranchUse.Element, DiodeSeriesOhms, 0.3),
                    diode.ForwardVolts));
                break;
            case Alternator alternator:
                build.Devices.Add(new AlternatorDevice(
                    alternator,
                    build.Branch(
                        build.Node(new(part.Id, "B+")), build.Node(new(part.Id, "31")), BranchUse.Winding, part.Id,
                        part.Id, alternator.OutputResistance, 0.2),
                    build.Branch(
                        build.Node(new(part.Id, "D+")), build.Node(new(part.Id, "31")), BranchUse.Coil, part.Id,
                        part.Id, FieldOhms, 0.2)));
                break;
            case Load load:
                AddLoad(build, load);
                break;
            case Resistor resistor:
                build.PlainElement(part, "1", "2", resistor.Ohms);
                break;
            case Sensor sensor:
                AddSensor(build, sensor);
                break;
            default:
                break;
        }
    }

    /// <summary>Ohms of an alternator's field winding at rest; from memory.</summary>
    private const double FieldOhms = 4;

    /// <summary>Ohms of a conducting silicon diode beyond its forward volts; from memory.</summary>
    private const double DiodeSeriesOhms = 0.05;

    private static void AddBattery(Build build, Battery battery)
    {
        var pos = build.Node(new(battery.Id, "pos"));
        var source = build.Branch(
            pos, -1, BranchUse.Source, battery.Id, null, battery.InternalResistance, 0.4);
        var starter = build.Branch(pos, -1, BranchUse.Source, battery.Id, null, ElectricalLimits.OpenOhms, 0.05);
        build.Devices.Add(new BatteryDevice(battery, source, starter));
    }

    private static void AddFuse(Build build, Fuse fuse)
    {
        var pin = fuse.IsPluggable ? "p" : "";
        var branch = build.Branch(
            build.Node(new(fuse.Id, "1" + pin)), build.Node(new(fuse.Id, "2" + pin)), BranchUse.FuseElement,
            fuse.Id, fuse.Id, FuseTable.ColdOhms(fuse.Type, fuse.RatingAmps), 0.15);
        build.Devices.Add(new FuseDevice(fuse, branch));
    }

    private static void AddRelay(Build build, Relay relay)
    {
        int Pin(string name) => build.Node(new(relay.Id, name + "p"));
        var coil = build.Branch(
            Pin("86"), Pin("85"), BranchUse.Coil, relay.Id, relay.Id, relay.CoilOhms, 0.06);
        var suppression = -1;
        if (relay.Suppression == Suppression.Resistor)
        {
            suppression = build.Branch(
                Pin("86"), Pin("85"), BranchUse.Suppression, relay.Id, null, relay.SuppressionOhms, 0.05);
        }
        else if (relay.Suppression == Suppression.Diode)
        {
            build.Devices.Add(new DiodeDevice(
                relay.Id + "'s diode",
                build.Branch(Pin("85"), Pin("86"), BranchUse.Suppression, relay.Id, null, DiodeSeriesOhms, 0.3),
                build.Defaults.DiodeForwardVolts));
        }

        var contacts = ImmutableArray.CreateBuilder<RelayContactBranch>();
        foreach (var name in relay.Terminals.Where(t => t.StartsWith("87", StringComparison.Ordinal)))
        {
            contacts.Add(new RelayContactBranch(
                build.Branch(
                    Pin("30"), Pin(name), BranchUse.RelayContact, relay.Id, relay.Id, relay.ContactOhms,
                    build.Spread("relay.contact-ohms")),
                ClosedWhenPulled: name != "87a"));
        }

        build.Devices.Add(new RelayDevice(relay, coil, suppression, contacts.ToImmutable()));
    }

    private static void AddSwitch(Build build, Switch part)
    {
        var branches = ImmutableArray.CreateBuilder<(SwitchContact, int)>();
        foreach (var contact in part.Positions.Values.SelectMany(c => c).Distinct())
        {
            branches.Add((contact, build.Branch(
                build.Node(new(part.Id, contact.From)), build.Node(new(part.Id, contact.To)),
                BranchUse.SwitchContact, part.Id, part.Id, part.ContactOhms, build.Spread("switch.contact-ohms"))));
        }

        build.Devices.Add(new SwitchDevice(part, branches.ToImmutable()));
    }

    private static void AddModule(Build build, Module module)
    {
        var inner = build.InnerNode($"{module.Id}'s ground");
        foreach (var ground in module.Grounds)
        {
            build.Plain(
                build.Node(new(module.Id, ground)), inner, BranchUse.ModuleInside, module.Id, null, 0.002, 0.3);
        }

        var drawOhms = build.Circuit.Battery.NominalVolts / Math.Max(1e-3, module.OwnAmps);
        var feeds = module.Feeds.Select(feed =>
        {
            var node = build.Node(new(module.Id, feed));
            return (node, build.Branch(node, inner, BranchUse.ModuleInside, module.Id, null, drawOhms, 0.3));
        }).ToImmutableArray();
        var outputs = module.Outputs.Select(output =>
        {
            var node = build.Node(new(module.Id, output.Name));
            var target = $"{module.Id}.{output.Name}";
            var drive = output.Side == OutputSide.Low
                ? build.Branch(node, inner, BranchUse.ModuleOutput, module.Id, target, output.OnOhms, 0.2)
                : build.Branch(feeds[0].node, node, BranchUse.ModuleOutput, module.Id, target, output.OnOhms, 0.2);
            var bias = output.BiasVolts > 0
                ? build.Branch(node, inner, BranchUse.ModuleInside, module.Id, null, output.BiasOhms, 0.1)
                : -1;
            return new OutputBranches(output, drive, bias);
        }).ToImmutableArray();
        var inputs = module.Inputs.Select(input => new InputBranch(input, build.Branch(
            build.Node(new(module.Id, input.Name)), inner, BranchUse.ModuleInput, module.Id,
            $"{module.Id}.{input.Name}", input.PullOhms, 0.1))).ToImmutableArray();
        build.Devices.Add(new ModuleDevice(module, inner, feeds, outputs, inputs));
    }

    private static void AddSensor(Build build, Sensor sensor)
    {
        switch (sensor.Type)
        {
            case SensorType.Switch:
                build.PlainElement(
                    sensor, "1", "2", sensor.Position >= 0.5 ? sensor.Ohms : ElectricalLimits.OpenOhms);
                break;
            case SensorType.Ntc:
                var kelvin = 273.15 + 20;
                build.PlainElement(sensor, "1", "2", sensor.Ohms * Math.Exp(
                    sensor.BetaKelvin * ((1 / kelvin) - (1 / (273.15 + sensor.NominalCelsius)))));
                break;
            default:
                build.PlainElement(sensor, "supply", "signal", Math.Max(1, sensor.Ohms * (1 - sensor.Position)));
                build.PlainElement(sensor, "signal", "ground", Math.Max(1, sensor.Ohms * sensor.Position));
                break;
        }
    }

    private static void AddLoad(Build build, Load load)
    {
        switch (load)
        {
            case Motor motor:
                build.Devices.Add(new MotorDevice(motor, build.Element(
                    load, "pos", "neg", BranchUse.Winding, motor.WindingOhms, LoadTolerance)));
                break;
            case Starter starter:
                var main = build.InnerNode($"{starter.Id}'s motor");
                var feed = build.Node(new(load.Id, "30"));
                var control = build.Node(new(load.Id, "50"));
                var back = build.Node(new(load.Id, "31"));
                build.Devices.Add(new StarterDevice(
                    starter,
                    build.Branch(feed, main, BranchUse.RelayContact, load.Id, load.Id, 0.0005, 0.3),
                    build.Branch(main, back, BranchUse.Winding, load.Id, load.Id, starter.WindingOhms, 0.1),
                    build.Branch(control, main, BranchUse.Suppression, load.Id, null, starter.PullInOhms, 0.1),
                    build.Branch(control, back, BranchUse.Coil, load.Id, load.Id, starter.HoldInOhms, 0.1)));
                break;
            case Lamp lamp:
                foreach (var filament in lamp.Filaments)
                {
                    var target = lamp.Filaments.Length == 1 ? lamp.Id : $"{lamp.Id}.{filament.Terminal}";
                    build.Devices.Add(new LampDevice(lamp.Id, build.Branch(
                        build.Node(new(lamp.Id, filament.Terminal)), build.Node(new(lamp.Id, lamp.Common)),
                        BranchUse.Filament, lamp.Id, target, lamp.LampVolts * lamp.LampVolts / filament.Watts,
                        LoadTolerance), lamp.LampVolts));
                }

                break;
            case Led led:
                build.Devices.Add(new DiodeDevice(led.Id, build.Element(
                    load, "pos", "neg", BranchUse.Element, (led.RunVolts - led.ForwardVolts) / led.RunAmps, 0.1),
                    led.ForwardVolts));
                break;
            case Solenoid solenoid:
                build.PlainElement(load, "pos", "neg", solenoid.Ohms);
                if (solenoid.Suppression == Suppression.Diode)
                {
                    build.Devices.Add(new DiodeDevice(
                        load.Id + "'s diode",
                        build.Branch(
                            build.Node(new(load.Id, "neg")), build.Node(new(load.Id, "pos")), BranchUse.Suppression,
                            load.Id, null, DiodeSeriesOhms, 0.3),
                        build.Defaults.DiodeForwardVolts));
                }

                break;
            case Heater heater:
                build.PlainElement(load, "1", "2", heater.Ohms);
                break;
            default:
                break;
        }
    }
}
