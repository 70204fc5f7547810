using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Learning;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Jobs.Storage;

namespace Halfsplit.Cli.Verbs;

/// <summary>Lists what the finished jobs of a folder teach.</summary>
public static class History
{
    /// <summary>A name that was never met is listed where its weight moved by more than this share.</summary>
    private const double WorthARow = 0.1;

    private const int MostRows = 12;

    public static int Run(Terminal terminal, HistorySettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        var read = terminal.While(() => HistoryFolder.Read(settings.Folder));
        if (!read.IsDone)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, read.Problem);
        }

        foreach (var problem in read.Value.Problems)
        {
            terminal.Error.WriteLine(terminal.Say("trouble", terminal.Say(problem)));
        }

        var cases = read.Value.Entries.Select(e => e.Case).OfType<ProvenCase>().ToImmutableArray();
        var kinds = Rows(FailureHistory.Of(cases, ""), cases);
        var circuits = cases.Select(c => c.Expected)
            .GroupBy(e => e.Circuit.Trim(), StringComparer.OrdinalIgnoreCase)
            .OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase)
            .Select(g => Circuit(g.Key, FailureHistory.Of(cases, g.Key), [.. g]))
            .ToList();
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => Write(terminal, json, read.Value, cases.Length, kinds, circuits));
        }
        else
        {
            Draw(terminal, settings.Folder, read.Value.Entries.Length, cases.Length, kinds, circuits);
        }

        return ExitCode.Good;
    }

    private static ImmutableArray<Row> Rows(FailureHistory history, ImmutableArray<ProvenCase> cases) =>
        [.. history.Kinds
            .Select(k => new Row(k, cases.Length, FailureWeights.Of(k.Name, PlaceEnvironment.Dry), history.KindFactor(k.Name)))
            .OrderByDescending(r => r.Count.Jobs).ThenByDescending(r => r.Count.Expected).ThenBy(r => r.Count.Name, StringComparer.Ordinal)];

    private static CircuitRows Circuit(string title, FailureHistory history, ImmutableArray<CaseExpectation> expected)
    {
        var kindOf = expected.SelectMany(e => e.Shares).DistinctBy(s => s.Suspect)
            .ToDictionary(s => s.Suspect, s => s.Kind, StringComparer.Ordinal);
        return new CircuitRows(
            title, history.CircuitJobs,
            [.. history.Suspects
                .Select(s => new Row(
                    s, history.CircuitJobs, expected.Max(e => e.WeightOf(s.Name)),
                    history.SuspectFactor(s.Name) * history.KindFactor(kindOf[s.Name])))
                .OrderByDescending(r => r.Count.Jobs).ThenByDescending(r => r.Count.Expected).ThenBy(r => r.Count.Name, StringComparer.Ordinal)]);
    }

    private static void Draw(
        Terminal terminal, string folder, int jobs, int counted, ImmutableArray<Row> kinds, List<CircuitRows> circuits)
    {
        terminal.Line(new Message("history.counted", counted, jobs, folder));
        if (counted == 0)
        {
            return;
        }

        terminal.Blank();
        Table(terminal, terminal.Say("history.by-kind"), kinds);
        foreach (var circuit in circuits)
        {
            terminal.Blank();
            Table(terminal, terminal.Say("history.by-circuit", circuit.Title, circuit.Jobs), circuit.Rows);
        }
    }

    private static void Table(Terminal terminal, string heading, ImmutableArray<Row> rows)
    {
        terminal.Line(heading, Page.Heading);
        terminal.Line(Cells(
            "", terminal.Say("history.head-jobs"), terminal.Say("history.head-expected"), terminal.Say("history.head-weight"),
            terminal.Say("history.head-learned")));
        var shown = rows.Where(r => r.Count.Jobs > 0 || Math.Abs(r.Factor - 1) > WorthARow).Take(MostRows).ToList();
        foreach (var row in shown)
        {
            terminal.Line(Cells(
                Plain(row.Count.Name), terminal.Say("history.of", row.Count.Jobs, row.Of), Text(row.Count.Expected),
                Text(row.Weight), Text(row.Weight * row.Factor)));
        }

        if (rows.Length > shown.Count)
        {
            terminal.Line(new Message("history.more", rows.Length - shown.Count), null, 2);
        }
    }

    private static void Write(
        Terminal terminal, Utf8JsonWriter json, HistoryRead read, int counted, ImmutableArray<Row> kinds, List<CircuitRows> circuits)
    {
        json.WriteNumber("jobs", read.Entries.Length);
        json.WriteNumber("counted", counted);
        json.Array("kinds", kinds, row => Write(json, row));
        json.Array("circuits", circuits, circuit =>
        {
            json.WriteString("title", circuit.Title);
            json.WriteNumber("jobs", circuit.Jobs);
            json.Array("suspects", circuit.Rows, row => Write(json, row));
        });
        json.Array("cases", read.Entries.Where(e => e.Case is not null), entry =>
        {
            json.WriteString("file", entry.Name);
            json.WriteString("suspect", entry.Case!.Fault.Suspect);
            json.WriteString("circuit", entry.Case.Expected.Circuit);
        });
        json.Texts("problems", read.Problems.Select(terminal.Say));
    }

    private static void Write(Utf8JsonWriter json, Row row)
    {
        json.WriteString("name", row.Count.Name);
        json.WriteNumber("jobs", row.Count.Jobs);
        json.WriteNumber("of", row.Of);
        json.WriteNumber("expected", row.Count.Expected);
        json.WriteNumber("weight", Math.Round(row.Weight, 4));
        json.WriteNumber("learned", Math.Round(row.Weight * row.Factor, 4));
    }

    private static string Cells(string name, string jobs, string expected, string weight, string learned) =>
        $"  {name,-34}{jobs,10}{expected,10}{weight,10}{learned,10}";

    private static string Plain(string name) => name.Replace('/', ' ').Replace('-', ' ');

    private static string Text(double value) => value.ToString("0.00", CliTexts.Formats);

    private sealed record Row(LearnedCount Count, int Of, double Weight, double Factor);

    private sealed record CircuitRows(string Title, int Jobs, ImmutableArray<Row> Rows);
}
