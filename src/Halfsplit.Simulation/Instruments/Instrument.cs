namespace Halfsplit.Simulation.Instruments;

/// <summary>What is held to the circuit.</summary>
public enum Instrument
{
    Volts,
    VoltsLowImpedance,
    Ohms,
    Continuity,
    TestLamp,
    AmpsClamp,
    AmpsInline,

    /// <summary>The meter's duty range: share of the time that the volts are high.</summary>
    Duty,
    Eye,
    Ear,
}

/// <summary>The names of instruments as the terminal and the job file write them.</summary>
public static class InstrumentNames
{
    private static readonly (Instrument Instrument, string Name)[] Table =
    [
        (Instrument.Volts, "volts"),
        (Instrument.VoltsLowImpedance, "volts-low-impedance"),
        (Instrument.Ohms, "ohms"),
        (Instrument.Continuity, "continuity"),
        (Instrument.TestLamp, "test-lamp"),
        (Instrument.AmpsClamp, "amps-clamp"),
        (Instrument.AmpsInline, "amps-inline"),
        (Instrument.Duty, "duty"),
        (Instrument.Eye, "eye"),
        (Instrument.Ear, "ear"),
    ];

    public static IEnumerable<string> All => Table.Select(t => t.Name);

    public static string Name(this Instrument instrument) => Table.First(t => t.Instrument == instrument).Name;

    public static bool TryParse(string? text, out Instrument instrument)
    {
        foreach (var (candidate, name) in Table)
        {
            if (name == text)
            {
                instrument = candidate;
                return true;
            }
        }

        instrument = default;
        return false;
    }
}
