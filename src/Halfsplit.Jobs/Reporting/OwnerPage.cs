using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Reporting;

/// <summary>The page for the owner: one side of paper, in plain words. What does not fit there is in the colleague's form.</summary>
internal sealed class OwnerPage(HtmlWriter html, ReportWords words, Report report, string? drawing)
    : PagePieces(html, words, report, drawing)
{
    /// <summary>So many of each fit one side of paper beside the drawing.</summary>
    private const int MostReadings = 4, MostProofs = 3, MostOpen = 3, MostNotes = 2, MostCautions = 3, MostRepairs = 3;

    /// <summary>Letters of a typed text that fit its place.</summary>
    private const int LongText = 150, ShortText = 80;

    public void Write()
    {
        Head(Words.Say("report.title-owner"));
        Html.Element("dl", "facts", () =>
        {
            Fact("report.vehicle", ReportWords.Short(Report.Vehicle, ShortText), true);
            Fact("report.owner", ReportWords.Short(Report.Owner, ShortText), true);
            Fact("report.complaint", ReportWords.Short(Report.Complaint, LongText), true);
            Fact("report.worker", ReportWords.Short(Report.Worker, ShortText), true);
            Fact("report.when", Words.Day(Report.Ended));
        });
        Finding();
        Html.Element("div", "columns", () =>
        {
            Readings(Words.Say("report.how-found"), Decisive());
            Readings(Words.Say("report.proof"), [.. Report.Proofs.Where(s => s.Sort == StepSort.Proof).TakeLast(MostProofs)]);
        });
        Drawing();
        Html.Element("div", "columns", () =>
        {
            Section(Words.Say("report.cost"), null, () => Html.Element("dl", "facts", () =>
            {
                foreach (var (code, text) in Costs().Take(2 + MostRepairs))
                {
                    Fact(code, text);
                }
            }));
            NotProven();
        });
        Notes();
        Cautions([.. Report.RepairCautions.Take(MostCautions)]);
        Html.Element("footer", null, () =>
        {
            Html.Element("p", Words.Say("report.defer"));
            Html.Element("p", Words.Say("report.made-with", Report.EngineVersion, Report.Job));
        });
    }

    private void Finding() => Section(
        Words.Say(Report.Standing == ReportStanding.GoingOn ? "report.likeliest" : "report.wrong"), "finding", () =>
        {
            if (Report.Finding is not { Blamed: [var blamed, ..] } finding)
            {
                Html.Element("p", Words.Say("report.nothing-found"));
                return;
            }

            Html.Element("p", "blamed", Words.Sentence(blamed.Text));
            Html.Element("p", Words.Say(
                "report.found-by", Report.Readings.Count(s => s.Sort == StepSort.Reading), Words.Odds(finding.Finding.Odds)));
            foreach (var repair in Report.Repairs.TakeLast(MostRepairs))
            {
                Html.Element("p", Words.Say("report.repair-done", repair.What, Words.Day(repair.At)));
            }

            if (!finding.IsActedUpon && Report.Standing != ReportStanding.GoingOn)
            {
                Html.Element("p", Words.Say("report.repair-due", finding.Repair));
            }

            if (Report.Standing is ReportStanding.Proven or ReportStanding.Repaired)
            {
                Html.Element("p", Words.Say(Report.Standing == ReportStanding.Proven ? "report.said-proven" : "report.said-repaired"));
            }

            if (Report.HandedOver is { } handed)
            {
                Html.Element("p", Words.Say("report.handed-to", ReportWords.Short(handed.To ?? Words.Say("report.somebody"), ShortText)));
            }
        });

    /// <summary>The readings that the finding rests on, in the order in which they were taken.</summary>
    private List<ReportedStep> Decisive()
    {
        var said = Report.Readings.Where(s => s.Read is not null and not ReadingParse.Word { Answer.Id: "not-sure" }).ToList();
        var decisive = (Report.Finding?.RestsOn ?? [])
            .Select(number => said.FirstOrDefault(s => s.Number == number))
            .OfType<ReportedStep>()
            // What was read again is told once.
            .DistinctBy(s => (s.Check, s.Read))
            .Take(MostReadings)
            .OrderBy(s => s.Number)
            .ToList();
        return decisive.Count > 0 ? decisive : [.. said.TakeLast(MostReadings)];
    }

    private void Readings(string heading, List<ReportedStep> steps)
    {
        if (steps.Count == 0)
        {
            return;
        }

        Section(heading, null, () => Html.Element("table", "short", () =>
        {
            Html.Element("thead", null, () => Html.Element("tr", null, () =>
            {
                Html.Element("th", Words.Say("report.measured"));
                Html.Element("th", "value", Words.Say("report.read"));
                Html.Element("th", "value", Words.Say("report.healthy-car"));
            }));
            Html.Element("tbody", null, () =>
            {
                foreach (var step in steps)
                {
                    Html.Element("tr", null, () =>
                    {
                        Html.Element("td", Plain(step));
                        Html.Element("td", "value", Words.Value(step.Read!));
                        Html.Element("td", "value", step.Healthy is { } healthy ? Words.Value(healthy) : "–");
                    });
                }
            });
        }));
    }

    private string Plain(ReportedStep step)
    {
        var what = step.Leads is { } leads
            ? Words.Sentence(new Message("report.between", leads.Red, leads.Black))
            : Words.Sentence(step.What);
        return step.SetUp is { } setUp ? Words.Say("report.what-with", what, setUp) : what;
    }

    private void NotProven()
    {
        var open = Open(MostOpen).ToList();
        Section(Words.Say("report.not-proven"), null, () =>
            List([.. open, Words.Say(Report.Standing == ReportStanding.Proven ? "report.only-that-day" : "report.only-likely")]));
    }

    private void Notes()
    {
        if (Report.Notes.Length == 0)
        {
            return;
        }

        Section(Words.Say("report.notes"), null, () => Html.Element("ul", null, () =>
        {
            foreach (var note in Report.Notes.TakeLast(MostNotes))
            {
                Html.Element("li", "typed", () => Html.Typed(ReportWords.Short(note.Text, LongText)));
            }
        }));
    }
}
