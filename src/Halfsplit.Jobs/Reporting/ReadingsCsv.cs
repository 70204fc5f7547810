using System.Buffers;
using System.Globalization;
using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Reporting;

/// <summary>
/// What was done as a table for spreadsheets (RFC 4180). The same in every language: names of columns, a decimal point, the
/// words of job files. A text that a spreadsheet would take for a formula gets an apostrophe before it.
/// </summary>
public static class ReadingsCsv
{
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",\"\r\n");

    private static readonly string[] Columns =
    [
        "number", "time", "by", "sort", "check", "condition", "places", "unplugged", "removed", "jumpers", "instrument", "red", "black",
        "about", "healthy", "typed", "read", "quantity", "amount", "word", "doubtful", "cleared", "not_cleared", "minutes",
    ];

    /// <param name="texts">Says what was cleared; in English, whatever the person's language.</param>
    public static string Write(Report report, TextCatalog texts)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(texts);
        var english = texts.In(Language.English);
        var csv = new StringBuilder();
        Row(csv, Columns);
        foreach (var step in report.Steps)
        {
            Row(csv, Cells(step, english));
        }

        return csv.ToString();
    }

    private static IEnumerable<string> Cells(ReportedStep step, TextCatalog texts)
    {
        var arrangement = step.Check?.Arrangement;
        var probe = step.Check?.Probe;
        var number = step.Read as ReadingParse.Number;
        yield return step.Number.ToString(CultureInfo.InvariantCulture);
        yield return step.At.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
        yield return Guarded(step.By);
        yield return ReadingsJson.SortName(step.Sort);
        yield return Guarded(step.Check?.Id ?? "");
        yield return Guarded(arrangement?.Condition ?? "");
        yield return Guarded(string.Join("; ", step.Places));
        yield return Guarded(string.Join("; ", arrangement?.Unplugged ?? []));
        yield return Guarded(string.Join("; ", arrangement?.Removed ?? []));
        yield return Guarded(string.Join("; ", arrangement?.Jumpers.Select(j => $"{j.From} to {j.To}") ?? []));
        yield return probe?.Instrument.Name() ?? "";
        yield return Guarded(probe?.Red?.ToString() ?? "");
        yield return Guarded(probe?.Black?.ToString() ?? "");
        yield return Guarded(probe?.About ?? "");
        yield return Guarded(step.Healthy?.ToString() ?? "");
        yield return Guarded(step.Typed);
        yield return Guarded(step.Read?.ToString() ?? "");
        yield return number is null ? "" : ReadingsJson.QuantityName(number.Quantity);
        // A number of our own, minus sign included, is no formula.
        yield return number?.Value.ToString("R", CultureInfo.InvariantCulture) ?? "";
        yield return (step.Read as ReadingParse.Word)?.Answer.Id ?? "";
        yield return step.IsDoubtful ? "yes" : "";
        yield return Guarded(string.Join("; ", step.Cleared.Select(texts.Say)));
        yield return Guarded(string.Join(" ", step.NotCleared.Select(texts.Say)));
        yield return step.Minutes.ToString("0.##", CultureInfo.InvariantCulture);
    }

    /// <summary>Text that starts like a formula, behind blanks too, is made text.</summary>
    private static string Guarded(string text)
    {
        var first = text.AsSpan().TrimStart();
        return first.Length > 0 && (first[0] is '=' or '+' or '-' or '@' or '＝' or '＋' or '－' or '＠' || text[0] is '\t' or '\r' or '\n')
            ? "'" + text
            : text;
    }

    private static void Row(StringBuilder csv, IEnumerable<string> cells)
    {
        csv.AppendJoin(',', cells.Select(Quoted)).Append("\r\n");
    }

    private static string Quoted(string cell) => cell.AsSpan().ContainsAny(NeedsQuotes)
        ? "\"" + cell.Replace("\"", "\"\"", StringComparison.Ordinal) + "\""
        : cell;
}
