using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Layers;
using Halfsplit.Drawing.Schematic;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Drawing.Svg;

/// <summary>What the layers say of each part, terminal and wire, as the symbols ask for it.</summary>
internal sealed class Shown
{
    /// <summary>Odds below this are not worth ink.</summary>
    private const double LeastOdds = 0.01;

    private readonly TextCatalog _texts = DrawingTexts.English;
    private readonly OperatingPoint? _point;
    private readonly double?[]? _amps;
    private readonly Dictionary<string, double> _odds = new(StringComparer.Ordinal);

    private Shown()
    {
    }

    public Shown(CircuitLayout layout, DrawingOptions options)
    {
        _texts = options.Texts;
        foreach (var layer in options.Layers)
        {
            switch (layer)
            {
                case PredictionLayer prediction:
                    _point = prediction.Point;
                    _amps = new Flows(prediction.Point, layout.Grid.Graph.Conductors).Amps;
                    break;
                case SuspectLayer suspects:
                    foreach (var suspect in suspects.Suspects)
                    {
                        foreach (var key in suspect.Faults.Select(f => SymbolOf(layout.Circuit, f.Part)).Distinct())
                        {
                            _odds[key] = _odds.GetValueOrDefault(key) + suspect.Odds;
                        }
                    }

                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>For drawings without a circuit.</summary>
    public static Shown Nothing { get; } = new();

    /// <summary>How numbers are written.</summary>
    public CultureInfo Formats => _texts.Language.Formats;

    public bool HasPoint => _point is not null;

    /// <summary>The symbol that a fault's name for a thing belongs to: a wire, a cavity, or a part.</summary>
    public static string SymbolOf(Circuit circuit, string target)
    {
        if (circuit.Find(target) is Connector)
        {
            return circuit.Cavities(target).Select(c => $"{target}.{c}").FirstOrDefault(target);
        }

        if (circuit.Find(target) is not null || circuit.Wires.Any(w => w.Id == target))
        {
            return target;
        }

        var terminal = TerminalName.Parse(target);
        return circuit.Find(terminal.Part) is not Connector ? terminal.Part
            : terminal.Name.Length > 1 && terminal.Name[^1] is 'a' or 'b' ? target[..^1] : target;
    }

    public double? OddsOf(string symbol) => _odds.TryGetValue(symbol, out var odds) && odds >= LeastOdds ? odds : null;

    public string? VoltsOf(TerminalName terminal)
    {
        if (_point is null || !_point.Network.HasTerminal(terminal))
        {
            return null;
        }

        var volts = _point.Volts(terminal);
        var text = volts.ToString(Math.Abs(volts) is > 0.0005 and < 0.1 ? "0.000" : "0.00", Formats);
        return (text.Trim('-', '0', '.', ',').Length == 0 ? text.TrimStart('-') : text) + " V";
    }

    /// <summary>Amps through a conductor, first end to second; null where unknown or nothing is predicted.</summary>
    public double? AmpsOf(Conductor conductor) => _amps?[conductor.Index];

    public string? AmpsText(Conductor conductor)
    {
        if (AmpsOf(conductor) is not { } amps)
        {
            return null;
        }

        var size = Math.Abs(amps);
        return size < CurrentWidth.LeastAmps ? "0 A"
            : size < 1 ? (size * 1000).ToString("0", Formats) + " mA"
            : size.ToString(size < 10 ? "0.00" : "0.0", Formats) + " A";
    }

    /// <summary>Amps down through a link.</summary>
    public double? FlowOf(Link link) => AmpsOf(link.Conductor) is { } amps ? (link.IsReversed ? -amps : amps) : null;

    /// <summary>Amps down through a port; null where nothing is predicted or one of its links is unknown.</summary>
    public double? FlowAt(Port port)
    {
        var sum = 0.0;
        foreach (var link in port.Links)
        {
            if (FlowOf(link) is not { } flow)
            {
                return null;
            }

            sum += flow;
        }

        return _amps is null ? null : sum;
    }

    public bool IsBlown(string fuse) => _point?.IsBlown(fuse) ?? false;

    public bool IsPulledIn(string relay) => _point?.IsPulledIn(relay) ?? false;

    public bool IsDriving(string module, string output) => _point?.IsDriving(module, output) ?? false;

    /// <summary>A switch or sensor with one contact.</summary>
    public bool IsClosed(Part part) => IsClosed(part, part.Terminals[0], part.Terminals[1]);

    /// <summary>As predicted; at rest where nothing is.</summary>
    public bool IsClosed(Part part, string from, string to)
    {
        if (_point is null)
        {
            return part switch
            {
                Switch change => change.Positions.GetValueOrDefault(change.RestPosition, []).Any(c => (c.From, c.To) == (from, to) || (c.To, c.From) == (from, to)),
                Sensor sensor => sensor.Position >= 0.5,
                _ => false,
            };
        }

        var (first, second) = (_point.Network.NodeOf(new(part.Id, from)), _point.Network.NodeOf(new(part.Id, to)));
        for (var i = 0; i < _point.Network.Branches.Length; i++)
        {
            var branch = _point.Network.Branches[i];
            if (branch.Owner == part.Id && branch.Use is BranchUse.SwitchContact or BranchUse.Element
                && ((branch.From, branch.To) == (first, second) || (branch.To, branch.From) == (first, second)))
            {
                return _point.Ohms(i) < ClosedOhms;
            }
        }

        return false;
    }

    /// <summary>A contact with more ohms than this is drawn open.</summary>
    private const double ClosedOhms = 10_000;

    /// <summary>How a load fares; null where nothing is predicted.</summary>
    public string? StateOf(Part part)
    {
        if (_point is null || part is not Load)
        {
            return null;
        }

        var state = _point.Load(part.Id);
        return _texts.Say(state switch
        {
            { Stalled: true } => "drawing.load-stalled",
            { Condition: LoadCondition.Works } => "drawing.load-works",
            { Condition: LoadCondition.Weak } => "drawing.load-weak",
            _ => "drawing.load-dead",
        });
    }
}
