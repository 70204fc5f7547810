using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Devices;

namespace Halfsplit.Simulation.Compiled;

public static partial class NetworkCompiler
{
    /// <summary>The network while it is being put together.</summary>
    private sealed class Build
    {
        private readonly Dictionary<TerminalName, TerminalName> _joined = [];

        public Build(Circuit circuit)
        {
            Circuit = circuit;
            Defaults = ComponentDefaults.For(circuit.Battery.NominalVolts);
            foreach (var joint in circuit.Joints)
            {
                _joined[Root(joint.First)] = Root(joint.Second);
            }

            var reference = Root(new TerminalName(circuit.Battery.Id, "neg"));
            var byRoot = new Dictionary<TerminalName, int> { [reference] = -1 };
            foreach (var terminal in circuit.Terminals)
            {
                var root = Root(terminal);
                if (!byRoot.TryGetValue(root, out var node))
                {
                    byRoot[root] = node = Names.Count;
                    Names.Add(terminal.ToString());
                }

                Nodes[terminal] = node;
            }
        }

        public Circuit Circuit { get; }
        public ComponentDefaults Defaults { get; }
        public Dictionary<TerminalName, int> Nodes { get; } = [];
        public List<string> Names { get; } = [];
        public List<NetworkBranch> Branches { get; } = [];
        public List<int> PlainBranches { get; } = [];
        public List<Device> Devices { get; } = [];

        public int Node(TerminalName terminal) => Nodes[terminal];

        public int InnerNode(string name)
        {
            Names.Add(name);
            return Names.Count - 1;
        }

        public int Branch(
            int from, int to, BranchUse use, string owner, string? target, double ohms, double tolerance)
        {
            Branches.Add(new NetworkBranch(from, to, use, owner, target, ohms, tolerance));
            return Branches.Count - 1;
        }

        public void Plain(
            int from, int to, BranchUse use, string owner, string? target, double ohms, double tolerance) =>
            PlainBranches.Add(Branch(from, to, use, owner, target, ohms, tolerance));

        public void Plain(
            TerminalName from, TerminalName to, BranchUse use, string owner, string target, double ohms,
            double tolerance) => Plain(Node(from), Node(to), use, owner, target, ohms, tolerance);

        public void Plain(
            TerminalName from, TerminalName to, BranchUse use, string owner, string target, ComponentDefault value) =>
            Plain(from, to, use, owner, target, value.Value, Spread(value.Name));

        public void PlainElement(Part part, string from, string to, double ohms) =>
            PlainBranches.Add(Element(part, from, to, BranchUse.Element, ohms, LoadTolerance));

        public int Element(Part part, string from, string to, BranchUse use, double ohms, double tolerance) => Branch(
            Node(new(part.Id, from)), Node(new(part.Id, to)), use, part.Id, part.Id, ohms, tolerance);

        /// <summary>Spread of a component's logarithm: its range taken as two standard deviations either way.</summary>
        public double Spread(string name)
        {
            var range = Defaults[name].Range;
            return Math.Log(range.High / range.Low) / 4;
        }

        private TerminalName Root(TerminalName terminal)
        {
            while (_joined.TryGetValue(terminal, out var next) && next != terminal)
            {
                terminal = next;
            }

            return terminal;
        }
    }
}
