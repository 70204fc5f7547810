namespace Halfsplit.Simulation.Faults;

/// <summary>The names of the ways parts fail; the second piece of <c>PART:MODE</c>.</summary>
public static class FaultModes
{
    public const string Open = "open";

    /// <summary>Added series resistance; severity in ohms.</summary>
    public const string Resistive = "resistive";

    /// <summary>A wire's insulation worn through to the body, at its downstream end.</summary>
    public const string ShortToGround = "short-to-ground";

    /// <summary>A wire touching one that is always fed, at its downstream end.</summary>
    public const string ShortToFeed = "short-to-feed";

    /// <summary>A connector not latched: every cavity open.</summary>
    public const string Loose = "loose";

    public const string CoilOpen = "coil-open";
    public const string CoilShorted = "coil-shorted";

    /// <summary>A relay or solenoid whose coil is good but which does not move.</summary>
    public const string Stuck = "stuck";

    /// <summary>Contacts that stay closed.</summary>
    public const string Welded = "welded";

    /// <summary>Contacts that move but do not conduct.</summary>
    public const string ContactOpen = "contact-open";

    /// <summary>Burnt contacts; severity in ohms.</summary>
    public const string ContactResistive = "contact-resistive";

    /// <summary>A switch that stays in its rest position.</summary>
    public const string StuckAtRest = "stuck-at-rest";

    /// <summary>A cut-off switch that has opened.</summary>
    public const string Tripped = "tripped";

    /// <summary>A module that does nothing at all.</summary>
    public const string Dead = "dead";

    /// <summary>A module output that never drives.</summary>
    public const string OutputOff = "output-off";

    /// <summary>A module output that always drives.</summary>
    public const string OutputOn = "output-on";

    /// <summary>The module has its reasons and does not command the output (immobiliser, missing signal).</summary>
    public const string NotCommanded = "not-commanded";

    /// <summary>A motor that cannot turn.</summary>
    public const string Seized = "seized";

    /// <summary>A motor with too much friction; severity: friction and load as a multiple of healthy.</summary>
    public const string Tight = "tight";

    /// <summary>Windings or load shorted inside; severity in ohms.</summary>
    public const string Shorted = "shorted";

    /// <summary>Worn brushes: added series resistance; severity in ohms.</summary>
    public const string BrushesWorn = "brushes-worn";

    /// <summary>Battery discharged; severity: open-circuit volts.</summary>
    public const string Discharged = "discharged";

    /// <summary>Battery with high internal resistance; severity in ohms.</summary>
    public const string Weak = "weak";

    /// <summary>A generator that makes nothing.</summary>
    public const string NoOutput = "no-output";

    /// <summary>A sensor or resistor off its value; severity: ratio.</summary>
    public const string Drifted = "drifted";
}
