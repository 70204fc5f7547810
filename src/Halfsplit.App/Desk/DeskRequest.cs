namespace Halfsplit.App.Desk;

/// <summary>What the screens ask the engine to do. Only the fields of the verb are set.</summary>
public sealed record DeskRequest(string Verb)
{
    /// <summary>ISO 639-1 code of the language to speak.</summary>
    public string Language { get; init; } = "en";

    /// <summary>The lines of a job, to open it.</summary>
    public string[]? Lines { get; init; }

    public JobWish? Wish { get; init; }

    /// <summary>The check it is about; null for the one that is asked now.</summary>
    public string? Check { get; init; }

    /// <summary>What the person read, as typed.</summary>
    public string? Typed { get; init; }

    public bool Confirmed { get; init; }

    public string? Place { get; init; }

    /// <summary><c>cannot-reach</c>, <c>not-sure</c> or <c>no-tool</c>.</summary>
    public string? Reason { get; init; }

    /// <summary>The number of an entry.</summary>
    public int? Entry { get; init; }

    /// <summary>From which one on, for what is done piece by piece.</summary>
    public int From { get; init; }

    /// <summary>A name: of a sheet, a complaint, something noticed, a part.</summary>
    public string? Name { get; init; }

    public string? Text { get; init; }

    /// <summary>Who worked on the car.</summary>
    public string? Worker { get; init; }

    public PointsWish? Points { get; init; }

    /// <summary>A result of the bench to be attached.</summary>
    public AttachWish? Attach { get; init; }
}

/// <summary>A job to be opened.</summary>
public sealed record JobWish(string Sheet, string Complaint)
{
    public string Vehicle { get; init; } = "";

    /// <summary>As <c>name</c> or <c>name:about</c>.</summary>
    public string[] Noticed { get; init; } = [];

    /// <summary>Tools at hand; empty: all usual ones.</summary>
    public string[] Tools { get; init; } = [];
    public string[] Unreachable { get; init; } = [];
    public bool Helper { get; init; }
    public bool RemoteStarter { get; init; }
    public bool Clamp { get; init; } = true;
    public bool TestLamp { get; init; } = true;
    public bool ScanTool { get; init; }
    public bool SpareRelay { get; init; }
    public bool SmellOfFuel { get; init; }
    public double? LeadMetres { get; init; }
    public double? HourValue { get; init; }
    public double? MeterCounts { get; init; }

    /// <summary>Per cent of the reading.</summary>
    public double? MeterAccuracy { get; init; }
}

/// <summary>A result of the bench, for a part of the open job.</summary>
/// <param name="Aid">The aid that found it.</param>
/// <param name="Found">A row of <c>data/part-findings.csv</c>.</param>
/// <param name="Part">The part of the sheet that was measured; empty while it is asked which it can have been.</param>
public sealed record AttachWish(string Aid, string Found, string Part)
{
    /// <summary>What the aid was told, as <c>input=text</c>.</summary>
    public string[] Typed { get; init; } = [];

    public MeasuredWish[] Measured { get; init; } = [];

    /// <summary>Kinds of parts that it can have been; empty for any.</summary>
    public string[] PartKinds { get; init; } = [];
}

/// <summary>A number that was measured of the part.</summary>
/// <param name="What">A name of <see cref="Diagnosis.Noticing.BenchQuantity"/>.</param>
/// <param name="Value">In volts, ohms or amps; null for OL.</param>
public sealed record MeasuredWish(string What, double? Value);

/// <summary>Two points and a setting of the meter.</summary>
/// <param name="Instrument">By its name in job files.</param>
/// <param name="Condition">What the car is doing; null: as it stands.</param>
public sealed record PointsWish(string Red, string Black, string Instrument, string? Condition);
