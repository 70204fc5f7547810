using System.Collections.Immutable;
using Halfsplit.App.Desk;
using Halfsplit.App.Views;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.App.Showing;

/// <summary>What can be chosen before a job is opened, and the wish understood.</summary>
internal static class OpeningViews
{
    /// <summary>Null where there is no such sheet or complaint.</summary>
    public static OpeningView? Of(string sheet, string complaint)
    {
        if (ShippedSheets.Text(sheet) is null || Complaint(ShippedSheets.Load(sheet), complaint) is not { } meant)
        {
            return null;
        }

        var circuit = ShippedSheets.Load(sheet);
        var load = circuit.Find(meant.Load)?.Notes.Name ?? meant.Load;
        return new OpeningView(
            sheet, circuit.Title, circuit.Summary ?? "", meant.Name,
            AppTexts.Say(meant.Is == LoadCondition.Weak ? "app.opening.means-weak" : "app.opening.means-dead", load, meant.Condition),
            JobViews.SafetyPage(circuit), Noticeable(circuit, meant),
            [.. circuit.Places.SelectMany(p => p.Tools).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            [.. circuit.Places.Select(p => new PlaceView(p.Name, p.OpenMinutes, [.. p.Tools]))]);
    }

    public static NoticeView[] Noticeable(Circuit circuit, Complaint complaint) => [.. NoticedChoice.For(circuit, complaint)
        .Select(c => new NoticeView(
            c.Kind.Name, AppTexts.Sentence(AppTexts.Catalog.Say(NoticedText.Of(c.Kind))), [.. c.Things], c.Usual, c.MustName))];

    public static Complaint? Complaint(Circuit circuit, string name) =>
        ComplaintChoice.Named(circuit, name)
        ?? (ComplaintChoice.Usual(circuit) is { } usual && usual.Name == name ? usual : null);

    /// <summary>What is at hand, as the engine takes it.</summary>
    public static DiagnosisOptions Options(JobWish wish)
    {
        var usual = Meter.Default;
        var meter = usual with
        {
            Counts = wish.MeterCounts ?? usual.Counts,
            GainAccuracy = wish.MeterAccuracy / 100 ?? usual.GainAccuracy,
        };
        return DiagnosisOptions.Default with
        {
            Helper = wish.Helper,
            RemoteStarter = wish.RemoteStarter,
            LeadMetres = wish.LeadMetres ?? DiagnosisOptions.Default.LeadMetres,
            Tools = wish.Tools.Length == 0 ? default : [.. wish.Tools],
            HasClamp = wish.Clamp,
            HasTestLamp = wish.TestLamp,
            HasScanTool = wish.ScanTool,
            HasSpareRelay = wish.SpareRelay,
            SmellOfFuelOrImpact = wish.SmellOfFuel,
            Meter = meter == usual ? null : meter,
            Economy = wish.HourValue is { } hour ? Economy.Default with { HourValue = hour } : null,
        };
    }

    /// <summary>What was noticed; what this circuit does not know is left out.</summary>
    public static ImmutableArray<Noticed> Noticed(Circuit circuit, Complaint complaint, IEnumerable<string> said) =>
        [.. said.Select(s => NoticedChoice.Read(circuit, complaint, s).What).OfType<Noticed>()];
}
