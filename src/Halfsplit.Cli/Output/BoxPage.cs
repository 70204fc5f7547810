using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Cli.Output;

/// <summary>The fuse and relay boxes that a check is about, drawn with letters, its slots pointed at.</summary>
public static class BoxPage
{
    private const int Indent = 4;

    public static void Draw(Terminal terminal, Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        string?[] named = [check.Probe.Red?.Part, check.Probe.Black?.Part, check.Probe.About, .. check.Arrangement.Removed.Order(StringComparer.Ordinal)];
        Draw(terminal, circuit, named.OfType<string>());
    }

    /// <param name="parts">Names of parts; those that sit in no described box are passed over.</param>
    public static void Draw(Terminal terminal, Circuit circuit, IEnumerable<string> parts)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(parts);
        var seated = parts.Distinct(StringComparer.Ordinal).Select(circuit.Find).OfType<Part>().Where(p => SlotWords.Seat(circuit, p) is not null);
        foreach (var box in seated.GroupBy(p => p.Notes.Place!, StringComparer.Ordinal))
        {
            var grid = circuit.FindPlace(box.Key)!.Grid!;
            terminal.Line(
                grid.Seen is { } seen ? new Message("box.seen", box.Key, seen) : new Message("box.title", box.Key), null, 2);
            foreach (var line in BoxPicture.Lines(grid, box.Select(p => p.Notes.Slot!)))
            {
                terminal.Raw(new string(' ', Indent) + line);
            }

            terminal.Blank();
        }
    }
}
