using Halfsplit.Circuits.Messages;
using Halfsplit.Jobs.Reporting;
using Halfsplit.Jobs.Tests.Sessions;
using Xunit;

namespace Halfsplit.Jobs.Tests.Reporting;

public sealed class ReadingsCsvTests
{
    private static readonly Lazy<Report> Played = new(() => ReportBuilder.Of(PlayedJob.Play())), Began = new(() => ReportBuilder.Of(SessionJob.Began("dim")));

    [Fact]
    public void Every_row_has_the_columns_of_the_head_and_ends_as_the_standard_says()
    {
        var rows = Rows(Csv(Played.Value));

        Assert.True(rows.Count > 5);
        Assert.All(rows, r => Assert.Equal(rows[0].Count, r.Count));
        Assert.Equal("number", rows[0][0]);
    }

    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("@SUM(A1)")]
    [InlineData("-1")]
    [InlineData("  =1+1")]
    [InlineData("\t=1+1")]
    [InlineData("\n=1+1")]
    [InlineData("＝1+1")]
    public void No_cell_is_taken_for_a_formula(string typed)
    {
        var row = Rows(Csv(WithTyped(typed)))[1];

        Assert.Equal("'" + typed, row[Column("typed")]);
        Assert.Equal("'" + typed, row[Column("by")]);
    }

    [Theory]
    [InlineData("plain")]
    [InlineData("a, b; \"c\"\r\nd")]
    [InlineData("12,4 V")]
    [InlineData("")]
    public void Other_text_comes_back_as_it_was_typed(string typed) => Assert.Equal(typed, Rows(Csv(WithTyped(typed)))[1][Column("typed")]);

    [Fact]
    public void It_is_the_same_in_every_language()
    {
        var report = Played.Value;

        Assert.Equal(
            ReadingsCsv.Write(report, PlayedJob.Texts(Language.English)), ReadingsCsv.Write(report, PlayedJob.Texts(Language.German)));
        Assert.Equal(
            ReadingsJson.Write(report, PlayedJob.Texts(Language.English)), ReadingsJson.Write(report, PlayedJob.Texts(Language.German)));
    }

    private static Report WithTyped(string typed)
    {
        var report = Began.Value;
        return report with { Steps = [report.Steps[0] with { Typed = typed, By = typed }] };
    }

    private static string Csv(Report report) => ReadingsCsv.Write(report, PlayedJob.Texts(Language.English));

    private static int Column(string name) => Rows(Csv(Began.Value))[0].IndexOf(name);

    /// <summary>A reader by the letter of RFC 4180.</summary>
    private static List<List<string>> Rows(string csv)
    {
        Assert.EndsWith("\r\n", csv, StringComparison.Ordinal);
        List<List<string>> rows = [[]];
        var cell = new System.Text.StringBuilder();
        for (var i = 0; i < csv.Length; i++)
        {
            if (cell.Length == 0 && csv[i] == '"')
            {
                for (i++; csv[i] != '"' || (i + 1 < csv.Length && csv[i + 1] == '"'); i++)
                {
                    cell.Append(csv[i]);
                    i += csv[i] == '"' ? 1 : 0;
                }

                continue;
            }

            if (csv[i] == ',')
            {
                rows[^1].Add(cell.ToString());
                cell.Clear();
            }
            else if (csv[i] == '\r')
            {
                Assert.Equal('\n', csv[++i]);
                rows[^1].Add(cell.ToString());
                cell.Clear();
                rows.Add([]);
            }
            else
            {
                Assert.NotEqual('\n', csv[i]);
                cell.Append(csv[i]);
            }
        }

        rows.RemoveAt(rows.Count - 1);
        return rows;
    }
}
