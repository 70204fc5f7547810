using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Shelf;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Verbs;

/// <summary>Lists the shipped sheets with their complaints, or those that answer a question.</summary>
public static class Shelf
{
    public static int Run(Terminal terminal, ShelfSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var question = string.Join(' ', settings.Words);
        var found = ShelfSearch.Find(question);
        var asked = ShelfQuestion.Read(question);
        var aid = ShelfElsewhere.Aid(question);
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("aid", aid);
                json.Texts("unknown", asked.Unknown);
                json.Array("complaints", found, complaint =>
                {
                    json.WriteString("sheet", complaint.Sheet.Name);
                    json.WriteString("complaint", complaint.Name);
                    json.WriteString("load", complaint.Load);
                    json.WriteString("system", complaint.Sheet.System);
                    json.WriteNumber("volts", complaint.Sheet.NominalVolts);
                    json.WriteString("title", complaint.Sheet.Title);
                    json.WriteString("summary", complaint.Sheet.Summary);
                    json.Array("fuses", complaint.Fuses, fuse =>
                    {
                        json.WriteString("id", fuse.Id);
                        json.WriteString("amps", fuse.Amps);
                    });
                });
            });
            return ExitCode.Good;
        }

        if (!asked.Unknown.IsEmpty && aid is null)
        {
            terminal.Line(new Message(found.IsEmpty ? "shelf.unknown" : "shelf.unknown-beside", string.Join(", ", asked.Unknown)));
        }

        if (aid is not null)
        {
            terminal.Line(new Message("shelf.elsewhere", aid));
            if (found.IsEmpty)
            {
                return ExitCode.Good;
            }

            terminal.Blank();
            terminal.Line(new Message("shelf.nearest"));
        }
        else if (found.IsEmpty)
        {
            terminal.Line(new Message("shelf.nothing", question));
            return ExitCode.Good;
        }

        var system = "";
        foreach (var sheet in found.GroupBy(c => c.Sheet))
        {
            // A search lists the best answers first, whatever system they belong to.
            if (question.Length == 0 && sheet.Key.System != system)
            {
                terminal.Line(new Message($"shelf.system-{system = sheet.Key.System}"), Page.Heading);
            }

            terminal.Line(new Message("shelf.sheet", sheet.Key.Name, sheet.Key.Title), null, 2);
            foreach (var complaint in sheet)
            {
                var fuses = string.Join(", ", complaint.Fuses.Where(f => asked.Amps.Contains(f.Amps)).Select(f => $"{f.Id} {f.Amps} A"));
                terminal.Line(
                    fuses.Length > 0 ? new Message("shelf.complaint-of-fuse", complaint.Name, complaint.Load, fuses) : new Message("shelf.complaint", complaint.Name, complaint.Load),
                    null, 6, 2);
            }
        }

        terminal.Blank();
        terminal.Raw(terminal.Say("shelf.go-on", found[0].Sheet.Name, found[0].Name));
        return ExitCode.Good;
    }
}
