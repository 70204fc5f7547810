using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Batteries;

/// <summary>
/// The volts of a vehicle's system. The tables are of 12 V batteries; a 24 V system is two of them in line, so that volts and ohms are
/// doubled: an assumption, and the answer says so.
/// </summary>
internal static class SystemVolts
{
    public const double Twelve = 12, TwentyFour = 24;

    /// <summary>Refuses any other system.</summary>
    public static InputLimits Of(double systemVolts) => new InputLimits().Unless(systemVolts is Twelve or TwentyFour, "bench-limit.system-volts");

    /// <summary>What the tables are multiplied by.</summary>
    public static double Times(double systemVolts) => systemVolts / Twelve;

    /// <summary>What is said beside an answer of two batteries in line.</summary>
    public static Message[] Notes(double systemVolts) => systemVolts == Twelve ? [] : [new Message("bench-battery.doubled")];
}
