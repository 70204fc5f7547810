using Halfsplit.Circuits.Importing;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Verbs;

/// <summary>Writes a sheet's wires, and its parts where asked, as plain tables.</summary>
public static class ToTable
{
    public static int Run(Terminal terminal, ToTableSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var source = SheetSource.Find(settings.Sheet);
        if (source.Text is null || source.Read().Circuit is not { } circuit)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, source.Problem ?? new Message("cli.sheet-has-errors", source.Name));
        }

        try
        {
            File.WriteAllText(settings.Output, TableExport.Wires(circuit));
            if (settings.Parts is { } parts)
            {
                File.WriteAllText(parts, TableExport.Parts(circuit));
            }
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, new Message("table.unwritable", settings.Output, wrong.Message));
        }

        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("file", settings.Output);
                json.WriteString("partsFile", settings.Parts);
                json.WriteNumber("wires", circuit.Wires.Length);
                json.WriteNumber("joints", circuit.Joints.Length);
                json.Texts("notCarried", NotCarried(circuit).Select(terminal.Say));
            });
        }
        else
        {
            terminal.Line(new Message("table.written", settings.Output, circuit.Wires.Length, circuit.Joints.Length), Page.Good);
            foreach (var lost in NotCarried(circuit))
            {
                terminal.Line(lost, Page.Caution, 0, 2);
            }
        }

        return ExitCode.Good;
    }

    /// <summary>What a plain table has no column for, cautions first: whoever makes a sheet of it has to add it again.</summary>
    private static IEnumerable<Message> NotCarried(Circuit circuit)
    {
        foreach (var place in circuit.Places.Where(p => p.Cautions.Length > 0))
        {
            yield return new Message("table.lost-cautions", place.Name, string.Join(", ", place.Cautions));
        }

        if (circuit.Cautions.Length > 0)
        {
            yield return new Message("table.lost-cautions", circuit.Title, string.Join(", ", circuit.Cautions));
        }

        yield return new Message("table.lost");
    }
}
