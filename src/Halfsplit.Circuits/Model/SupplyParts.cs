using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>The battery. Its negative post is the reference of all volts.</summary>
/// <param name="NominalVolts">12 or 24.</param>
/// <param name="RestVolts">Open-circuit volts of a healthy, charged battery.</param>
/// <param name="InternalResistance">Ohms, healthy and warm.</param>
public sealed record Battery(PartNotes Notes, double NominalVolts, double RestVolts, double InternalResistance)
    : Part(Notes)
{
    public override string Kind => "battery";
    public override ImmutableArray<string> Terminals => ["pos", "neg"];
    public override (string In, string Out)? PassThrough => null;
}

/// <summary>A generator with regulator: holds its volts between B+ and 31 while the engine turns and it is excited.</summary>
/// <param name="RegulatedVolts">Volts the regulator holds.</param>
/// <param name="MaximumAmps">The current beyond which the volts fall.</param>
/// <param name="OutputResistance">Ohms, inside.</param>
/// <param name="ExcitationAmps">Amps that D+ must take in before it generates; 0 for one that excites itself.</param>
public sealed record Alternator(
    PartNotes Notes, double RegulatedVolts, double MaximumAmps, double OutputResistance, double ExcitationAmps)
    : Part(Notes)
{
    public override string Kind => "alternator";
    public override ImmutableArray<string> Terminals => ["B+", "D+", "31"];
    public override (string In, string Out)? PassThrough => null;
}

/// <summary>How a fuse melts.</summary>
public enum FuseType { BladeMini, BladeStandard, BladeMaxi, Link }

/// <summary>A fuse or fusible link: terminals 1 (upstream) and 2; blade fuses have pins 1p and 2p as test tabs.</summary>
/// <param name="RatingAmps">Rated current.</param>
/// <param name="Type">Blade type by ISO 8820-3 (F mini, C standard, E maxi) or a link in the cable.</param>
public sealed record Fuse(PartNotes Notes, double RatingAmps, FuseType Type) : Part(Notes)
{
    public override string Kind => Type == FuseType.Link ? "fusible link" : "fuse";
    public override ImmutableArray<string> Terminals => ["1", "2"];
    public override bool IsPluggable => Type != FuseType.Link;
}

/// <summary>A thermal breaker that opens on overload and closes again when cold.</summary>
public sealed record Breaker(PartNotes Notes, double RatingAmps) : Part(Notes)
{
    public override string Kind => "breaker";
    public override ImmutableArray<string> Terminals => ["1", "2"];
}

/// <summary>A resettable PTC protector: low resistance until the trip current, then high until the current is cut.</summary>
/// <param name="TripAmps">Amps at which it trips.</param>
/// <param name="ColdOhms">Ohms, untripped.</param>
public sealed record Ptc(PartNotes Notes, double TripAmps, double ColdOhms) : Part(Notes)
{
    public override string Kind => "ptc";
    public override ImmutableArray<string> Terminals => ["1", "2"];
}
