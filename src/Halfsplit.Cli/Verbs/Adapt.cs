using System.Collections.Immutable;
using Halfsplit.Circuits.Adapting;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Conversation;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Verbs;

/// <summary>Makes a sheet fit another car, by questions or by changes in words.</summary>
public static class Adapt
{
    public static int Run(Terminal terminal, AdaptSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (Read(settings.Sheet, out var problem) is not { } parent)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, problem!);
        }

        if (settings.Against is { } other)
        {
            return Compare(terminal, settings, parent, other);
        }

        if (settings.Output is { } taken && (Directory.Exists(taken) || (File.Exists(taken) && !settings.Overwrite)))
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, new Message("adapting.file-exists", taken));
        }

        if (settings.Changes.Length > 0)
        {
            return Change(terminal, settings, parent);
        }

        if (settings.Json || settings.Output is null)
        {
            return terminal.Fail(
                ExitCode.Usage, settings.Json,
                settings.Json ? new Message("adapting.no-changes") : new Message("adapting.no-file", settings.Sheet));
        }

        var talk = new AdaptingTalk(terminal, parent);
        var goesOn = talk.Run();
        if (!goesOn || talk.Changes.Count == 0)
        {
            terminal.Line(new Message("adapting.nothing-written"), Page.Caution);
            return ExitCode.Good;
        }

        terminal.Blank();
        var code = Finish(terminal, settings, parent, talk.Circuit);
        if (code == ExitCode.Good)
        {
            terminal.Line(new Message("adapting.again"));
            var changes = talk.Changes.Select(c => $" --change \"{ChangeText.Write(c).Replace("\"", "\\\"", StringComparison.Ordinal)}\"");
            terminal.Raw($"halfsplit adapt {settings.Sheet} -o {settings.Output}{string.Concat(changes)}");
        }

        return code;
    }

    private static int Change(Terminal terminal, AdaptSettings settings, Circuit parent)
    {
        var circuit = parent;
        var (assumptions, warnings) = (new List<Message>(), new List<Message>());
        foreach (var text in settings.Changes)
        {
            var change = ChangeText.Parse(text, out var problem);
            var done = change is null ? null : SheetAdapter.Apply(circuit, change);
            if (done?.Circuit is null)
            {
                var why = problem ?? done!.Problem!;
                return terminal.Fail(
                    ExitCode.Usage, settings.Json, string.IsNullOrWhiteSpace(text) ? why : new Message("adapting.change-refused", text, why));
            }

            circuit = done.Circuit;
            assumptions.AddRange(done.Assumptions);
            warnings.AddRange(done.Warnings.Except(warnings));
        }

        if (!settings.Json)
        {
            Tell(terminal, assumptions, warnings);
            return Finish(terminal, settings, parent, circuit);
        }

        if (settings.Output is { } path && Write(terminal, path, settings.Sheet, parent, circuit) is { } trouble)
        {
            return terminal.Fail(ExitCode.Broken, true, trouble);
        }

        JsonOutput.Write(terminal, json =>
        {
            json.WriteString("sheet", settings.Sheet);
            json.WriteString("written", settings.Output);
            json.Texts("changes", settings.Changes);
            Texts("differences", CircuitDifference.Between(parent, circuit));
            Texts("assumptions", assumptions);
            Texts("warnings", warnings);
            json.WriteString("text", Text(terminal, settings.Sheet, parent, circuit));

            void Texts(string name, IEnumerable<Message> messages) => json.Array(name, messages, message =>
            {
                json.WriteString("code", message.Code);
                json.WriteString("text", terminal.Say(message));
            });
        });
        return ExitCode.Good;
    }

    private static int Compare(Terminal terminal, AdaptSettings settings, Circuit parent, string name)
    {
        if (settings.Changes.Length > 0 || settings.Output is not null)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("adapting.against-alone"));
        }

        if (Read(name, out var problem) is not { } other)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, problem!);
        }

        var differences = CircuitDifference.Between(parent, other);
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                json.WriteString("sheet", settings.Sheet);
                json.WriteString("against", name);
                json.Array("differences", differences, message =>
                {
                    json.WriteString("code", message.Code);
                    json.WriteString("text", terminal.Say(message));
                });
            });
        }
        else
        {
            Differences(terminal, settings.Sheet, differences);
        }

        return ExitCode.Good;
    }

    /// <summary>The whole difference, the file, what the lint says of it, and how to go on.</summary>
    private static int Finish(Terminal terminal, AdaptSettings settings, Circuit parent, Circuit circuit)
    {
        Differences(terminal, settings.Sheet, CircuitDifference.Between(parent, circuit));
        if (settings.Output is not { } path)
        {
            terminal.Line(new Message("adapting.not-written"), Page.Caution);
            return ExitCode.Good;
        }

        if (Write(terminal, path, settings.Sheet, parent, circuit) is { } trouble)
        {
            return terminal.Fail(ExitCode.Broken, false, trouble);
        }

        terminal.Raw(terminal.Say("adapting.written", path, settings.Sheet));
        Lint.Tell(terminal, path, SheetSource.Find(path).Read().Problems, Path.GetFileName(path));
        terminal.Raw(terminal.Say("adapting.go-on", path));
        return ExitCode.Good;
    }

    private static void Differences(Terminal terminal, string sheet, ImmutableArray<Message> differences)
    {
        terminal.Line(new Message(differences.IsEmpty ? "adapting.no-differences" : "adapting.differences", sheet), Page.Heading);
        foreach (var difference in differences)
        {
            terminal.Line(difference, null, 2, 4);
        }
    }

    /// <summary>What was assumed, and what the lint says now.</summary>
    public static void Tell(Terminal terminal, IEnumerable<Message> assumptions, IEnumerable<Message> warnings)
    {
        ArgumentNullException.ThrowIfNull(assumptions);
        ArgumentNullException.ThrowIfNull(warnings);
        foreach (var assumption in assumptions)
        {
            terminal.Line(new Message("adapting.assumed", assumption), null, 2, 4);
        }

        foreach (var warning in warnings)
        {
            terminal.Line(new Message("adapting.look", warning), Page.Caution, 2, 4);
        }
    }

    private static Circuit? Read(string name, out Message? problem)
    {
        var source = SheetSource.Find(name);
        var circuit = source.Text is null ? null : source.Read().Circuit;
        problem = circuit is null ? source.Problem ?? new Message("cli.sheet-has-errors", name) : null;
        return circuit;
    }

    private static string Text(Terminal terminal, string sheet, Circuit parent, Circuit circuit)
    {
        var note = terminal.Say("adapting.file-note", Path.GetFileName(sheet), parent.Title);
        return $"# {string.Concat(note.Select(c => char.IsControl(c) ? ' ' : c))}\n{SheetWriter.Write(circuit)}";
    }

    private static Message? Write(Terminal terminal, string path, string sheet, Circuit parent, Circuit circuit)
    {
        try
        {
            File.WriteAllText(path, Text(terminal, sheet, parent, circuit));
            return null;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return new Message("adapting.unwritable", path, trouble.Message);
        }
    }
}
