using System.Collections.Immutable;
using Halfsplit.Circuits.Lint;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;

namespace Halfsplit.Cli.Cars;

/// <summary>A sheet's text, from a file or from those shipped.</summary>
/// <param name="Name">As the person named it.</param>
/// <param name="Text">All of it; null where it can't be had.</param>
/// <param name="Problem">Why not.</param>
public sealed record SheetSource(string Name, string? Text, Message? Problem)
{
    /// <summary>Larger files are no sheets.</summary>
    private const long MostBytes = 4_000_000;

    /// <summary>The circuit, null if there is any error, and every problem in the order of the sheet.</summary>
    public (Circuit? Circuit, ImmutableArray<SheetProblem> Problems) Read()
    {
        var reading = SheetReader.Read(Text ?? "");
        var problems = reading.Circuit is { } circuit
            ? reading.Problems.AddRange(CircuitLint.Check(circuit, reading.Positions).Except(reading.Problems))
            : reading.Problems;
        problems = [.. problems.OrderBy(p => p.Line).ThenBy(p => p.Column)];
        return (problems.Any(p => p.Severity == ProblemSeverity.Error) ? null : reading.Circuit, problems);
    }

    /// <summary>A file of this name comes first, then a shipped sheet.</summary>
    public static SheetSource Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        if (!File.Exists(name))
        {
            return ShippedSheets.Text(name) is { } shipped
                ? new SheetSource(name, shipped, null)
                : new SheetSource(name, null, new Message(
                    "cli.no-sheet", name, Spelling.Hint(name, ShippedSheets.Names)));
        }

        try
        {
            return new FileInfo(name).Length > MostBytes
                ? new SheetSource(name, null, new Message("cli.sheet-too-large", name))
                : new SheetSource(name, File.ReadAllText(name), null);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new SheetSource(name, null, new Message("cli.sheet-unreadable", name, trouble.Message));
        }
    }
}
