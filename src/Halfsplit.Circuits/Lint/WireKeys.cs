using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Circuits.Lint;

/// <summary>Where in the wiring each wire was written.</summary>
internal sealed class WireKeys
{
    private readonly Dictionary<PathWire, string[]> _keys = new(ReferenceEqualityComparer.Instance);

    public WireKeys(Circuit circuit)
    {
        for (var p = 0; p < circuit.Paths.Length; p++)
        {
            for (var i = 0; i < circuit.Paths[p].Items.Length; i++)
            {
                if (circuit.Paths[p].Items[i] is PathWire wire)
                {
                    _keys.TryAdd(wire, WiringReader.Key(p, i));
                }
            }
        }
    }

    /// <summary>Key of the wire's item; the wiring as a whole for a wire that no path has.</summary>
    public string[] Of(Wire wire) => _keys.GetValueOrDefault(wire.Spec, ["wiring"]);
}
