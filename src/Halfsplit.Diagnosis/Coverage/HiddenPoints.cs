using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Coverage;

/// <summary>Readings at terminals that can't be touched while everything is in place: sealed, in a socket, in the harness.</summary>
internal static class HiddenPoints
{
    /// <summary>One terminal for each node, volts there against the body and against the battery's posts in each condition.</summary>
    public static IEnumerable<ExtraPoint> Of(CircuitNetwork network, IEnumerable<string> conditions)
    {
        var circuit = network.Circuit;
        var battery = circuit.Battery.Id;
        TerminalName[] against = [new(Metal.Body), new(battery, "neg"), new(battery, "pos")];
        var arrangements = conditions.Select(c => new Arrangement(c)).ToList();
        var seen = TestPoints.Touchable(network, arrangements[0], _ => true).Select(p => p.Node).ToHashSet();
        foreach (var terminal in circuit.Terminals)
        {
            var part = circuit[terminal.Part];
            if (terminal.Name.EndsWith('p') || network.NodeOf(terminal) < 0 || network.IsBus(terminal)
                || Cautions.ForbidProbing(circuit, part) || !seen.Add(network.NodeOf(terminal)))
            {
                continue;
            }

            foreach (var arrangement in arrangements)
            {
                foreach (var other in against)
                {
                    if (network.HasTerminal(other) && network.NodeOf(other) != network.NodeOf(terminal))
                    {
                        yield return new ExtraPoint(terminal, Check.Create(
                            CheckKind.Reading, CheckSubject.Number, arrangement, new Probe(Instrument.Volts, terminal, other)), 0);
                    }
                }
            }
        }
    }
}
