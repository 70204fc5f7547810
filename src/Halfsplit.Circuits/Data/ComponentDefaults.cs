using System.Collections.Immutable;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Data;

/// <summary>A default value of the table, with its spread and where it comes from.</summary>
/// <param name="Name">Part kind and quantity: <c>relay.coil-ohms</c>.</param>
/// <param name="Value">Typical value.</param>
/// <param name="Range">Lowest and highest value of healthy parts.</param>
/// <param name="Unit">V, A, ohm, K, °C, share, times, money.</param>
/// <param name="Source">Published source, or the words that say there is none.</param>
public sealed record ComponentDefault(string Name, double Value, ValueRange Range, string Unit, string Source);

/// <summary>
/// Typical values of parts a sheet says nothing about (<c>data/components.csv</c>), for a supply of 12 V or, scaled,
/// for another: on 24 V a coil has twice the volts, four times the ohms, half the amps; contacts stay.
/// </summary>
public sealed class ComponentDefaults
{
    private readonly ImmutableDictionary<string, ComponentDefault> _byName;

    private ComponentDefaults(double nominalVolts)
    {
        NominalVolts = nominalVolts;
        All = [.. DataFile.Read("components.csv").Select(row =>
        {
            var factor = Math.Pow(nominalVolts / 12, row.Number("supply_power"));
            return new ComponentDefault(
                row.Text("name"),
                row.Number("value") * factor,
                new ValueRange(row.Number("low") * factor, row.Number("high") * factor),
                row.Text("unit"),
                row.Text("source"));
        })];
        _byName = All.ToImmutableDictionary(d => d.Name, StringComparer.Ordinal);
    }

    /// <summary>For a 12 V supply.</summary>
    public static ComponentDefaults TwelveVolts { get; } = new(12);

    /// <summary>For a 24 V supply.</summary>
    public static ComponentDefaults TwentyFourVolts { get; } = new(24);

    /// <summary>For any nominal supply.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The supply is not above 0.</exception>
    public static ComponentDefaults For(double nominalVolts)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(nominalVolts);
        return nominalVolts switch
        {
            12 => TwelveVolts,
            24 => TwentyFourVolts,
            _ => new ComponentDefaults(nominalVolts),
        };
    }

    /// <summary>Supply these values are for, volts.</summary>
    public double NominalVolts { get; }

    /// <summary>Every row, in the table's order.</summary>
    public ImmutableArray<ComponentDefault> All { get; }

    /// <summary>The row of this name, or null.</summary>
    public ComponentDefault? Find(string name) => _byName.GetValueOrDefault(name);

    /// <summary>The row of this name.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public ComponentDefault this[string name] => _byName.TryGetValue(name, out var found)
        ? found
        : throw new KeyNotFoundException($"The component table has no {name}.");

    /// <summary>Price range of a part kind (<see cref="Part.Kind"/>, or "wire"); null for an unknown kind.</summary>
    public ValueRange? PriceOf(string kind) => Find(kind + ".price")?.Range;

    public double BatteryRestVolts => this["battery.rest-volts"].Value;
    public double BatteryInternalOhms => this["battery.internal-ohms"].Value;

    /// <summary>In series with the internal resistance while a battery near full is charged.</summary>
    public double BatteryChargingOhms => this["battery.charging-ohms"].Value;

    public double RelayCoilOhms => this["relay.coil-ohms"].Value;
    public double RelayPullInVolts => this["relay.pull-in-volts"].Value;
    public double RelayDropOutVolts => this["relay.drop-out-volts"].Value;
    public double RelayContactOhms => this["relay.contact-ohms"].Value;
    public double RelaySuppressionOhms => this["relay.suppression-ohms"].Value;
    public double SwitchContactOhms => this["switch.contact-ohms"].Value;

    /// <summary>One cavity, half to half.</summary>
    public double ConnectorContactOhms => this["connector.contact-ohms"].Value;

    /// <summary>One pin in a fuse's or relay's socket.</summary>
    public double SocketContactOhms => this["socket.contact-ohms"].Value;

    /// <summary>A ground point, ring terminal to metal.</summary>
    public double GroundPointOhms => this["ground.point-ohms"].Value;

    /// <summary>Two terminals that touch without a wire between.</summary>
    public double JointOhms => this["joint.ohms"].Value;

    public double BreakerOhms => this["breaker.ohms"].Value;
    public double PtcColdOhms => this["ptc.cold-ohms"].Value;
    public double PtcTrippedOhms => this["ptc.tripped-ohms"].Value;

    /// <summary>Amps of a motor held still over its running amps, at the same volts.</summary>
    public double MotorStallRatio => this["motor.stall-ratio"].Value;

    public double AlternatorRegulatedVolts => this["alternator.regulated-volts"].Value;
    public double AlternatorMaximumAmps => this["alternator.maximum-amps"].Value;
    public double AlternatorOutputOhms => this["alternator.output-ohms"].Value;
    public double AlternatorExcitationAmps => this["alternator.excitation-amps"].Value;
    public double LampVolts => this["lamp.volts"].Value;

    /// <summary>Ohms of a cold filament over its ohms at rated volts.</summary>
    public double LampColdShare => this["lamp.cold-share"].Value;

    public double LedForwardVolts => this["led.forward-volts"].Value;
    public double DiodeForwardVolts => this["diode.forward-volts"].Value;
    public double ModuleMinimumVolts => this["module.minimum-volts"].Value;
    public double ModuleOwnAmps => this["module.own-amps"].Value;
    public double ModuleOutputOhms => this["module.output-ohms"].Value;
    public double ModuleOutputLimitAmps => this["module.output-limit-amps"].Value;
}
