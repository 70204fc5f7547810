using System.Collections.Immutable;
using Halfsplit.Circuits.Model;
using Halfsplit.Evaluation.Play;
using Halfsplit.Jobs.Practice;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Evaluation.Cars;

/// <summary>
/// Draws the cars: physics, drawn parts, drawn faults and nothing of what the players reckon with. A car is drawn from its
/// number alone, so that every player can be given the same one anew.
/// </summary>
public sealed class CarLot(string sheet, Circuit circuit, Variant variant)
{
    private const int MostTries = 40;

    /// <summary>Share of the cars with an unknown connector whose fault is in that connector.</summary>
    private const double ForeignShare = 0.5;

    private readonly ImmutableDictionary<string, LoadCondition> _mended = WhenHealthy(circuit);
    private double[]? _weights;

    /// <summary>The complaint of a car: each of the sheet's in turn.</summary>
    public Complaint ComplaintOf(int number) => circuit.Complaints[number % circuit.Complaints.Length];

    /// <summary>Draws a car; null where none of the tries makes the complaint.</summary>
    public TestCar? Draw(int number)
    {
        var complaint = ComplaintOf(number);
        for (var attempt = 0; attempt < MostTries; attempt++)
        {
            if (Draw(complaint, Seeds.Of("car", sheet, variant.Name, number, attempt)) is { } car)
            {
                return car;
            }
        }

        return null;
    }

    private TestCar? Draw(Complaint complaint, long seed)
    {
        var chance = new SeededChance(seed);
        var foreign = variant.OtherSheet ? ForeignJoint.In(circuit, WiresInUse(complaint), chance) : null;
        var parts = DrawnParts.Draw(WithSupply(foreign?.Circuit ?? circuit, chance), chance, variant.Wider);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(parts));
        var habits = new FaultHabits(variant.Shows, variant.OhmsFall);
        if (Faults(simulator, complaint, habits, foreign, chance) is not { } faults)
        {
            return null;
        }

        var car = PracticeCar.Of(simulator, complaint, Meter.Default, faults, new SeededChance(Seeds.Of("meter", seed)), habits);
        return new TestCar(
            car, new SlippingHand(simulator.Network, seed, variant.Slips, variant.SlipsRepeat), foreign);
    }

    private ImmutableArray<Fault>? Faults(
        CircuitSimulator simulator, Complaint complaint, FaultHabits habits, ForeignJoint? foreign, SeededChance chance)
    {
        // A car that would complain when mended is none that one fault explains.
        var point = new Arrangement(complaint.Condition);
        if (simulator.Simulate(point, []).Load(complaint.Load).Condition != _mended[complaint.Name])
        {
            return null;
        }

        var modes = FaultCatalog.For(simulator);
        var weights = Weights(simulator.Network.Circuit, modes, complaint, foreign, chance);
        bool Accepts(ImmutableArray<Fault> faults) => HiddenFault.Shows(
            simulator, complaint, habits.Settle(simulator, faults, new Arrangement(complaint.Condition), null));
        if (HiddenFault.Draw(modes, weights, f => Accepts([f]), chance) is not { } first)
        {
            return null;
        }

        if (variant.Faults < 2)
        {
            return [first];
        }

        var second = HiddenFault.Draw(
            modes, weights, f => f.Part != first.Part && Accepts([f]) && Accepts([first, f]), chance);
        return second is null ? null : [first, second];
    }

    private double[] Weights(
        Circuit drawn, ImmutableArray<FaultMode> modes, Complaint complaint, ForeignJoint? foreign, SeededChance chance)
    {
        var weights = (foreign is null ? _weights ??= WorldWeights.Of(drawn, modes, variant.Source)
            : WorldWeights.Of(drawn, modes, variant.Source)).ToArray();
        if (foreign is not null && chance.Next() < ForeignShare)
        {
            Keep(weights, modes, m => foreign.Pieces.Contains(m.Part) && m.Mode is FaultModes.Open or FaultModes.Resistive);
        }

        if (variant.Shows < 1)
        {
            Keep(weights, modes, ComesAndGoes);
        }

        if (variant.LoadShare is { } share)
        {
            var load = chance.Next() < share;
            Keep(weights, modes, m => m.Owner == complaint.Load == load);
        }

        return weights;
    }

    /// <summary>What is broken, burnt or loose may touch at times; what is blown, shorted or seized stays so.</summary>
    private static bool ComesAndGoes(FaultMode mode) => (mode.Kind, mode.Mode) switch
    {
        ("fuse" or "lamp" or "led", _) => false,
        (_, FaultModes.Open or FaultModes.Resistive or FaultModes.Loose) => true,
        (_, FaultModes.ContactOpen or FaultModes.ContactResistive or FaultModes.CoilOpen or FaultModes.BrushesWorn) => true,
        _ => false,
    };

    private static void Keep(double[] weights, ImmutableArray<FaultMode> modes, Func<FaultMode, bool> kept)
    {
        for (var i = 0; i < weights.Length; i++)
        {
            weights[i] *= kept(modes[i]) ? 1 : 0;
        }
    }

    /// <summary>How each load complained of fares in the car of the sheet, by name of the complaint.</summary>
    private static ImmutableDictionary<string, LoadCondition> WhenHealthy(Circuit circuit)
    {
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        return circuit.Complaints.ToImmutableDictionary(
            c => c.Name, c => simulator.Simulate(new Arrangement(c.Condition), []).Load(c.Load).Condition, StringComparer.Ordinal);
    }

    /// <summary>The wires that feed the load and return from it.</summary>
    private List<string> WiresInUse(Complaint complaint)
    {
        var wiring = new LoadWiring(new CircuitSimulator(NetworkCompiler.Compile(circuit)), complaint);
        var wires = circuit.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        return [.. wiring.Feed.Owners.Concat(wiring.Return.Owners).Where(wires.Contains)];
    }

    /// <summary>A battery fuller or emptier, a regulator a little off: evenly drawn; common practice, no published source.</summary>
    private static Circuit WithSupply(Circuit circuit, SeededChance chance)
    {
        var fullness = 0.965 + (0.05 * chance.Next());
        var regulated = 0.985 + (0.03 * chance.Next());
        return CircuitBuilder.Build(new CircuitDraft(
            circuit.Title,
            [.. circuit.Parts.Select(p => p is Battery b ? b with { RestVolts = b.RestVolts * fullness } : p)],
            circuit.Paths, circuit.Places,
            [.. circuit.Conditions.Select(c => c with { AlternatorVolts = c.AlternatorVolts * regulated })],
            circuit.Complaints, circuit.Cautions)).Circuit!;
    }
}
