using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>A part that does the work: "works" is a range of volts across it.</summary>
/// <param name="WorksVolts">Volts across it at which it does its work fully; null: derived from its rating.</param>
public abstract record Load(PartNotes Notes, ValueRange? WorksVolts) : Part(Notes)
{
    /// <summary>Volts at which the rating holds.</summary>
    public abstract double RatedVolts { get; }

    /// <summary>Amps at the rated volts, in normal work.</summary>
    public abstract double RatedAmps { get; }

    /// <summary>Volts across it at which it works fully. Default 80 % to 125 % of rated volts: common practice, no published source.</summary>
    public ValueRange Works => WorksVolts ?? new ValueRange(0.8 * RatedVolts, 1.25 * RatedVolts);

    /// <summary>The terminals whose volts drive it.</summary>
    public virtual (string Pos, string Neg) Across => (Terminals[0], Terminals[^1]);
}

/// <summary>A brushed DC motor: terminals pos and neg.</summary>
/// <param name="RunAmps">Amps when running at <paramref name="RunVolts"/>.</param>
/// <param name="WindingOhms">Ohms at rest, brushes included.</param>
/// <param name="StartVolts">Volts across it below which it does not start from rest; null: from its friction.</param>
public sealed record Motor(
    PartNotes Notes, ValueRange? WorksVolts, double RunAmps, double RunVolts, double WindingOhms, double? StartVolts)
    : Load(Notes, WorksVolts)
{
    public override string Kind => "motor";
    public override ImmutableArray<string> Terminals => ["pos", "neg"];
    public override double RatedVolts => RunVolts;
    public override double RatedAmps => RunAmps;
}

/// <summary>
/// A starter with its solenoid: 30 heavy feed, 50 control, 31 return. The pull-in winding runs from 50 through the
/// motor, the hold-in winding from 50 to 31.
/// </summary>
/// <param name="RunAmps">Amps while cranking a warm engine at <paramref name="RunVolts"/>.</param>
/// <param name="RunVolts">Volts across the motor while cranking.</param>
/// <param name="WindingOhms">Ohms of the motor at rest.</param>
/// <param name="PullInOhms">Ohms of the pull-in winding.</param>
/// <param name="HoldInOhms">Ohms of the hold-in winding.</param>
/// <param name="EngageVolts">Volts from 50 to 31 at which the solenoid pulls.</param>
/// <param name="ReleaseVolts">Volts from 50 to 31 at which it lets go.</param>
public sealed record Starter(
    PartNotes Notes,
    ValueRange? WorksVolts,
    double RunAmps,
    double RunVolts,
    double WindingOhms,
    double PullInOhms,
    double HoldInOhms,
    double EngageVolts,
    double ReleaseVolts) : Load(Notes, WorksVolts)
{
    public override string Kind => "starter";
    public override ImmutableArray<string> Terminals => ["30", "50", "31"];
    public override (string In, string Out)? PassThrough => null;
    public override double RatedVolts => RunVolts;
    public override double RatedAmps => RunAmps;
}

/// <summary>One filament of a lamp.</summary>
/// <param name="Terminal">Its own terminal.</param>
/// <param name="Watts">Watts at the lamp's rated volts.</param>
public readonly record struct Filament(string Terminal, double Watts);

/// <summary>A filament lamp; several filaments share the common terminal. A single one has terminals 1 and 2.</summary>
/// <param name="LampVolts">Rated volts.</param>
/// <param name="Common">The shared terminal.</param>
public sealed record Lamp(
    PartNotes Notes, ValueRange? WorksVolts, ImmutableArray<Filament> Filaments, string Common, double LampVolts)
    : Load(Notes, WorksVolts)
{
    public override string Kind => "lamp";
    public override ImmutableArray<string> Terminals => [.. Filaments.Select(f => f.Terminal), Common];
    public override double RatedVolts => LampVolts;
    public override double RatedAmps => Filaments[0].Watts / LampVolts;
}

/// <summary>A light-emitting diode with its series resistor: pos and neg.</summary>
/// <param name="ForwardVolts">Volts across the diode itself.</param>
/// <param name="RunAmps">Amps at <paramref name="RunVolts"/>.</param>
public sealed record Led(
    PartNotes Notes, ValueRange? WorksVolts, double ForwardVolts, double RunAmps, double RunVolts) : Load(Notes, WorksVolts)
{
    public override string Kind => "led";
    public override ImmutableArray<string> Terminals => ["pos", "neg"];
    public override double RatedVolts => RunVolts;
    public override double RatedAmps => RunAmps;
}

/// <summary>A load that is a plain resistance: heater element, horn taken as its mean current.</summary>
/// <param name="Ohms">Resistance in ohms.</param>
/// <param name="RunVolts">Rated volts.</param>
/// <param name="Sounds">It can be heard when it works (a horn).</param>
public sealed record Heater(PartNotes Notes, ValueRange? WorksVolts, double Ohms, double RunVolts, bool Sounds)
    : Load(Notes, WorksVolts)
{
    public override string Kind => Sounds ? "sounder" : "heater";
    public override ImmutableArray<string> Terminals => ["1", "2"];
    public override double RatedVolts => RunVolts;
    public override double RatedAmps => RunVolts / Ohms;
}

/// <summary>A valve or other coil that moves something: pos and neg, clicks when it pulls.</summary>
/// <param name="Ohms">Coil resistance.</param>
/// <param name="PullInVolts">Volts at which it moves.</param>
/// <param name="Suppression">What lies across the coil.</param>
public sealed record Solenoid(
    PartNotes Notes, ValueRange? WorksVolts, double Ohms, double RunVolts, double PullInVolts, Suppression Suppression)
    : Load(Notes, WorksVolts)
{
    public override string Kind => "solenoid";
    public override ImmutableArray<string> Terminals => ["pos", "neg"];
    public override double RatedVolts => RunVolts;
    public override double RatedAmps => RunVolts / Ohms;
}
