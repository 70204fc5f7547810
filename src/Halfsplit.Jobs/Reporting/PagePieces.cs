using System.Collections.Immutable;
using System.Text;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Reporting;

/// <summary>The pieces that both forms of a report are made of.</summary>
internal abstract class PagePieces(HtmlWriter html, ReportWords words, Report report, string? drawing)
{
    protected HtmlWriter Html { get; } = html;

    protected ReportWords Words { get; } = words;

    protected Report Report { get; } = report;

    protected void Head(string title)
    {
        Html.Element("header", null, () =>
        {
            Html.Element("p", "standing " + Report.Standing switch
            {
                ReportStanding.Proven => "good",
                ReportStanding.Repaired or ReportStanding.Found => "open",
                _ => "other",
            }, Words.Say(StandingCode));
            Html.Element("h1", title);
        });
    }

    private string StandingCode => Report.Standing switch
    {
        ReportStanding.Found => "report.standing-found",
        ReportStanding.Repaired => "report.standing-repaired",
        ReportStanding.Proven => "report.standing-proven",
        ReportStanding.HandedOver => "report.standing-handed-over",
        ReportStanding.GivenUp => "report.standing-given-up",
        _ => "report.standing-going-on",
    };

    /// <summary>Label and text; nothing where the text is empty.</summary>
    protected void Fact(string code, string text, bool isTyped = false)
    {
        if (text.Length == 0)
        {
            return;
        }

        Html.Element("div", null, () =>
        {
            Html.Element("dt", Words.Say(code));
            Html.Element("dd", isTyped ? "typed" : null, () =>
            {
                if (isTyped)
                {
                    Html.Typed(text);
                }
                else
                {
                    Html.Text(text);
                }
            });
        });
    }

    protected void Section(string heading, string? kind, Action body) => Html.Element("section", kind, () =>
    {
        Html.Element("h2", heading);
        body();
    });

    protected void List(IEnumerable<string> items) => Html.Element("ul", null, () =>
    {
        foreach (var item in items)
        {
            Html.Element("li", item);
        }
    });

    protected void Cautions(ImmutableArray<Message> cautions)
    {
        if (cautions.Length > 0)
        {
            Section(Words.Say("report.cautions"), "cautions", () => List(cautions.Select(Words.Say)));
        }
    }

    /// <summary>The circuit as a picture: as an image no script in it could ever run, and its styles touch nothing else.</summary>
    protected void Drawing()
    {
        if (drawing is null)
        {
            return;
        }

        Html.Element("figure", null, () =>
        {
            Html.Start(
                "img", ("alt", DrawingText()),
                ("src", "data:image/svg+xml;base64," + Convert.ToBase64String(Encoding.UTF8.GetBytes(drawing))));
            Html.Element("figcaption", DrawingText());
        });
    }

    /// <summary>What the readings leave open.</summary>
    protected IEnumerable<string> Open(int most)
    {
        if (Report.Finding is not { } finding)
        {
            yield break;
        }

        foreach (var (text, odds, how) in finding.NotProven.Take(most))
        {
            yield return how is null
                ? Words.Say("report.open", text, Words.Odds(odds))
                : Words.Say("report.open-how", text, Words.Odds(odds), how);
        }

        if (finding.NotProven.Length > most)
        {
            yield return Words.Say("report.open-more", finding.NotProven.Length - most);
        }
    }

    /// <summary>Minutes and money, a line each.</summary>
    protected IEnumerable<(string Code, string Text)> Costs()
    {
        var cost = Report.Cost;
        yield return ("report.time-spent", Words.Say("report.minutes-by-table", Words.Minutes(cost.Minutes)));
        if (cost.HourValue is { } hour)
        {
            yield return (
                "report.work-worth",
                Words.Say("report.money-of-work", Money((double)hour * cost.Minutes / 60), Money((double)hour)));
        }

        foreach (var repair in cost.Repairs)
        {
            yield return (
                repair.IsDone ? "report.parts" : "report.parts-to-come",
                repair.Told is { } told
                    ? Words.Say("report.parts-told", repair.What, Money((double)told))
                    : Words.Say("report.parts-range", repair.What, Money(repair.Repair.Price.Low), Money(repair.Repair.Price.High)));
        }
    }

    private string DrawingText() => Report.Finding is { Blamed: [var first, ..] }
        ? Words.Say("report.drawing-marked", Report.Circuit, first.Text)
        : Words.Say("report.drawing", Report.Circuit);

    private Message Money(double amount)
    {
        var figure = new Figure(amount, amount < 10 && amount != Math.Round(amount) ? "0.00" : "0");
        return Report.Cost.Currency.Length == 0 ? new Message("report.money", figure) : new Message("report.money-in", figure, Report.Cost.Currency);
    }
}
