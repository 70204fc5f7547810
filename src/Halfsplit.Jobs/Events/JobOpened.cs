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

    /// <summary>What is known of this vehicle beyond the sheet; may be empty.</summary>
    public string VehicleNotes { get; init; } = "";

    public JobOptions Options { get; init; } = new();
}

/// <summary>What the person has at hand and how they value their time.</summary>
public sealed record JobOptions
{
    public ValueList<string> ToolsAtHand { get; init; }

    public ValueList<string> UnreachablePlaces { get; init; }

    /// <summary>Whether somebody can turn the key.</summary>
    public bool HelperPresent { get; init; }

    /// <summary>What an hour of work is worth, in <see cref="Currency"/>; null if not told.</summary>
    public decimal? ValueOfAnHour { get; init; }

    /// <summary>ISO 4217 code; null if not told.</summary>
    public string? Currency { get; init; }

    public MeterUsed? Meter { get; init; }
}

/// <summary>The meter, as far as its readings depend on it.</summary>
/// <param name="InputOhms">Input resistance on the range used, in ohms.</param>
/// <param name="Resolution">The least step of the display, in the unit of the reading.</param>
/// <param name="Accuracy">As meters state it: <c>0.5 % + 2</c>.</param>
/// <param name="LeadOhms">Resistance of both leads together, in ohms.</param>
public sealed record MeterUsed(double InputOhms, double Resolution, string Accuracy, double LeadOhms);
