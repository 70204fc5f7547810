using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>Wires joined for good. One terminal; many paths may use it.</summary>
public sealed record Splice(PartNotes Notes) : Part(Notes)
{
    public override string Kind => "splice";
    public override ImmutableArray<string> Terminals => [""];
}

/// <summary>A piece of the car's metal that is a node of its own: body, engine block.</summary>
public sealed record Metal(PartNotes Notes) : Part(Notes)
{
    /// <summary>The body, which every sheet has whether it names it or not.</summary>
    public const string Body = "BODY";

    public override string Kind => "metal";
    public override ImmutableArray<string> Terminals => [""];
}

/// <summary>A ground point: a ring terminal bolted to metal.</summary>
/// <param name="Metal">Id of the metal it is bolted to.</param>
public sealed record Ground(PartNotes Notes, string Metal) : Part(Notes)
{
    public override string Kind => "ground";
    public override ImmutableArray<string> Terminals => [""];
}

/// <summary>
/// A plug connection. Its cavities come from the wiring; each has a half <c>a</c> and a half <c>b</c>.
/// </summary>
/// <param name="BelongsToB">Parts that half b belongs to (stays with when unplugged); empty: the wiring names the halves.</param>
/// <param name="Sealed">Cannot be back-probed while mated.</param>
public sealed record Connector(PartNotes Notes, ImmutableArray<string> BelongsToB, bool Sealed) : Part(Notes)
{
    public override string Kind => "connector";
    public override ImmutableArray<string> Terminals => [];
}

/// <summary>A diode; the path runs from anode <c>a</c> to cathode <c>k</c>.</summary>
/// <param name="ForwardVolts">Volts across it when it conducts.</param>
public sealed record Diode(PartNotes Notes, double ForwardVolts) : Part(Notes)
{
    public override string Kind => "diode";
    public override ImmutableArray<string> Terminals => ["a", "k"];
}
