using CsCheck;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Tests;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Simulation.Tests.Spice;

/// <summary>Random circuits, in every condition, healthy, faulty and rearranged, before ngspice.</summary>
[Trait("Pace", "slow")]
public sealed class RandomCircuitAgreementTests(ITestOutputHelper output)
{
    private const int Circuits = 240;
    private const int FaultsEach = 4;

    [Fact]
    public void Ngspice_agrees_on_random_circuits() =>
        Gen.Select(CircuitGenerator.Circuits, Gen.Int).Array[Circuits].Sample(
            drawn =>
            {
                List<ExportedPicture> pictures = [.. drawn.SelectMany(d => Pictures(d.Item1, new Random(d.Item2)))];
                var agreement = SpiceAgreement.Judge(pictures);
                output.WriteLine(agreement.ToString());
                // Things pulled and unplugged leave many islands; still one node in thirty at most.
                Assert.InRange(agreement.StrayNodes, 0, agreement.Nodes / 30);
            },
            iter: 1);

    private static IEnumerable<ExportedPicture> Pictures(Circuit circuit, Random random)
    {
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var modes = FaultCatalog.For(simulator);
        for (var car = 0; car <= FaultsEach; car++)
        {
            Fault[] faults = car == 0 ? [] : [Any([.. Any(modes, random).Faults()], random)];
            foreach (var condition in circuit.Conditions)
            {
                var name = $"{string.Join(' ', (object[])faults)} in {condition.Name}";
                var rearranged = Rearranged(circuit, condition.Name, random);
                foreach (var picture in ExportedPicture.Of(name, simulator.Simulate(new Arrangement(condition.Name), faults))
                    .Concat(ExportedPicture.Of(
                        $"{name}; {rearranged.Key}",
                        simulator.Simulate(rearranged, faults, new SimulationOptions(Laid: Lamp(circuit, random))))))
                {
                    yield return picture;
                }
            }
        }
    }

    private static Arrangement Rearranged(Circuit circuit, string condition, Random random)
    {
        var arrangement = new Arrangement(condition);
        var connectors = circuit.Parts.OfType<Connector>().ToArray();
        var pluggable = circuit.Parts.Where(p => p.IsPluggable).ToArray();
        if (connectors.Length > 0 && random.Next(2) == 0)
        {
            arrangement = arrangement.Unplug(Any(connectors, random).Id);
        }

        if (pluggable.Length > 0 && random.Next(2) == 0)
        {
            arrangement = arrangement.Remove(Any(pluggable, random).Id);
        }

        return random.Next(2) == 0
            ? arrangement.WithJumper(Any(circuit.Terminals, random), Any(circuit.Terminals, random))
            : arrangement;
    }

    private static Probe? Lamp(Circuit circuit, Random random) => random.Next(3) == 0
        ? new Probe(Instrument.TestLamp, Any(circuit.Terminals, random), Any(circuit.Terminals, random))
        : null;

    private static T Any<T>(IReadOnlyList<T> all, Random random) => all[random.Next(all.Count)];
}
