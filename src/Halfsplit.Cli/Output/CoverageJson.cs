using System.Text.Json;
using Halfsplit.Diagnosis.Coverage;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>What <c>coverage --json</c> says.</summary>
public static class CoverageJson
{
    public static void Write(Utf8JsonWriter json, JobSession session, CoverageReport report)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(report);
        json.WriteString("sheet", session.Opened.SheetName);
        json.WriteString("complaint", session.Opened.Complaint);
        json.WriteNumber("suspects", report.Suspects);
        json.WriteNumber("repairs", report.Repairs);
        json.WriteNumber("checks", report.Checks);
        json.WriteNumber("alone", report.Alone);
        json.Texts("unseen", report.Unseen.Select(s => s.Id));
        json.Array("groups", report.Groups, group =>
        {
            json.Texts("suspects", group.Suspects.Select(s => s.Id));
            json.Odds("odds", group.Odds);
            json.WriteBoolean("onlyAtWorst", group.OnlyAtWorst);
            Parting(json, session, group.WouldPart);
            Point(json, session, group.ExtraPoint);
        });
    }

    private static void Parting(Utf8JsonWriter json, JobSession session, LackingCheck? check)
    {
        if (check is null)
        {
            json.WriteNull("wouldPart");
            return;
        }

        json.Object("wouldPart", () =>
        {
            json.WriteString("check", check.Check.Id);
            json.WriteString("title", CliTexts.Catalog.Say(CheckTitle.Of(session.Circuit, check.Check)));
            json.Number("minutes", check.Minutes);
            json.Texts("lacks", check.Lacks.Select(CliTexts.Catalog.Say));
        });
    }

    private static void Point(Utf8JsonWriter json, JobSession session, ExtraPoint? point)
    {
        if (point is null)
        {
            json.WriteNull("extraPoint");
            return;
        }

        json.Object("extraPoint", () =>
        {
            json.WriteString("terminal", point.Terminal.ToString());
            json.WriteString("check", point.Check.Id);
            json.WriteString("title", CliTexts.Catalog.Say(CheckTitle.Of(session.Circuit, point.Check)));
            json.Number("minutes", point.Minutes);
        });
    }
}
