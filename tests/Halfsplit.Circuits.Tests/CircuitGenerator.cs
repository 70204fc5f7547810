using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Tests;

/// <summary>
/// Random circuits that could stand in a car: a battery, a main fuse, an ignition switch, a control module, straps, and
/// a handful of branches, each with some load, some way to switch it, and perhaps a plug, a fuse, a series part.
/// Every kind of part occurs. Needs no other file, so other test projects can link it.
/// </summary>
internal static class CircuitGenerator
{
    private const int Loads = 7;
    private const int Switchings = 9;
    private const int SeriesParts = 6;

    /// <summary>What a branch is made of; the values are shares of the ranges its parts allow.</summary>
    private sealed record Branch(int Load, int Switching, int Series, bool Fused, int Plug, bool Feet, bool[] Said, double[] Values);

    private static readonly Gen<Branch> Branches =
        Gen.Select(
            Gen.Int[0, Loads - 1], Gen.Int[0, Switchings - 1], Gen.Int[0, SeriesParts - 1], Gen.Bool, Gen.Int[0, 2], Gen.Bool,
            Gen.Bool.Array[8], Gen.OneOf(Gen.Double[0, 1], Gen.Int[0, 20].Select(n => n / 20.0)).Array[16],
            (load, switching, series, fused, plug, feet, said, values) =>
                new Branch(load, switching, series, fused, plug, feet, said, values));

    /// <summary>Circuits of one to six branches on 12 V or 24 V.</summary>
    public static Gen<Circuit> Circuits { get; } =
        Gen.Select(Branches.Array[1, 6], Gen.Bool, Gen.Bool, Gen.Bool, (branches, truck, starter, alternator) =>
            new Builder(truck ? 24 : 12, starter, alternator).Build(branches));

    private sealed class Builder(double supply, bool hasStarter, bool hasAlternator)
    {
        private readonly ImmutableArray<Part>.Builder _parts = ImmutableArray.CreateBuilder<Part>();
        private readonly ImmutableArray<WiringPath>.Builder _paths = ImmutableArray.CreateBuilder<WiringPath>();
        private readonly ImmutableArray<ModuleOutput>.Builder _outputs = ImmutableArray.CreateBuilder<ModuleOutput>();
        private readonly ImmutableArray<ModuleInput>.Builder _inputs = ImmutableArray.CreateBuilder<ModuleInput>();
        private readonly SortedDictionary<string, string> _on = new(StringComparer.Ordinal) { ["IGN"] = "on" };
        private readonly List<string> _loads = [];

        public Circuit Build(Branch[] branches)
        {
            Frame();
            for (var i = 0; i < branches.Length; i++)
            {
                Add(branches[i], i + 1);
            }

            _parts.Add(new Module(
                Note("ECU", "control box"), ["30", "15"], ["31"], _outputs.ToImmutable(), _inputs.ToImmutable(),
                supply / 2, 0.15, branches[0].Said[0]));
            var draft = new CircuitDraft(
                branches[0].Said[1] ? "A circuit: \"random\", # and all" : "Random circuit",
                _parts.ToImmutable(), _paths.ToImmutable(), Places(branches[0]), Conditions(branches[0]),
                [.. _loads.Select(l => new Complaint($"{l} does nothing", l, LoadCondition.Dead, "everything on"))],
                branches[0].Said[2] ? ["hot parts", "moving: parts"] : [],
                branches[0].Said[3] ? "Two lines,\nwith 'quotes' and a \\ too." : null);
            var built = CircuitBuilder.Build(draft);
            return built.Circuit
                ?? throw new InvalidOperationException(string.Join("; ", built.Problems.Select(p => p.Message.ToString())));
        }

        private void Frame()
        {
            _parts.Add(new Battery(Note("BAT"), supply, supply * 1.05, 0.008 * supply / 12));
            _parts.Add(new Fuse(Note("F0", "engine bay box") with { Slot = "A0" }, 100, FuseType.Link));
            _parts.Add(new Splice(Note("BUS")));
            _parts.Add(new Fuse(Note("FI"), 20, FuseType.BladeMini));
            _parts.Add(new Switch(
                Note("IGN"), ["30", "15", "50"],
                ImmutableSortedDictionary.Create<string, ImmutableArray<SwitchContact>>(StringComparer.Ordinal)
                    .Add("off", []).Add("on", [new("30", "15")]).Add("start", [new("30", "15"), new("30", "50")]),
                "off", 0.005, false));
            _parts.Add(new Splice(Note("KEY")));
            _parts.Add(new Metal(Note("ENG")));
            _parts.Add(new Ground(Note("G0"), "ENG"));
            Path(At("BODY"), Wire(25, 0.4, "BK"), At("BAT.neg"));
            Path(At("ENG"), Wire(16, 0.5, null), At("BODY"));
            Path(At("BAT.pos"), Wire(25, 0.6, "RD"), At("F0"), At("BUS"));
            Path(At("BUS"), At("FI"), Wire(4, 2, "RD/YE"), At("IGN.30"));
            Path(At("IGN.15"), Wire(4, 0.5, "BK"), At("KEY"));
            Path(At("BUS"), Wire(25, 1.5, "RD"), At("ECU.30"));
            Path(At("KEY"), Wire(4, 1.5, "BK/GN"), At("ECU.15"));
            Path(At("ECU.31"), Wire(4, 1.5, "BN"), At("G0"));
            if (hasStarter)
            {
                _parts.Add(new Starter(
                    Note("ST"), null, 180, supply * 0.85, 0.02 * supply / 12, 0.4, 1.2, supply * 0.6, supply * 0.25));
                Path(At("BAT.pos"), Wire(35, 1, "RD"), At("ST.30"));
                Path(At("IGN.50"), Wire(4, 1.5, "BK/RD"), At("ST.50"));
                Path(At("ST.31"), At("ENG"));
            }

            if (hasAlternator)
            {
                _parts.Add(new Alternator(Note("GEN"), supply * 1.18, 90, 0.02, 0));
                Path(At("GEN.B+"), Wire(25, 1, "RD"), At("BUS"));
                Path(At("GEN.31"), At("ENG"));
            }
        }

        private void Add(Branch b, int n)
        {
            var id = n.ToString(CultureInfo.InvariantCulture);
            var load = Load(b, "L" + id);
            _parts.Add(load);
            _loads.Add(load.Id);
            var items = new List<PathItem> { At(b.Said[4] ? "KEY" : "BUS") };
            if (b.Fused)
            {
                var type = b.Said[5] ? FuseType.BladeMini : FuseType.BladeStandard;
                _parts.Add(new Fuse(Note("F" + id, "engine bay box") with { Slot = "B" + id, Price = new(1, 2.5) }, 20, type));
                items.AddRange([At("F" + id), Wire(4, 1.2, "YE")]);
            }
            else
            {
                items.Add(Wire(4, 0.8, null));
            }

            Series(b, id, items);
            var low = Switching(b, id, items);
            Wiring(b, id, load, items, low);
        }

        /// <summary>The rest of the path: through a plug to the load and to ground or a low-side output.</summary>
        private void Wiring(Branch b, string id, Load load, List<PathItem> items, PathPart? low)
        {
            var (pos, neg) = load.Across;
            var wire = b.Feet
                ? new PathWire(new WireGauge(WireTable.SquareMillimetresOfAwg(12), 12), 6 * 0.3048, "6ft", "GN/YE", null, null, b.Said[2], b.Said[3])
                : Wire(2.5, 0.5 + b.Values[0], "GN/YE") with { GaugeGuessed = b.Said[4], LengthGuessed = b.Said[5] };
            if (items[^1] is PathWire)
            {
                items.RemoveAt(items.Count - 1);
            }

            if (b.Plug > 0)
            {
                var isInline = b.Plug == 2;
                _parts.Add(new Connector(Note("C" + id, "boot floor"), [load.Id], b.Said[6]));
                items.AddRange([wire, At($"C{id}.1")]);
                if (isInline)
                {
                    items.Add(Wire(2.5, 0.3, "GN"));
                }

                Path([.. items, At($"{load.Id}.{pos}")]);
                Path(At($"{load.Id}.{neg}"), At($"C{id}.2"), Wire(2.5, 1, "BN"), low ?? Ground(id));
            }
            else
            {
                Path([.. items, wire with { Name = b.Said[6] ? "W" + id : null, Place = b.Said[7] ? "boot floor" : null }, At($"{load.Id}.{pos}")]);
                Path(At($"{load.Id}.{neg}"), Wire(2.5, 1, "BN"), low ?? Ground(id));
            }
        }

        private PathPart Ground(string id)
        {
            _parts.Add(new Ground(Note("G" + id, "boot floor"), Metal.Body));
            return At("G" + id);
        }

        private Load Load(Branch b, string id)
        {
            var notes = Note(id, "boot floor") with { Name = b.Said[0] ? "Load, " + id : null, Cautions = b.Said[1] ? ["hot parts"] : [] };
            ValueRange? works = b.Said[2] ? new ValueRange(supply * (0.6 + 0.1 * b.Values[1]), supply * 1.3) : null;
            var volts = b.Said[3] ? supply : supply * (1 + 0.1 * b.Values[2]);
            var amps = 0.5 + 9 * b.Values[3];
            switch (b.Load)
            {
                case 0:
                    return new Motor(notes, works, amps, volts, volts / amps / (2 + 4 * b.Values[4]), b.Said[4] ? supply * 0.2 : null);
                case 1:
                    return new Lamp(notes, works, [new Filament("1", amps * volts)], "2", volts);
                case 2:
                    return new Lamp(notes, works, [new Filament("56a", amps * volts), new Filament("56b", 55)], "31", volts);
                case 3:
                    return new Led(notes, works, 2 + b.Values[4], 0.02 + 0.1 * b.Values[5], volts);
                case 4 or 5:
                    return new Heater(notes, works, volts / amps, volts, b.Load == 5);
                default:
                    return new Solenoid(
                        notes, works, 5 + 20 * b.Values[4], volts, supply * 0.5,
                        (Suppression)(int)(2.99 * b.Values[5]));
            }
        }

        private void Series(Branch b, string id, List<PathItem> items)
        {
            Part? part = b.Series switch
            {
                1 => new Resistor(Note("R" + id), 0.01 + 0.2 * b.Values[6]),
                2 => new Diode(Note("D" + id), 0.5 + 0.3 * b.Values[6]),
                3 => new Ptc(Note("P" + id), 15, 0.02 + 0.1 * b.Values[6]),
                4 => new Breaker(Note("B" + id), 20),
                5 => new Fuse(Note("FL" + id), 30, FuseType.Link),
                _ => null,
            };
            if (part is not null)
            {
                _parts.Add(part);
                items.AddRange([At(part.Id), Wire(4, 0.3, "VT")]);
            }
        }

        /// <summary>Adds what switches the branch; returns the low-side output if that is where it returns.</summary>
        private PathPart? Switching(Branch b, string id, List<PathItem> items)
        {
            switch (b.Switching)
            {
                case 1:
                    Simple(b, id, opensByItself: false);
                    _on["S" + id] = "on";
                    items.Add(At("S" + id));
                    return null;
                case 2:
                    Simple(b, id, opensByItself: true);
                    items.Add(At("S" + id));
                    return null;
                case 3 or 4 or 5:
                    Relay(b, id, items);
                    return null;
                case 6:
                    _outputs.Add(Output(b, id, OutputSide.Low));
                    _on["ECU.o" + id] = b.Said[7] ? "40 %" : "low";
                    return At("ECU.o" + id);
                case 7:
                    _outputs.Add(Output(b, id, OutputSide.High));
                    _on["ECU.o" + id] = b.Said[7] ? "12.5 %" : "high";
                    items.Clear();
                    items.Add(At("ECU.o" + id));
                    return null;
                case 8:
                    Sensor(b, id);
                    return null;
                default:
                    return null;
            }
        }

        private void Simple(Branch b, string id, bool opensByItself) => _parts.Add(new Switch(
            Note("S" + id, "column") with { Probe = b.Said[7] }, ["1", "2"],
            ImmutableSortedDictionary.Create<string, ImmutableArray<SwitchContact>>(StringComparer.Ordinal)
                .Add("off", []).Add("on", [new("1", "2")]),
            opensByItself ? "on" : "off", 0.001 + 0.01 * b.Values[7], opensByItself));

        private void Relay(Branch b, string id, List<PathItem> items)
        {
            var contacts = b.Switching switch
            {
                3 => RelayContacts.Make,
                4 => RelayContacts.Changeover,
                _ => b.Said[7] ? RelayContacts.Break : RelayContacts.TwinMake,
            };
            var suppression = (Suppression)(int)(2.99 * b.Values[8]);
            _parts.Add(new Relay(
                Note("K" + id, "engine bay box"), contacts, 60 + 60 * b.Values[9], supply * 0.6, supply * (0.1 + 0.2 * b.Values[10]),
                0.003, suppression, suppression == Suppression.Resistor ? 680 : 0));
            items.Add(At($"K{id}.30"));
            items.Add(At(contacts == RelayContacts.Break ? $"K{id}.87a" : $"K{id}.87"));
            Path(At("KEY"), Wire(0.75, 1, "BU"), At($"K{id}.86"));
            _outputs.Add(Output(b, "k" + id, OutputSide.Low) with { Drive = OutputDrive.Steady });
            Path(At($"K{id}.85"), Wire(0.5, 1.1, "GY/RD"), At("ECU.ok" + id));
            _on["ECU.ok" + id] = "low";
        }

        private void Sensor(Branch b, string id)
        {
            var type = (SensorType)(int)(2.99 * b.Values[11]);
            _inputs.Add(new ModuleInput("i" + id, b.Said[5], 2 + b.Values[12], 5 * b.Values[13], 1000 + 9000 * b.Values[14]));
            _parts.Add(type switch
            {
                SensorType.Ntc => new Sensor(Note("T" + id), type, 1000 + 2000 * b.Values[12], 25, 3435, 0),
                SensorType.Potentiometer => new Sensor(Note("T" + id), type, 5000, 20, 3500, b.Values[12]),
                _ => new Sensor(Note("T" + id), type, 0.02, 20, 3500, b.Said[6] ? 1 : 0),
            });
            var (signal, ground) = type == SensorType.Potentiometer ? ("signal", "ground") : ("1", "2");
            Path(At($"T{id}.{signal}"), Wire(0.5, 1, "WH"), At("ECU.i" + id));
            Path(At($"T{id}.{ground}"), At("ENG"));
            if (type == SensorType.Potentiometer)
            {
                Path(At($"T{id}.supply"), Wire(0.5, 1, "WH/RD"), At("KEY"));
            }
        }

        private static ModuleOutput Output(Branch b, string id, OutputSide side) => new(
            "o" + id, side, b.Said[7] ? OutputDrive.Pulsed : b.Said[6] ? OutputDrive.Bus : OutputDrive.Steady,
            0.02 + 0.05 * b.Values[12], 15, b.Said[5], b.Said[4] ? 5 : 0, b.Said[3] ? 4700 : 10_000, []);

        private ImmutableArray<Place> Places(Branch b) =>
        [
            new("engine bay box", 1, [], [], PlaceEnvironment.Hot, Grid: b.Said[3] ? new BoxGrid([["A1", ".", "_", "A:2"], [".", "B-1"], ["_", "0x1", "#7"]], b.Said[4] ? "lid off: from the front" : null) : null),
            new("boot floor", 5 * b.Values[15], ["screwdriver"], ["fuel vapour"], PlaceEnvironment.Wet, 5),
            new("column", 20, ["trim lever", "5 mm hex key"], ["airbag"]),
            new("control box", 1 / 3.0, [], [], PlaceEnvironment.Dry, 2.5),
        ];

        private ImmutableArray<Condition> Conditions(Branch b)
        {
            var on = _on.ToImmutableSortedDictionary(StringComparer.Ordinal);
            var none = ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal);
            return
            [
                new("key off", none),
                new("everything on", on, "key off", b.Said[4] ? 2 : null),
                new("cranking", on.SetItem("IGN", "start"), "everything on", StarterAmps: hasStarter ? null : 180),
                new("running", on, "cranking", AlternatorVolts: hasAlternator ? null : supply * 1.18, EngineTurns: true, Needs: [.. b.Said[5] ? _loads : _loads.Take(1)]),
            ];
        }

        private static PartNotes Note(string id, string? place = null) => new(id, null, place);

        private static PathPart At(string terminal)
        {
            var name = TerminalName.Parse(terminal);
            return new PathPart(name.Part, name.Name.Length == 0 ? null : name.Name);
        }

        private static PathWire Wire(double area, double metres, string? colour) => new(
            new WireGauge(area, null), metres, metres.ToString("R", CultureInfo.InvariantCulture) + "m", colour, null, null);

        private void Path(params PathItem[] items) => _paths.Add(new WiringPath([.. items]));
    }
}
