using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Output;

/// <summary>
/// What the suspects would show at a check: a ruled axis with a letter for each bunch of suspects, or the words they
/// would be answered with.
/// </summary>
public static class ExpectedPicture
{
    private const int Asked = 1000, NamesInARow = 3, Indent = 4;

    /// <summary>Odds under which a suspect is not drawn, and a bunch of them gets no row.</summary>
    private const double WorthDrawing = 0.0005, WorthARow = 0.005;

    public static void Draw(Terminal terminal, JobSession session, Check check)
    {
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(check);
        var readings = session.Investigation.Expected(check, Asked)
            .Where(r => r.Suspect!.Odds >= WorthDrawing && (r.Mean is not null || r.Word is not null))
            .ToList();
        var healthy = session.Investigation.ExpectedHealthy(check);
        if (healthy.Mean is not null || healthy.Word is not null)
        {
            readings.Add(healthy);
        }

        if (readings.Count == 0)
        {
            return;
        }

        terminal.Line(terminal.Say("expected.heading"), Page.Heading);
        var numbers = readings.Where(r => r.Mean is not null).ToList();
        if (numbers.Count > 0)
        {
            DrawAxis(terminal, session, check, numbers);
        }

        foreach (var word in readings.Where(r => r.Mean is null).GroupBy(r => r.Word!))
        {
            if (IsWorthARow([.. word]))
            {
                Row(terminal, TextOf(session, check, word.Key), [.. word], 16);
            }
        }

        terminal.Blank();
    }

    private static void DrawAxis(Terminal terminal, JobSession session, Check check, List<ExpectedReading> numbers)
    {
        var columns = Math.Clamp(terminal.Width - (2 * Indent) - 6, 20, 72);
        var quantity = QuantityOf(check);
        var scale = Scale.Of([.. numbers.Select(n => n.Mean!.Value)], columns, quantity == Quantity.Ohms);
        var bunches = Bunches(numbers, scale).Where(IsWorthARow).ToList();
        var marks = Enumerable.Repeat(' ', columns).ToArray();
        for (var i = 0; i < bunches.Count; i++)
        {
            var column = scale.ColumnOf(bunches[i][0].Mean!.Value);
            while (marks[column] != ' ' && column < columns - 1)
            {
                column++;
            }

            marks[column] = Letter(i);
        }

        var margin = new string(' ', Indent);
        terminal.Pieces((margin + new string(marks).TrimEnd(), Page.Heading));
        terminal.Pieces((margin + scale.Axis + " " + Unit(quantity), null));
        terminal.Pieces((margin + scale.Labels, null));
        for (var i = 0; i < bunches.Count; i++)
        {
            var (low, high) = (bunches[i].Min(r => r.Mean!.Value), bunches[i].Max(r => r.Mean!.Value));
            var (from, to) = (scale.Text(low), scale.Text(high));
            var range = from == to ? from : terminal.Say("expected.range", from, to);
            Row(terminal, $"{Letter(i)}  {range} {Unit(quantity)}", bunches[i], 24);
        }
    }

    private static bool IsWorthARow(List<ExpectedReading> readings) =>
        readings.Any(r => r.Suspect is null) || readings.Sum(r => r.Suspect!.Odds) >= WorthARow;

    /// <summary>Neighbours on the axis are one mark.</summary>
    private static List<List<ExpectedReading>> Bunches(List<ExpectedReading> numbers, Scale scale)
    {
        var bunches = new List<List<ExpectedReading>>();
        var last = int.MinValue;
        foreach (var reading in numbers.OrderBy(n => n.Mean!.Value))
        {
            var column = scale.ColumnOf(reading.Mean!.Value);
            if (bunches.Count == 0 || column > last + 1)
            {
                bunches.Add([]);
            }

            bunches[^1].Add(reading);
            last = column;
        }

        // More letters than the alphabet holds tell nobody anything; the axis has not that many columns apart.
        return bunches;
    }

    private static void Row(Terminal terminal, string label, List<ExpectedReading> readings, int column)
    {
        var suspects = readings.Where(r => r.Suspect is not null).OrderByDescending(r => r.Suspect!.Odds).ToList();
        var names = suspects.Take(NamesInARow).Select(r => r.Suspect!.Suspect.Id).ToList();
        if (suspects.Count > NamesInARow)
        {
            names.Add(terminal.Say("expected.more", suspects.Count - NamesInARow));
        }

        if (readings.Any(r => r.Suspect is null))
        {
            names.Add(terminal.Say("expected.healthy"));
        }

        var odds = suspects.Count == 0 ? "" : OddsText.Of(suspects.Sum(s => s.Suspect!.Odds));
        const int OddsColumns = 11;
        terminal.Line(
            "  " + label.PadRight(column - 2) + odds.PadLeft(OddsColumns - 2) + "  " + string.Join(", ", names),
            null, 0, column + OddsColumns);
    }

    private static char Letter(int index) => index < 26 ? (char)('A' + index) : '*';

    private static string TextOf(JobSession session, Check check, string word) => AnswerWord.Find(word) is { } known
        ? CliTexts.Words.TextOf(OfferedWords.For(session.Circuit, check, known))
        : word;

    private static Quantity QuantityOf(Check check) => check.Probe.Instrument switch
    {
        Instrument.Ohms or Instrument.Continuity => Quantity.Ohms,
        Instrument.AmpsClamp or Instrument.AmpsInline => Quantity.Amperes,
        _ => Quantity.Volts,
    };

    private static string Unit(Quantity quantity) => quantity switch
    {
        Quantity.Ohms => "Ω",
        Quantity.Amperes => "A",
        _ => "V",
    };
}
