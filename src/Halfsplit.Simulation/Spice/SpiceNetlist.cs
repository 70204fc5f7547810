using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Networks;
using Halfsplit.Simulation.Settling;

namespace Halfsplit.Simulation.Spice;

/// <summary>A netlist and which of its nodes each terminal is.</summary>
/// <param name="Text">The netlist, ready to run.</param>
/// <param name="NodeOfTerminal">Terminal to node name; <c>0</c> is the battery's negative post.</param>
public sealed record SpiceNetlist(string Text, ImmutableSortedDictionary<string, string> NodeOfTerminal)
{
    /// <summary>
    /// Writes a settled car as a SPICE netlist: every branch a resistor in its present state, sources in series
    /// (battery) or beside (motors, diodes), a 1 GΩ leak at every node, and the instrument if there is one.
    /// </summary>
    /// <param name="point">The settled car.</param>
    /// <param name="meter">Two terminals' nodes and the input resistance between them; null for none.</param>
    /// <param name="pulseOff">With a pulsed output: the picture while it is off.</param>
    public static SpiceNetlist Of(OperatingPoint point, (int Red, int Black, double Ohms)? meter = null, bool pulseOff = false)
    {
        ArgumentNullException.ThrowIfNull(point);
        var network = point.Network;
        var frame = point.Run.Frames[pulseOff && point.Run.Frames.Length > 1 ? 1 : 0];
        var text = new StringBuilder();
        text.Append("* ").Append(network.Circuit.Title.ReplaceLineEndings(" ")).Append('\n');
        text.Append("* condition: ").Append(point.Run.Condition.Name).Append("; node 0 is the battery's negative post\n");
        for (var i = 0; i < network.NodeNames.Length; i++)
        {
            text.Append("* node n").Append(i).Append(" is ").Append(network.NodeNames[i]).Append('\n');
        }

        for (var i = 0; i < network.Branches.Length; i++)
        {
            Branch(text, network.Branches[i], i, frame);
        }

        for (var i = 0; i < point.Run.Attachments.Length; i++)
        {
            var laid = point.Run.Attachments[i];
            Resistor(text, $"laid{i}", Node(laid.From), Node(laid.To), 1 / frame.Conductance[network.Branches.Length + i]);
        }

        for (var i = 0; i < network.NodeNames.Length; i++)
        {
            Resistor(text, $"leak{i}", Node(i), "0", 1 / ConductanceRange.DefaultLeak);
        }

        if (meter is { } m)
        {
            Resistor(text, "meter", Node(m.Red), Node(m.Black), m.Ohms);
        }

        text.Append(".options gmin=1e-30\n.op\n.end\n");
        return new SpiceNetlist(
            text.ToString(),
            network.Circuit.Terminals.ToImmutableSortedDictionary(
                t => t.ToString(), t => Node(network.NodeOf(t)), StringComparer.Ordinal));
    }

    private static void Branch(StringBuilder text, NetworkBranch branch, int index, Frame frame)
    {
        var conductance = frame.Conductance[index];
        var source = frame.Source[index];
        if (branch.From == branch.To || (conductance == 0 && source == 0))
        {
            return;
        }

        text.Append("* ").Append(branch.Owner).Append(' ').Append(branch.Use)
            .Append(branch.Target is null ? "" : " " + branch.Target).Append('\n');
        if (branch.Use == BranchUse.Source && source != 0)
        {
            // A battery's current source beside its resistance, turned back into volts behind it.
            Number(text.Append('V').Append(index).Append(" e").Append(index).Append(' ').Append(Node(branch.To)).Append(' '), -source / conductance);
            Resistor(text, index.ToString(CultureInfo.InvariantCulture), Node(branch.From), $"e{index}", 1 / conductance);
            return;
        }

        if (conductance > 0)
        {
            Resistor(text, index.ToString(CultureInfo.InvariantCulture), Node(branch.From), Node(branch.To), 1 / conductance);
        }

        if (source != 0)
        {
            Number(text.Append('I').Append(index).Append(' ').Append(Node(branch.From)).Append(' ').Append(Node(branch.To)).Append(' '), source);
        }
    }

    private static string Node(int node) => node < 0 ? "0" : $"n{node}";

    private static void Resistor(StringBuilder text, string name, string from, string to, double ohms) =>
        Number(text.Append('R').Append(name).Append(' ').Append(from).Append(' ').Append(to).Append(' '), ohms);

    private static void Number(StringBuilder text, double value) =>
        text.Append(value.ToString("R", CultureInfo.InvariantCulture)).Append('\n');
}
