namespace Halfsplit.Simulation.Compiled;

/// <summary>Finite stand-ins for nothing and everything, chosen against the sixteen digits of a double.</summary>
internal static class ElectricalLimits
{
    /// <summary>An open contact or broken wire, in ohms.</summary>
    public const double OpenOhms = 1e10;

    /// <summary>A blocked diode, in siemens.</summary>
    public const double BlockedSiemens = 1e-9;

    /// <summary>A dead short of a worn wire to metal, in ohms.</summary>
    public const double ShortOhms = 0.02;

    /// <summary>A fused jumper with its clips, in ohms.</summary>
    public const double JumperOhms = 0.02;

    /// <summary>A lead-acid battery's post while an alternator outside the sheet holds it, in ohms.</summary>
    public const double HeldOhms = 0.005;

    /// <summary>How long a condition is held if the car does not end it, in seconds.</summary>
    public const double HeldSeconds = 300;
}
