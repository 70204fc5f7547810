using System.Security.Cryptography;
using System.Text;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Reporting;

/// <summary>Who a report is for.</summary>
public enum ReportReader
{
    /// <summary>One page in plain words.</summary>
    Owner,

    /// <summary>Everything that was read, for somebody of the trade.</summary>
    Colleague,
}

/// <summary>The paper a report is printed on.</summary>
public enum ReportPaper
{
    /// <summary>Whatever the printer holds.</summary>
    Any,

    A4,
    Letter,
}

/// <summary>
/// A report as one HTML file: no script, nothing fetched from anywhere, and a policy in its head that forbids both whatever
/// its texts say.
/// </summary>
public static class ReportPage
{
    private static readonly string Style = Read("styles/report.css");

    /// <param name="texts">The texts of this project and those below it.</param>
    /// <param name="drawing">The circuit as SVG with the fault marked; null for a report without it.</param>
    public static string Html(Report report, TextCatalog texts, ReportReader reader, ReportPaper paper, string? drawing)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(texts);
        var words = new ReportWords(texts);
        var css = PageRule(paper) + Style;
        var html = new HtmlWriter();
        html.Start("!doctype html");
        html.Start("html", ("lang", words.Language.Code));
        html.Element("head", null, () =>
        {
            html.Start("meta", ("charset", "utf-8"));
            html.Start("meta", ("http-equiv", "Content-Security-Policy"), ("content", Policy(css)));
            html.Start("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
            html.Start("meta", ("name", "color-scheme"), ("content", "light"));
            html.Element("title", Title(report, words, reader));
            html.Style(css);
        });
        html.Element("body", reader == ReportReader.Owner ? "owner" : "colleague", () =>
        {
            if (reader == ReportReader.Owner)
            {
                new OwnerPage(html, words, report, drawing).Write();
            }
            else
            {
                new ColleaguePage(html, words, report, drawing).Write();
            }
        });
        return html.ToString();
    }

    /// <summary>Nothing may run or be fetched; the one style sheet is known by its digest, and the drawing lies in the page.</summary>
    private static string Policy(string css) =>
        $"default-src 'none'; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(css)))}'; "
        + "img-src data:; base-uri 'none'; form-action 'none'";

    private static string PageRule(ReportPaper paper) => paper switch
    {
        ReportPaper.A4 => "@page { size: A4 }\n",
        ReportPaper.Letter => "@page { size: letter }\n",
        _ => "",
    };

    private static string Title(Report report, ReportWords words, ReportReader reader) => string.Join(
        " - ",
        new[] { words.Say(reader == ReportReader.Owner ? "report.title-owner" : "report.title-colleague"), report.Vehicle, words.Day(report.Ended) }
            .Where(t => t.Length > 0));

    private static string Read(string name)
    {
        using var stream = typeof(ReportPage).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd().Replace("\r\n", "\n", StringComparison.Ordinal);
    }
}
