namespace Halfsplit.Jobs.Reporting;

/// <summary>The form for a colleague: everything that was read, with what it says and what it does not.</summary>
internal sealed class ColleaguePage(HtmlWriter html, ReportWords words, Report report, string? drawing)
    : PagePieces(html, words, report, drawing)
{
    private const int MostOpen = 12, MostCleared = 4, MostRests = 4;

    public void Write()
    {
        Head(Words.Say("report.title-colleague"));
        Facts();
        Cautions(Report.Cautions);
        Finding();
        Drawing();
        Table(Words.Say("report.readings"), [.. Report.Readings]);
        Repairs();
        Table(Words.Say("report.proof"), [.. Report.Proofs]);
        var open = Open(MostOpen).ToList();
        Section(Words.Say("report.not-proven"), null, () =>
            List([.. open, Words.Say(Report.Standing == ReportStanding.Proven ? "report.only-that-day" : "report.only-likely")]));
        Doubts();
        TakenBack();
        Notes();
        Section(Words.Say("report.cost"), null, () => Html.Element("dl", "facts", () =>
        {
            foreach (var (code, text) in Costs())
            {
                Fact(code, text);
            }
        }));
        Html.Element("footer", null, () =>
        {
            Html.Element("p", Words.Say("report.defer"));
            Html.Element("p", Words.Say("report.made-of", Report.SheetName, Report.DataVersion));
            Html.Element("p", Words.Say("report.made-with", Report.EngineVersion, Report.Job));
        });
    }

    private void Facts() => Html.Element("dl", "facts two", () =>
    {
        Fact("report.vehicle", Report.Vehicle, true);
        Fact("report.owner", Report.Owner, true);
        Fact("report.complaint", Report.Complaint, true);
        Fact("report.circuit", Report.Circuit, true);
        Fact("report.worker", Report.Worker, true);
        Fact("report.when", Words.Say("report.from-to", Words.Time(Report.Opened), Words.Time(Report.Ended)));
        Fact("report.noticed", string.Join("; ", Report.Noticed.Select(Words.Say)));
        Fact("report.bench", string.Join("; ", Report.Bench.Select(Words.Say)));
        Fact("report.meter", Words.Say(Report.Meter));
        Fact("report.handed", Report.HandedOver is { } handed ? string.Join(": ", new[] { handed.To, handed.Text }.OfType<string>()) : "", true);
    });

    private void Finding() => Section(
        Words.Say(Report.Standing == ReportStanding.GoingOn ? "report.likeliest" : "report.finding"), "finding", () =>
        {
            if (Report.Finding is not { Blamed.Length: > 0 } finding)
            {
                Html.Element("p", Words.Say("report.nothing-found"));
                return;
            }

            foreach (var (text, odds) in finding.Blamed)
            {
                Html.Element("p", "blamed", Words.Say("report.blamed", Words.Sentence(text), Words.Odds(odds)));
            }

            Html.Element("p", Words.Say(
                "report.repair-odds", finding.Repair, Words.Odds(finding.Finding.Odds), Words.Minutes(finding.Finding.Repair.Minutes)));
            if (finding.RestsOn.Length > 0)
            {
                Html.Element("p", Words.Say("report.rests-on", string.Join(", ", finding.RestsOn.Take(MostRests).Order())));
            }

            if (!finding.Finding.IsSettled && !finding.IsActedUpon)
            {
                Html.Element("p", Words.Say("report.unsettled"));
            }
        });

    private void Table(string heading, List<ReportedStep> steps)
    {
        if (steps.Count == 0)
        {
            return;
        }

        Section(heading, "long", () => Html.Element("table", "full", () =>
        {
            Html.Element("thead", null, () => Html.Element("tr", null, () =>
            {
                foreach (var (code, kind) in (ReadOnlySpan<(string, string?)>)[
                    ("report.number", "number"), ("report.check", null), ("report.healthy", "value"), ("report.read", "value"),
                    ("report.says", null), ("report.min", "value")])
                {
                    Html.Element("th", kind, Words.Say(code));
                }
            }));
            Html.Element("tbody", null, () =>
            {
                foreach (var step in steps)
                {
                    Html.Element("tr", null, () => Row(step));
                }
            });
        }));
    }

    private void Row(ReportedStep step)
    {
        Html.Element("td", "number", step.Number.ToString(Words.Language.Formats));
        Html.Element("td", null, () =>
        {
            Html.Element("b", Words.Sentence(step.What));
            if (step.Leads is { } leads)
            {
                Line(Words.Say("report.leads", leads.Red, leads.Black));
            }

            if (step.SetUp is { } setUp)
            {
                Line(Words.Say("report.set-up", setUp));
            }

            var time = step.By.Length > 0 ? Words.Say("report.at-by", Words.Time(step.At), step.By) : Words.Time(step.At);
            Line(step.Places.Length > 0 ? Words.Say("report.places", string.Join(", ", step.Places), time) : time);
        });
        Html.Element("td", "value", step.Healthy is { } healthy ? Words.Value(healthy) : "");
        Html.Element("td", "value", () =>
        {
            if (step.Read is { } read)
            {
                Html.Element("b", Words.Value(read));
                if (step.Typed.Trim() is var typed && typed != Words.Value(read).Replace('\u00A0', ' ') && typed != read.ToString())
                {
                    Html.Element("div", "line", () =>
                    {
                        Html.Text(Words.Say("report.typed"));
                        Html.Text(" ");
                        Html.Typed(typed);
                    });
                }
            }
        });
        Html.Element("td", null, () => Says(step));
        Html.Element("td", "value", step.Minutes > 0 ? Words.Say(new Circuits.Messages.Message("report.bare", new Circuits.Messages.Figure(step.Minutes, "0.#"))) : "");
    }

    private void Says(ReportedStep step)
    {
        if (step.IsDoubtful)
        {
            Line(Words.Say("report.in-doubt"));
        }

        if (step.Cleared.Length > 0)
        {
            var names = string.Join(", ", step.Cleared.Take(MostCleared).Select(Words.Say));
            Line(step.Cleared.Length > MostCleared
                ? Words.Say("report.cleared-more", names, step.Cleared.Length - MostCleared)
                : Words.Say("report.cleared", names));
        }

        foreach (var sentence in step.Carried.Concat(step.NotCleared))
        {
            Line(Words.Sentence(sentence));
        }
    }

    private void Line(string text) => Html.Element("div", "line", text);

    private void Repairs()
    {
        var repairs = Report.Repairs.ToList();
        if (repairs.Count == 0 && Report.Finding is null)
        {
            return;
        }

        Section(Words.Say("report.repair"), null, () => List(repairs.Count > 0
            ? repairs.Select(r => Words.Say("report.repair-line", r.Number, Words.Sentence(r.What), Words.Time(r.At)))
            : [Words.Say("report.repair-due", Report.Finding!.Repair)]));
    }

    private void Doubts()
    {
        if (Report.Doubts.Length > 0)
        {
            Section(Words.Say("report.doubts"), null, () => List(Report.Doubts.Select(Words.Say)));
        }
    }

    private void TakenBack()
    {
        if (Report.TakenBack.Length == 0)
        {
            return;
        }

        Section(Words.Say("report.taken-back"), null, () => Html.Element("ul", null, () =>
        {
            foreach (var gone in Report.TakenBack)
            {
                Html.Element("li", null, () =>
                {
                    Html.Text($"{Words.Time(gone.At)}: {Words.Sentence(gone.What)} ");
                    Html.Typed(gone.Typed);
                    if (gone.Reason.Length > 0)
                    {
                        Html.Text(" – ");
                        Html.Typed(gone.Reason);
                    }
                });
            }
        }));
    }

    private void Notes()
    {
        if (Report.Notes.Length == 0)
        {
            return;
        }

        Section(Words.Say("report.notes"), null, () => Html.Element("ul", null, () =>
        {
            foreach (var note in Report.Notes)
            {
                Html.Element("li", "typed", () =>
                {
                    Html.Text(Words.Time(note.At) + ": ");
                    Html.Typed(note.Text);
                });
            }
        }));
    }
}
