using Halfsplit.Circuits.Model;

namespace Halfsplit.Simulation.Devices;

/// <summary>
/// A permanent-magnet motor on a load that takes a constant and a speed-proportional torque. Turning, it draws
/// <c>friction + slope · E</c> amps at a back-EMF of <c>E</c> volts, so that seen from its terminals it is a
/// conductance and a source.
/// </summary>
/// <param name="Ohms">Winding and brushes.</param>
/// <param name="Friction">Amps it takes to keep it just turning.</param>
/// <param name="Slope">Further amps per volt of back-EMF.</param>
/// <param name="StartVolts">Volts from rest below which it stays at rest.</param>
internal readonly record struct MotorLaw(double Ohms, double Friction, double Slope, double StartVolts)
{
    /// <summary>Share of the running current that overcomes constant friction; from memory.</summary>
    private const double FrictionShare = 0.4;

    /// <summary>Friction at rest over friction when turning; from memory.</summary>
    private const double Stiction = 1.3;

    /// <summary>The law of a healthy motor from its rating.</summary>
    public static MotorLaw Of(double runAmps, double runVolts, double windingOhms, double? startVolts)
    {
        var friction = FrictionShare * runAmps;
        var backEmf = Math.Max(runVolts - (runAmps * windingOhms), 0.1 * runVolts);
        return new MotorLaw(
            windingOhms, friction, (runAmps - friction) / backEmf, startVolts ?? (Stiction * friction * windingOhms));
    }

    public static MotorLaw Of(Motor motor) => Of(motor.RunAmps, motor.RunVolts, motor.WindingOhms, motor.StartVolts);

    /// <summary>Siemens of the turning motor.</summary>
    public double TurningConductance => Slope / (1 + (Slope * Ohms));

    /// <summary>Amps of its source, in the direction of the current.</summary>
    public double TurningSource => Friction / (1 + (Slope * Ohms));

    /// <summary>Volts below which it cannot keep turning.</summary>
    public double KeepVolts => Friction * Ohms;

    /// <summary>Back-EMF at given volts across a turning motor.</summary>
    public double BackEmf(double volts) => Math.Max(0, (volts - KeepVolts) / (1 + (Slope * Ohms)));
}
