namespace Halfsplit.Diagnosis.Noticing;

/// <summary>What a number of the bench is, so that a job can hold it against its own readings.</summary>
public enum BenchQuantity
{
    /// <summary>Volts at the battery's posts, everything off.</summary>
    RestVolts,

    /// <summary>Volts at the posts while the starter turns.</summary>
    CrankingVolts,

    /// <summary>Volts at the posts while the alternator turns.</summary>
    ChargingVolts,

    /// <summary>Ohms of a closed contact, by its drop.</summary>
    ContactOhms,

    /// <summary>Ohms of a winding or coil by itself; positive infinity for OL.</summary>
    WindingOhms,

    /// <summary>Ohms of a pulled fuse; positive infinity for OL.</summary>
    FuseOhms,

    /// <summary>Volts on a fuse's test tab in place, its load switched on.</summary>
    TabVolts,

    /// <summary>Amps of a running motor.</summary>
    RunningAmps,
}

/// <summary>A number that the bench measured of a part.</summary>
/// <param name="Value">In volts, ohms or amps.</param>
public readonly record struct BenchValue(BenchQuantity What, double Value);
