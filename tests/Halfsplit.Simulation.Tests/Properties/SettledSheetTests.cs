using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Tests.Sheets;
using Xunit;

namespace Halfsplit.Simulation.Tests.Properties;

/// <summary>What must hold in every settled car of every shipped sheet.</summary>
public sealed class SettledSheetTests
{
    private const int Stride = 11;

    public static TheoryData<string> Sheets => ShelfChoice.Theory;

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Kirchhoffs_currents_add_up_to_the_leak_at_every_node(string sheet)
    {
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(ShippedSheets.Load(sheet)));
        foreach (var (faults, condition) in Cars(simulator))
        {
            var point = simulator.Simulate(new Arrangement(condition), faults);
            var run = point.Run;
            var network = simulator.Network;
            var left = new double[network.NodeNames.Length];
            var sizes = new double[left.Length];
            for (var i = 0; i < network.Branches.Length; i++)
            {
                Flow(network.Branches[i].From, network.Branches[i].To, point.Amps(i));
            }

            for (var i = 0; i < run.Attachments.Length; i++)
            {
                Flow(run.Attachments[i].From, run.Attachments[i].To, run.LaidAmps(i));
            }

            for (var node = 0; node < left.Length; node++)
            {
                // Amps are differences of volts that agree to sixteen digits, times up to a thousand siemens and more.
                var leak = run.Volts(node) * ConductanceRange.DefaultLeak;
                Assert.True(
                    Math.Abs(left[node] - leak) <= 1e-13 * (sizes[node] + Siemens(point, node) * 13),
                    $"{string.Join(' ', (object[])faults)} in {condition}: {left[node]:R} A left over at {network.NodeNames[node]}");
            }

            void Flow(int from, int to, double amps)
            {
                Put(from, -amps);
                Put(to, amps);
            }

            void Put(int node, double amps)
            {
                if (node >= 0)
                {
                    left[node] += amps;
                    sizes[node] += Math.Abs(amps);
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_answer_does_not_depend_on_what_was_asked_before(string sheet)
    {
        var network = NetworkCompiler.Compile(ShippedSheets.Load(sheet));
        var worn = new CircuitSimulator(network);
        var random = new Random(7);
        var pulled = network.Circuit.Parts.Where(p => p.IsPluggable).ToArray();
        (Fault[] Faults, string Condition)[] asked = [.. Cars(worn)];
        random.Shuffle(asked);
        foreach (var (faults, condition) in asked.Take(250))
        {
            var arrangement = new Arrangement(condition);
            if (random.Next(3) == 0)
            {
                arrangement = arrangement.Remove(pulled[random.Next(pulled.Length)].Id);
            }

            // A lamp laid on must not leave a trace, nor other thresholds.
            var terminal = network.Circuit.Terminals[random.Next(network.Circuit.Terminals.Length)];
            worn.Read(arrangement, faults, new Probe(Instrument.TestLamp, terminal, new TerminalName("BAT", "neg")));
            worn.Simulate(arrangement, faults, new SimulationOptions(ThresholdFactor: 1.2));
            var used = worn.Simulate(arrangement, faults);
            var fresh = new CircuitSimulator(network).Simulate(arrangement, faults);
            Assert.True(fresh.HasSameStates(used));
            Assert.Equal(fresh.Chatter, used.Chatter);
            Assert.Equal(Bits(fresh), Bits(used));
        }
    }

    [Fact]
    public void Networks_may_be_shared_between_threads()
    {
        var network = NetworkCompiler.Compile(ShippedSheets.Load("pump-feed"));
        (Fault[] Faults, string Condition)[] cars = [.. Cars(new CircuitSimulator(network))];
        var alone = All(new CircuitSimulator(network));
        var together = new List<long>[4];
        Parallel.For(0, together.Length, i => together[i] = All(new CircuitSimulator(network)));
        Assert.All(together, volts => Assert.Equal(alone, volts));

        List<long> All(CircuitSimulator simulator) =>
            [.. cars.SelectMany(c => Bits(simulator.Simulate(new Arrangement(c.Condition), c.Faults)))];
    }

    private static IEnumerable<(Fault[] Faults, string Condition)> Cars(CircuitSimulator simulator)
    {
        Fault[][] cars =
        [
            [],
            .. FaultCatalog.For(simulator).SelectMany(m => m.Faults()).Where((_, i) => i % Stride == 0).Select(f => new[] { f }),
        ];
        return cars.SelectMany(faults => simulator.Network.Circuit.Conditions.Select(c => (faults, c.Name)));
    }

    private static IEnumerable<long> Bits(OperatingPoint point) =>
        point.Network.Circuit.Terminals.Select(t => BitConverter.DoubleToInt64Bits(point.Volts(t)));

    private static double Siemens(OperatingPoint point, int node)
    {
        var sum = 0.0;
        for (var i = 0; i < point.Network.Branches.Length; i++)
        {
            var branch = point.Network.Branches[i];
            sum += branch.From == node || branch.To == node ? 1 / point.Ohms(i) : 0;
        }

        return sum;
    }
}
