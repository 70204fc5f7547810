using Halfsplit.App.Views;
using Halfsplit.Jobs.Reporting;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Showing;

/// <summary>The report of a job, the same page as the terminal writes.</summary>
internal static class ReportViews
{
    /// <param name="reader"><c>owner</c> or <c>colleague</c>.</param>
    public static ReportView Of(JobSession session, string reader)
    {
        var report = ReportBuilder.Of(session);
        var wanted = reader == "colleague" ? ReportReader.Colleague : ReportReader.Owner;
        return new ReportView(
            reader,
            ReportPage.Html(
                report, AppTexts.Catalog, wanted, ReportPaper.Any, ReportDrawing.Svg(session, report, AppTexts.Catalog, wanted)),
            report.Vehicle, report.Owner, report.Worker);
    }
}
