using System.Diagnostics;
using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Benchmarks.Decisions;

/// <summary>
/// Time from a reading recorded to the next check known as circuits grow: a lamp fed through more and more connectors,
/// every joint and wire of which is a suspect. The smallest has no connector, fuse or ground: a switch, one wire and the lamp.
/// </summary>
internal static class DecisionSizeTable
{
    private static readonly int[] Connectors = [1, 17, 166];

    private const int MostMoves = 12;

    private const int ConnectorsInAPath = 50;

    private const string SwitchAndLamp = """
        sheet: 1
        title: A lamp, near or at the end of many connectors
        conditions:
          key off: {}
          key on:  { after: key off, IGN: on }
        places:
          bench: { open: 1 min }
          far end: { open: 4 min }
        complaints:
          lamp dark: { load: L1, is: dead, in: key on }
        parts:
          BAT: { kind: battery, place: bench }
          IGN: { kind: switch, place: bench, terminals: [1, 2], positions: { off: [], on: [1-2] } }
          L1:  { kind: lamp, watts: 21 W, place: far end }

        """;

    public static void Print()
    {
        Console.WriteLine($"{"connectors",10} {"suspects",8} {"checks",6} {"open ms",8} {"first planned ms",16} {"median ms",9} {"worst ms",8}");
        MeasureChain(Connectors[0]);
        Console.WriteLine(Measure(0, Smallest(), "IGN.2~L1.1"));
        foreach (var connectors in Connectors)
        {
            Console.WriteLine(MeasureChain(connectors));
        }
    }

    // Broken in the middle of the chain: neither the first joint nor the last.
    private static string MeasureChain(int connectors) => Measure(connectors, Chain(connectors), $"C{(connectors + 1) / 2}.1");

    private static string Measure(int connectors, Circuit circuit, string broken)
    {
        var complaint = circuit.Complaints[0];
        var car = new SimulatedCar(circuit, complaint.Load, new Fault(broken, FaultModes.Open));
        var start = Stopwatch.GetTimestamp();
        var investigation = Investigation.Open(circuit, complaint);
        var open = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        var offered = CheckCatalog.Generate(investigation.Network, complaint, investigation.Options, []).Length;
        var times = new List<double>();
        for (var move = 0; move < MostMoves && investigation.Next().Check is { Kind: not CheckKind.Repair } check; move++)
        {
            var answer = car.Answer(check);
            start = Stopwatch.GetTimestamp();
            investigation.Record($"{move}", check, answer);
            investigation.Next();
            times.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        // The second decision is the first that is planned, with all suspects alive.
        var first = times[1];
        times.RemoveRange(0, 2);
        times.Sort();
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{connectors,10} {investigation.Suspects.Length,8} {offered,6} {open,8:0} {first,16:0} {times[times.Count / 2],9:0} {times[^1],8:0}");
    }

    private static Circuit Smallest() => Read(SwitchAndLamp + """
        wiring:
          - BAT.pos -> IGN -> wire 1.5mm2 1m RD -> L1.1
          - L1.2 -> BAT.neg
        """);

    private static Circuit Chain(int connectors)
    {
        var text = new StringBuilder(SwitchAndLamp + """
              F1:  { kind: fuse, rating: 10 A, place: bench, slot: "1" }
              G1:  { kind: ground, place: far end }

            """);
        var path = new StringBuilder("  - BAT.pos -> wire 1.5mm2 1m RD -> F1 -> wire 1.5mm2 1m RD -> IGN");
        for (var i = 1; i <= connectors; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  C{i}: {{ kind: connector, b: L1, place: {(i % 2 == 0 ? "bench" : "far end")} }}\n");
            // A path has at most 200 items.
            var isLast = i % ConnectorsInAPath == 0;
            path.Append(CultureInfo.InvariantCulture, $" -> wire 1.5mm2 0.2m RD -> C{i}.1a{(isLast ? "\n  -" : " ->")} C{i}.1b");
        }

        text.Append("wiring:\n").Append(path).Append(" -> wire 1.5mm2 0.2m RD -> L1.1\n  - L1.2 -> wire 1.5mm2 1m BN -> G1\n");
        return Read(text.ToString());
    }

    private static Circuit Read(string sheet)
    {
        var reading = SheetReader.Read(sheet);
        return reading.Circuit ?? throw new InvalidOperationException(string.Join('\n', reading.Problems));
    }
}
