using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Events;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Sessions;

/// <summary>What is at hand, as the engine takes it and as the job file keeps it. What a file does not tell is as usual.</summary>
public static class OptionsOfJob
{
    /// <summary>As the job file keeps it.</summary>
    /// <param name="unreachable">Places and parts given up from the start.</param>
    public static JobOptions ToKeep(DiagnosisOptions options, IEnumerable<string> unreachable)
    {
        ArgumentNullException.ThrowIfNull(options);
        var meter = options.MeterInUse;
        return new JobOptions
        {
            ToolsAtHand = options.Tools.IsDefault ? [] : ValueList.Create<string>(options.Tools.AsSpan()),
            UnreachablePlaces = [.. unreachable],
            HelperPresent = options.Helper,
            RemoteStarterPresent = options.RemoteStarter,
            ValueOfAnHour = options.Economy is { } economy ? (decimal)economy.HourValue : null,
            LeadMetres = options.LeadMetres,
            Clamp = options.HasClamp,
            TestLamp = options.HasTestLamp,
            ScanTool = options.HasScanTool,
            SpareRelay = options.HasSpareRelay,
            SmellOfFuelOrImpact = options.SmellOfFuelOrImpact,
            MeterAtHand = new MeterAtHand(
                meter.InputOhms, meter.LowImpedanceOhms, meter.LeadOhms, meter.Counts, meter.GainAccuracy,
                meter.CountAccuracy, meter.JackAmps, meter.LampWatts),
        };
    }

    /// <summary>As the engine takes it.</summary>
    public static DiagnosisOptions ToUse(JobOptions kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        var usual = DiagnosisOptions.Default;
        return new DiagnosisOptions(
            kept.HelperPresent,
            kept.LeadMetres ?? usual.LeadMetres,
            kept.ToolsAtHand.Count == 0 ? default : [.. kept.ToolsAtHand],
            kept.Clamp ?? usual.HasClamp,
            kept.TestLamp ?? usual.HasTestLamp,
            kept.ScanTool ?? usual.HasScanTool,
            kept.SpareRelay ?? usual.HasSpareRelay,
            kept.SmellOfFuelOrImpact ?? usual.SmellOfFuelOrImpact,
            MeterOf(kept),
            kept.ValueOfAnHour is { } hour ? Economy.Default with { HourValue = (double)hour } : null,
            RemoteStarter: kept.RemoteStarterPresent);
    }

    private static Meter? MeterOf(JobOptions kept) => kept switch
    {
        { MeterAtHand: { } m } => new Meter(
            m.InputOhms, m.LowImpedanceOhms, m.LeadOhms, m.Counts, m.GainAccuracy, m.CountAccuracy, m.JackAmps, m.LampWatts),
        { Meter: { InputOhms: > 0 } m } => Meter.Default with { InputOhms = m.InputOhms, LeadOhms = m.LeadOhms },
        _ => null,
    };
}
