using Halfsplit.App.Views;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
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
            Lead(session, check, probe.Red), Lead(session, check, probe.Black), Setting(probe, meter),
            probe.Instrument == Instrument.TestLamp);
    }

    private static LeadView? Lead(JobSession session, Check check, TerminalName? terminal) => terminal is not { } name
        ? null
        : new LeadView(name.ToString(), AppTexts.Catalog.Say(Describe.Terminal(session.Circuit, name, check.Arrangement)), "");

    private static string Setting(Probe probe, MeterReport meter) => probe.Instrument == Instrument.TestLamp
        ? AppTexts.Say("app.leads.lamp", Math.Round(meter.LampWatts ?? 0, 1))
        : AppTexts.Say($"instrument.{probe.Instrument.Name()}");
}
