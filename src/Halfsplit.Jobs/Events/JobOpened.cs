namespace Halfsplit.Jobs.Events;

/// <summary>The first event of a job. It carries all that is needed to mean the same years later.</summary>
/// <param name="SheetName">The sheet's file name or shipped name.</param>
/// <param name="SheetText">The whole text of the sheet.</param>
/// <param name="DataVersion">The version of the priors and tables.</param>
/// <param name="EngineVersion">The version of the program.</param>
public sealed record JobOpened(
    EventId Id,
    DateTimeOffset At,
    string SheetName,
    string SheetText,
    string DataVersion,
    string EngineVersion) : JobEvent(Id, At)
{
    /// <summary>What the owner says, in their words; may be empty.</summary>
    public string Complaint { get; init; } = "";

    /// <summary>What that means to the engine; null in files of programs that did not tell.</summary>
    public ComplaintMeant? Meant { get; init; }

    /// <summary>What is known of this vehicle beyond the sheet; may be empty.</summary>
    public string VehicleNotes { get; init; } = "";

    public JobOptions Options { get; init; } = new();

    /// <summary>What finished jobs had taught; null where nothing was learned from.</summary>
    public HistoryUsed? Learned { get; init; }
}

/// <summary>The complaint as the engine takes it.</summary>
/// <param name="Load">The load's name in the sheet.</param>
/// <param name="Is"><c>dead</c> or <c>weak</c>.</param>
/// <param name="In">The condition in which it should work.</param>
public sealed record ComplaintMeant(string Load, string Is, string In);

/// <summary>What the person has at hand and how they value their time. What is null was not told.</summary>
public sealed record JobOptions
{
    public ValueList<string> ToolsAtHand { get; init; }

    public ValueList<string> UnreachablePlaces { get; init; }

    /// <summary>Whether somebody can turn the key.</summary>
    public bool HelperPresent { get; init; }

    /// <summary>A push button to clip to the starter, with which one person cranks from beside the meter.</summary>
    public bool RemoteStarterPresent { get; init; }

    /// <summary>What an hour of work is worth, in <see cref="Currency"/>; null if not told.</summary>
    public decimal? ValueOfAnHour { get; init; }

    /// <summary>ISO 4217 code; null if not told.</summary>
    public string? Currency { get; init; }

    public MeterUsed? Meter { get; init; }

    /// <summary>The longest test lead, in metres.</summary>
    public double? LeadMetres { get; init; }

    /// <summary>A clamp ammeter for direct current.</summary>
    public bool? Clamp { get; init; }

    /// <summary>A test lamp, and lamps to load a connector with.</summary>
    public bool? TestLamp { get; init; }

    /// <summary>A tool that reads codes and commanded states.</summary>
    public bool? ScanTool { get; init; }

    /// <summary>A known good relay with the same pins.</summary>
    public bool? SpareRelay { get; init; }

    /// <summary>Fuel is smelt, or the car was hit: nothing may bypass a cut-off.</summary>
    public bool? SmellOfFuelOrImpact { get; init; }

    /// <summary>The meter and test lamp at hand, in full; where it is null, <see cref="Meter"/> counts.</summary>
    public MeterAtHand? MeterAtHand { get; init; }
}

/// <summary>A meter with its leads and its test lamp.</summary>
/// <param name="InputOhms">Input resistance on volts.</param>
/// <param name="LowImpedanceOhms">Input resistance on its low-impedance setting.</param>
/// <param name="LeadOhms">Both leads together.</param>
/// <param name="Counts">Highest count of the display.</param>
/// <param name="GainAccuracy">Accuracy limit as a share of the reading: 0.005 for 0.5 %.</param>
/// <param name="CountAccuracy">Accuracy limit in counts.</param>
/// <param name="JackAmps">What the in-line jack bears.</param>
/// <param name="LampWatts">Watts of the test lamp at 12 V.</param>
public sealed record MeterAtHand(
    double InputOhms,
    double LowImpedanceOhms,
    double LeadOhms,
    double Counts,
    double GainAccuracy,
    double CountAccuracy,
    double JackAmps,
    double LampWatts);

/// <summary>The meter, as far as its readings depend on it.</summary>
/// <param name="InputOhms">Input resistance on the range used, in ohms.</param>
/// <param name="Resolution">The least step of the display, in the unit of the reading.</param>
/// <param name="Accuracy">As meters state it: <c>0.5 % + 2</c>.</param>
/// <param name="LeadOhms">Resistance of both leads together, in ohms.</param>
public sealed record MeterUsed(double InputOhms, double Resolution, string Accuracy, double LeadOhms);
