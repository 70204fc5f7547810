using System.Text.Json;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>Writes what a bench aid has to say, as a page or as JSON.</summary>
public static class AnswerPage
{
    private const int Column = 28;

    /// <summary>Writes the answer, or tells what is wrong with the inputs.</summary>
    public static int Show(Terminal terminal, VerbSettings settings, Outcome<Answer> outcome)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(outcome);
        if (!outcome.IsGood)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, outcome.Problems);
        }

        // Kept before it is shown.
        Attached? attached = null;
        if (settings is PartSettings { Job: not null } part)
        {
            attached = Attached.To(terminal, part, outcome.Result!, out var code);
            if (attached is null)
            {
                if (!settings.Json)
                {
                    Draw(terminal, outcome.Result!);
                }

                return code;
            }
        }
        else if (settings is PartSettings { Part: not null })
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("bench.part-without-job"));
        }

        if (settings.Json)
        {
            JsonOutput.Write(terminal, json =>
            {
                Write(terminal, json, outcome.Result!);
                attached?.Write(terminal, json);
            });
        }
        else
        {
            Draw(terminal, outcome.Result!);
            attached?.Draw(terminal);
        }

        return ExitCode.Good;
    }

    private static void Draw(Terminal terminal, Answer answer)
    {
        terminal.Line(answer.Title, Page.Heading);
        foreach (var caution in answer.Cautions)
        {
            terminal.Line(terminal.Say("bench.caution", caution), Page.Caution, 2, 2);
        }

        foreach (var (step, i) in answer.Steps.Select((step, i) => (step, i)))
        {
            terminal.Line(terminal.Say("bench.step", i + 1, step), null, 2, 3);
        }

        foreach (var line in answer.Lines)
        {
            terminal.Row(terminal.Say(line.Label), terminal.Say(line.Said), Column);
        }

        foreach (var judgement in answer.Judgements)
        {
            terminal.Line(terminal.Say(judgement), Page.Heading, 0, 2);
        }

        foreach (var note in answer.Notes)
        {
            terminal.Line(terminal.Say("bench.note", note), null, 0, 2);
        }
    }

    private static void Write(Terminal terminal, Utf8JsonWriter json, Answer answer)
    {
        json.WriteString("title", terminal.Say(answer.Title));
        Texts(terminal, json, "cautions", answer.Cautions);
        Texts(terminal, json, "steps", answer.Steps);
        json.Array("lines", answer.Lines, line =>
        {
            json.WriteString("name", line.Name);
            json.WriteString("about", line.About);
            json.WriteString("text", terminal.Say(line.Said));
            json.Number("value", line.Measure?.Value);
            json.WriteString("unit", line.Measure?.Symbol ?? "");
            json.Number("low", line.Measure?.Range?.Low);
            json.Number("high", line.Measure?.Range?.High);
        });
        json.Array("judgements", answer.Judgements, judgement =>
        {
            json.WriteString("code", judgement.Code);
            json.WriteString("text", terminal.Say(judgement));
        });
        Texts(terminal, json, "notes", answer.Notes);
        json.WriteString("next", answer.NextReading);
        json.WriteString("found", answer.Found);
    }

    private static void Texts(Terminal terminal, Utf8JsonWriter json, string name, IEnumerable<Message> messages) =>
        json.Texts(name, messages.Select(terminal.Say));
}
