using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;

namespace Halfsplit.Cli.Cars;

/// <summary>A settled car, part by part.</summary>
public sealed class CarReport(OperatingPoint point)
{
    public OperatingPoint Point { get; } = point;

    private Circuit Circuit => Point.Network.Circuit;

    public IEnumerable<(TerminalName Terminal, double Volts)> Volts =>
        Circuit.Terminals.Select(t => (t, Point.Volts(t)));

    /// <summary>The largest current in each part that has one; a relay's contact counts, not its coil.</summary>
    public IEnumerable<(string Part, double Amps)> Amps
    {
        get
        {
            var branches = Point.Network.Branches;
            foreach (var part in Circuit.Parts.Where(p => p is not (Splice or Metal)))
            {
                var isRelay = part is Relay;
                double? most = null;
                for (var i = 0; i < branches.Length; i++)
                {
                    if (branches[i].Owner != part.Id || (isRelay && branches[i].Use is BranchUse.Coil or BranchUse.Suppression))
                    {
                        continue;
                    }

                    var amps = Point.Amps(i);
                    most = most is { } known && Math.Abs(known) >= Math.Abs(amps) ? most : amps;
                }

                if (most is { } found)
                {
                    yield return (part.Id, found);
                }
            }
        }
    }

    public IEnumerable<(Wire Wire, double Amps)> WireAmps => Circuit.Wires.Select(w => (w, Point.WireAmps(w.Id)));

    public IEnumerable<(Relay Relay, bool PulledIn, double CoilVolts)> Relays => Circuit.Parts.OfType<Relay>()
        .Select(r => (r, Point.IsPulledIn(r.Id), Point.Volts(new(r.Id, "86p")) - Point.Volts(new(r.Id, "85p"))));

    public IEnumerable<(Part Fuse, bool Blown, double Amps)> Fuses => Circuit.Parts
        .Where(p => p is Fuse or Breaker or Ptc)
        .Select(f => (f, Point.IsBlown(f.Id), Point.FuseAmps(f.Id)));

    public IEnumerable<(Module Module, bool Awake, ImmutableArray<(string Output, bool Driving)> Outputs)> Modules =>
        Circuit.Parts.OfType<Module>().Select(m => (
            m, Point.IsAwake(m.Id), m.Outputs.Select(o => (o.Name, Point.IsDriving(m.Id, o.Name))).ToImmutableArray()));

    public IEnumerable<(Load Load, LoadState State)> Loads =>
        Circuit.Parts.OfType<Load>().Select(l => (l, Point.Load(l.Id)));

    /// <summary>The word for how a load fares, in JSON and text.</summary>
    public static string Word(LoadCondition condition) => condition switch
    {
        LoadCondition.Works => "works",
        LoadCondition.Weak => "weak",
        _ => "dead",
    };
}
