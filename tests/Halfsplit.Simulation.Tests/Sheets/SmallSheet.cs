using System.Text;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Faults;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Simulation.Tests.Sheets;

/// <summary>
/// A small sheet written in a test, and the car it describes. The battery is a stiff 12 V unless the test says
/// otherwise, and the body hangs on its negative post.
/// </summary>
internal sealed class SmallSheet
{
    private const string StiffBattery = "BAT: { kind: battery, rests at: 12 V, internal resistance: 0.0001 ohm }";

    private SmallSheet(Circuit circuit)
    {
        Circuit = circuit;
        Network = NetworkCompiler.Compile(circuit);
        Simulator = new CircuitSimulator(Network);
    }

    public Circuit Circuit { get; }

    public CircuitNetwork Network { get; }

    public CircuitSimulator Simulator { get; }

    /// <summary>Lines of parts and wiring, separated by line ends; conditions default to "on", with IGN switched on if there is one.</summary>
    public static SmallSheet Of(string parts, string wiring, string conditions = "on: {}")
    {
        var text = new StringBuilder("sheet: 1\ntitle: Small sheet\nconditions:\n");
        Lines(text, conditions, "  ");
        text.Append("parts:\n");
        Lines(text, parts.Contains("BAT:", StringComparison.Ordinal) ? parts : StiffBattery + "\n" + parts, "  ");
        text.Append("wiring:\n  - BODY -> wire 35mm2 0.1m -> BAT.neg\n");
        Lines(text, wiring, "  - ");
        return Read(text.ToString());
    }

    public static SmallSheet Read(string text)
    {
        var reading = SheetReader.Read(text);
        Assert.True(
            reading.Circuit is not null, string.Join('\n', reading.Problems.Select(p => p.ToString())) + "\n" + text);
        return new SmallSheet(reading.Circuit);
    }

    public OperatingPoint In(string condition = "on", params string[] faults) => Simulator.Simulate(new Arrangement(condition), Faults(faults));

    public OperatingPoint In(Arrangement arrangement, params string[] faults) => Simulator.Simulate(arrangement, Faults(faults));

    /// <summary>What an instrument shows between two terminals.</summary>
    public double Read(Instrument instrument, string red, string black, string condition = "on", params string[] faults) =>
        Reading(new Arrangement(condition), instrument, red, black, faults).Value;

    public Prediction Reading(Arrangement arrangement, Instrument instrument, string red, string black, params string[] faults) =>
        Simulator.Read(arrangement, Faults(faults), Held(instrument, red, black));

    public static Probe Held(Instrument instrument, string red, string black) => new(instrument, TerminalName.Parse(red), TerminalName.Parse(black));

    public static Fault[] Faults(params string[] faults) =>
        [.. faults.Select(text => Fault.TryParse(text, out var fault) ? fault : throw new FormatException(text))];

    private static void Lines(StringBuilder text, string lines, string before)
    {
        foreach (var line in lines.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            text.Append(before).Append(line).Append('\n');
        }
    }
}

/// <summary>Short ways to ask a settled car.</summary>
internal static class OperatingPointQuestions
{
    public static double Volts(this OperatingPoint point, string terminal) => point.Volts(TerminalName.Parse(terminal));

    public static double Across(this OperatingPoint point, string first, string second) =>
        point.Volts(first) - point.Volts(second);

    /// <summary>Amps through the first branch of a part's or a wire's name.</summary>
    public static double AmpsOf(this OperatingPoint point, string target) =>
        point.Amps(point.Network.BranchesOf(target)[0]);
}
