using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>What hangs behind a contact.</summary>
/// <param name="Loads">Loads that get their feed there.</param>
/// <param name="Beyond">The same loads and those behind further contacts and outputs: what all of it can draw.</param>
/// <param name="Others">Parts that are neither loads nor what leads to them: coils' relays, modules, further switches.</param>
internal sealed record Supplied(IReadOnlyList<Load> Loads, IReadOnlyList<Load> Beyond, IReadOnlyList<string> Others);

/// <summary>Which way feed and ground come to a terminal, and what can cut it.</summary>
internal sealed class Ways(Circuit circuit)
{
    private readonly CircuitGraph _graph = new(circuit);
    private HashSet<string>? _isolators;

    public bool IsWired(TerminalName terminal) => _graph.IsWired(terminal);

    public bool IsFed(TerminalName terminal) => _graph.IsFed(terminal);

    public bool IsGrounded(TerminalName terminal) => _graph.IsGrounded(terminal);

    public bool IsAlwaysFed(TerminalName terminal) => _graph.Reach(terminal, IsClosed).Contains(_graph.Positive);

    public bool IsAlwaysGrounded(TerminalName terminal) => _graph.Reach(terminal, IsClosed).Contains(_graph.Negative);

    /// <summary>True if an alternator's D+ feeds this terminal.</summary>
    public bool IsFedByGenerator(TerminalName terminal) => _graph
        .Reach(terminal, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Resistance or EdgeKind.Generator or EdgeKind.Field or EdgeKind.Output))
        .Any(t => t.Name == "D+" && circuit.Find(t.Part) is Alternator);

    /// <summary>Loads that get their feed through a switch and no relay.</summary>
    public IEnumerable<Load> FedBy(Switch choice) => choice.Terminals
        .Select(t => new TerminalName(choice.Id, t))
        .Where(t => !IsAlwaysFed(t) && !IsAlwaysGrounded(t))
        .SelectMany(t => Behind([t]).Loads)
        .Distinct();

    /// <summary>Switches, relays and modules without any one of which the feed does not come here.</summary>
    public HashSet<string> Gates(TerminalName terminal) => [.. circuit.Parts
        .Where(p => p is Relay or Module or Switch { OpensByItself: false })
        .Select(p => p.Id)
        .Where(id => !IsFedWithout(terminal, id))];

    /// <summary>The nearest contacts and outputs through which the feed comes here: each with its end on this side.</summary>
    public IReadOnlyList<Edge> NearestControls(TerminalName terminal)
    {
        var reached = _graph.Reach(terminal, IsClosed, IsMetal);
        return [.. reached.SelectMany(_graph.Edges)
            .Where(e => (e.Kind == EdgeKind.Contact && !IsCutOff(e)) || (e.Kind == EdgeKind.Output && e.From.Part != terminal.Part))
            .Where(e => !reached.Contains(e.To) && IsFedWithout(e.To, e.Part!))];
    }

    /// <summary>What gets its feed behind these terminals of a part, up to the next contact.</summary>
    public Supplied Behind(IEnumerable<TerminalName> terminals)
    {
        var starts = terminals.ToList();
        List<Part> Reached(Func<Edge, bool> passes) => [.. starts
            .SelectMany(t => _graph.Reach(t, passes, IsMetal))
            .Select(t => circuit.Find(t.Part)!).Distinct().OrderBy(p => circuit.Parts.IndexOf(p))];
        var parts = Reached(Leads);
        var beyond = Reached(e => Leads(e) || PassesOn(e));
        return new Supplied(
            [.. parts.OfType<Load>()],
            [.. beyond.OfType<Load>()],
            [.. parts.Where(p => starts[0].Part != p.Id
                && p is not (Load or Connector or Splice or Fuse or Breaker or Ptc or Resistor or Metal or Ground or Switch { OpensByItself: true }))
                .Select(p => p.Id)]);
    }

    /// <summary>
    /// Wires, fuses, contacts and outputs that lie between a terminal and an end, in any state of the switches; what only
    /// branches off is left out.
    /// </summary>
    public IReadOnlyList<Edge> Between(TerminalName start, bool toGround)
    {
        var edges = new Dictionary<(TerminalName, TerminalName, string?, string?), Edge>();
        _graph.Reach(start, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Resistance or EdgeKind.Generator), IsMetal, e =>
        {
            var (low, high) = e.From < e.To ? (e.From, e.To) : (e.To, e.From);
            edges.TryAdd((low, high, e.Part, e.Wire?.Id), e);
        });
        bool IsEnd(TerminalName t) => t == start || (toGround ? t == _graph.Negative || IsMetal(t) : t == _graph.Positive);
        while (true)
        {
            var meet = edges.Values.SelectMany(e => new[] { e.From, e.To }).CountBy(t => t).ToDictionary(t => t.Key, t => t.Value);
            var loose = edges.Where(e => (meet[e.Value.From] == 1 && !IsEnd(e.Value.From)) || (meet[e.Value.To] == 1 && !IsEnd(e.Value.To)))
                .Select(e => e.Key).ToList();
            if (loose.Count == 0)
            {
                return [.. edges.Values];
            }

            loose.ForEach(key => edges.Remove(key));
        }
    }

    private bool IsFedWithout(TerminalName terminal, string part) =>
        _graph.Reach(terminal, e => e.Kind is not (EdgeKind.Consumer or EdgeKind.Generator) && e.Part != part).Contains(_graph.Positive);

    /// <summary>A contact or output that takes the feed further, to where neither feed nor ground is there without it.</summary>
    private bool PassesOn(Edge edge) => circuit.Find(edge.Part ?? "") switch
    {
        Relay => edge is { Kind: EdgeKind.Contact, From.Name: "30" },
        Switch => !IsAlwaysFed(edge.To) && !IsAlwaysGrounded(edge.To),
        Module module => edge.Kind == EdgeKind.Output && module.Outputs.Any(o => o.Name == edge.To.Name),
        _ => false,
    };

    private bool Leads(Edge edge) =>
        IsClosed(edge) || (edge.Kind == EdgeKind.Resistance && circuit.Find(edge.Part!) is Resistor);

    private bool IsClosed(Edge edge) =>
        edge.Kind is EdgeKind.Wire or EdgeKind.Touch or EdgeKind.Protection || IsCutOff(edge)
        || (edge.Kind == EdgeKind.Contact && IsIsolator(edge.Part!));

    private bool IsCutOff(Edge edge) =>
        edge is { Kind: EdgeKind.Contact, Part: { } part } && circuit.Find(part) is Switch { OpensByItself: true };

    /// <summary>A switch in the battery's own cable: all feed or all ground comes through it, so it switches no load.</summary>
    private bool IsIsolator(string part) => (_isolators ??= [.. new[] { _graph.Positive, _graph.Negative }
        .Select(post => _graph.Reach(post, e => e.Kind is EdgeKind.Wire or EdgeKind.Touch).Select(t => circuit.Find(t.Part)!).Distinct().ToList())
        .Where(parts => parts.All(p => p is Battery or Switch or Splice or Connector))
        .SelectMany(parts => parts.OfType<Switch>())
        .Where(s => s.Terminals.Length == 2)
        .Select(s => s.Id)]).Contains(part);

    private bool IsMetal(TerminalName terminal) => circuit.Find(terminal.Part) is Metal or Ground;
}
