using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Model;
using Halfsplit.Simulation.Faults;

namespace Halfsplit.Diagnosis.Repairs;

/// <summary>What mends each kind of fault, in how many minutes and for how much; rough ranges, no published source.</summary>
public static class RepairCatalog
{
    private static readonly FrozenDictionary<string, (string Action, double Minutes, ValueRange Price)> Table = DataFile
        .Read(typeof(RepairCatalog).Assembly, "repairs.csv")
        .ToFrozenDictionary(
            row => row.Text("kind"),
            row => (row.Text("action"), row.Number("minutes"), new ValueRange(row.Number("low"), row.Number("high"))),
            StringComparer.Ordinal);

    /// <summary>The repair for a fault mode.</summary>
    /// <param name="circuit">For prices that the sheet gives.</param>
    /// <param name="mode">What is wrong.</param>
    /// <param name="blown">Fuses that have blown from it and must be renewed with it.</param>
    public static Repair For(Circuit circuit, FaultMode mode, ImmutableArray<string> blown)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(mode);
        var (action, minutes, price) = Table.GetValueOrDefault(mode.Kind, ("replace", 30, new ValueRange(0, 50)));
        // A socket is mended as a whole: whoever has its terminals out mends them all.
        var target = mode.Kind switch
        {
            "wire" or "cavity" or "ground" => mode.Part,
            "socket" => mode.Owner + Repair.SocketSuffix,
            _ => mode.Owner,
        };
        if (circuit.Find(target)?.Notes.Price is { } known)
        {
            price = known;
        }

        return new Repair(
            $"{action} {target}", target, action, minutes, price, Covers(circuit, mode), [.. blown.Where(f => f != target)]);
    }

    private static ImmutableArray<string> Covers(Circuit circuit, FaultMode mode) => (mode.Kind, circuit.Find(mode.Owner)) switch
    {
        ("socket", { } part) => [.. part.Terminals.Select(t => $"{part.Id}.{t}")],
        (_, Lamp lamp) => [.. lamp.Filaments.Select(f => $"{lamp.Id}.{f.Terminal}")],
        (_, Module module) => [.. module.Outputs.Select(o => $"{module.Id}.{o.Name}")],
        _ => [],
    };
}
