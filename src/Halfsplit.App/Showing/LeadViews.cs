using Halfsplit.App.Views;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Drawing;
using Halfsplit.Drawing.Small;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.App.Showing;

/// <summary>Where the leads go, and the instrument's setting.</summary>
internal static class LeadViews
{
    public static LeadsView? Of(JobSession session, Check check)
    {
        var probe = check.Probe;
        if (probe.Instrument is Instrument.Eye or Instrument.Ear || check.Subject == CheckSubject.Wiggle
            || session.MeterFor(check) is not { } meter)
        {
            return null;
        }

        return new LeadsView(
            Lead(session, check, probe.Red, "red-"), Lead(session, check, probe.Black, "black-"), Setting(probe, meter),
            probe.Instrument == Instrument.TestLamp);
    }

    /// <summary>Where in its box the part sits that is looked at or pulled; null where a lead shows it, or the sheet does not say.</summary>
    public static LeadView? Seat(Circuit circuit, Check check)
    {
        if (check.Probe.Red is not null || check.Probe.About is not { } id || circuit.Find(id) is not { Notes.Place: { } place } part
            || SlotWords.Seat(circuit, part) is null)
        {
            return null;
        }

        return new LeadView(
            id, AppTexts.Catalog.Say(Describe.Seated(circuit, id)),
            FuseBox.Svg(circuit, place, id, new DrawingOptions { Texts = AppTexts.Catalog, IdPrefix = "seat-" }));
    }

    private static LeadView? Lead(JobSession session, Check check, TerminalName? terminal, string prefix) => terminal is not { } name
        ? null
        : new LeadView(
            name.ToString(), AppTexts.Catalog.Say(Describe.Terminal(session.Circuit, name, check.Arrangement)),
            Picture(session.Circuit, check, name, new DrawingOptions { Texts = AppTexts.Catalog, IdPrefix = prefix }));

    /// <summary>The connector's face or the box with the slot; empty for what needs no picture.</summary>
    private static string Picture(Circuit circuit, Check check, TerminalName terminal, DrawingOptions options) => circuit.Find(terminal.Part) switch
    {
        Connector connector => ConnectorFace.Svg(circuit, connector.Id, check.Probe.Red, check.Probe.Black, options),
        { Notes: { Place: { } place, Slot: not null } } part => FuseBox.Svg(circuit, place, part.Id, options),
        _ => "",
    };

    private static string Setting(Probe probe, MeterReport meter) => probe.Instrument == Instrument.TestLamp
        ? AppTexts.Say("app.leads.lamp", Math.Round(meter.LampWatts ?? 0, 1))
        : AppTexts.Say($"instrument.{probe.Instrument.Name()}");
}
