using System.Collections.Immutable;

namespace Halfsplit.Circuits.Model;

/// <summary>What lies across a relay's coil to catch its kick.</summary>
public enum Suppression { None, Resistor, Diode }

/// <summary>Which contacts a relay has.</summary>
public enum RelayContacts
{
    /// <summary>30 to 87 when pulled in.</summary>
    Make,

    /// <summary>30 to 87a when at rest.</summary>
    Break,

    /// <summary>30 to 87a at rest, to 87 when pulled in.</summary>
    Changeover,

    /// <summary>30 to 87 and to 87b when pulled in.</summary>
    TwinMake,
}

/// <summary>A relay with terminals after DIN 72552: coil 86 and 85, contacts 30, 87, 87a, 87b.</summary>
/// <param name="CoilOhms">Ohms of the coil alone at 20 °C.</param>
/// <param name="PullInVolts">Volts across the coil at which it pulls in.</param>
/// <param name="DropOutVolts">Volts across the coil at which it drops out.</param>
/// <param name="ContactOhms">Ohms of a healthy closed contact.</param>
/// <param name="SuppressionOhms">Ohms of the resistor across the coil, if that is the suppression.</param>
public sealed record Relay(
    PartNotes Notes,
    RelayContacts Contacts,
    double CoilOhms,
    double PullInVolts,
    double DropOutVolts,
    double ContactOhms,
    Suppression Suppression,
    double SuppressionOhms) : Part(Notes)
{
    public override string Kind => "relay";

    public override ImmutableArray<string> Terminals => Contacts switch
    {
        RelayContacts.Make => ["86", "85", "30", "87"],
        RelayContacts.Break => ["86", "85", "30", "87a"],
        RelayContacts.Changeover => ["86", "85", "30", "87", "87a"],
        _ => ["86", "85", "30", "87", "87b"],
    };

    public override (string In, string Out)? PassThrough => null;
    public override bool IsPluggable => true;
}

/// <summary>A pair of terminals that a switch position joins.</summary>
public readonly record struct SwitchContact(string From, string To);

/// <summary>A switch with named positions; conditions choose the position.</summary>
/// <param name="Positions">Position name to the contacts closed in it.</param>
/// <param name="RestPosition">The position when no condition says otherwise.</param>
/// <param name="ContactOhms">Ohms of a healthy closed contact.</param>
/// <param name="OpensByItself">An inertia or pressure switch: opens for a cause of its own (a crash cut-off).</param>
public sealed record Switch(
    PartNotes Notes,
    ImmutableArray<string> TerminalNames,
    ImmutableSortedDictionary<string, ImmutableArray<SwitchContact>> Positions,
    string RestPosition,
    double ContactOhms,
    bool OpensByItself) : Part(Notes)
{
    public override string Kind => OpensByItself ? "cut-off switch" : "switch";
    public override ImmutableArray<string> Terminals => TerminalNames;
}

/// <summary>Which way a module's output drives.</summary>
public enum OutputSide { Low, High }

/// <summary>How the output is commanded.</summary>
public enum OutputDrive
{
    /// <summary>On or off.</summary>
    Steady,

    /// <summary>Switched fast; the condition gives the duty.</summary>
    Pulsed,

    /// <summary>On or off by a message on a bus that a meter cannot see.</summary>
    Bus,
}

/// <summary>An output of a control module.</summary>
/// <param name="Name">Terminal name.</param>
/// <param name="OnOhms">Ohms when on.</param>
/// <param name="LimitAmps">Current beyond which it protects itself.</param>
/// <param name="Latches">Stays off after protecting itself until the module's feed is cycled; else limits.</param>
/// <param name="BiasVolts">Volts it shows when off and open (open-load detection); 0 for none.</param>
/// <param name="BiasOhms">Source resistance of that bias.</param>
/// <param name="Needs">Inputs that must be active before the output follows its command.</param>
public sealed record ModuleOutput(
    string Name,
    OutputSide Side,
    OutputDrive Drive,
    double OnOhms,
    double LimitAmps,
    bool Latches,
    double BiasVolts,
    double BiasOhms,
    ImmutableArray<string> Needs);

/// <summary>A sensed input of a control module.</summary>
/// <param name="Name">Terminal name.</param>
/// <param name="ActiveHigh">True: active above the threshold; false: active below it.</param>
/// <param name="ThresholdVolts">Volts against the module's ground.</param>
/// <param name="PullVolts">Volts the module pulls the open input to; 0: it pulls to its ground.</param>
/// <param name="PullOhms">Ohms of that pull.</param>
public sealed record ModuleInput(string Name, bool ActiveHigh, double ThresholdVolts, double PullVolts, double PullOhms);

/// <summary>A control module: lives only with its own feeds and grounds, drives outputs, senses inputs.</summary>
/// <param name="Feeds">Terminals that must all carry volts.</param>
/// <param name="Grounds">Terminals that return its current.</param>
/// <param name="MinimumVolts">Feed volts against its ground below which it does nothing.</param>
/// <param name="OwnAmps">Current it draws itself when awake, per feed.</param>
/// <param name="Scan">A scan tool can read its codes and commanded states.</param>
/// <param name="Buses">Terminals that carry messages, which a meter cannot follow.</param>
public sealed record Module(
    PartNotes Notes,
    ImmutableArray<string> Feeds,
    ImmutableArray<string> Grounds,
    ImmutableArray<ModuleOutput> Outputs,
    ImmutableArray<ModuleInput> Inputs,
    double MinimumVolts,
    double OwnAmps,
    bool Scan,
    ImmutableArray<string> Buses = default) : Part(Notes)
{
    public ImmutableArray<string> Buses { get; init; } = Buses.IsDefault ? [] : Buses;

    public override string Kind => "module";

    public override ImmutableArray<string> Terminals =>
        [.. Feeds, .. Grounds, .. Outputs.Select(o => o.Name), .. Inputs.Select(i => i.Name), .. Buses];

    public override (string In, string Out)? PassThrough => null;
}
