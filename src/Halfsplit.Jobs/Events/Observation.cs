using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Events;

/// <summary>How the car was set up when a check was done.</summary>
/// <param name="Condition">The condition's name in the sheet.</param>
public sealed record ArrangementUsed(string Condition)
{
    /// <summary>Connectors that were unplugged.</summary>
    public ValueList<string> Unplugged { get; init; }

    /// <summary>Parts that were taken out.</summary>
    public ValueList<string> Removed { get; init; }

    /// <summary>Jumpers between two terminals.</summary>
    public ValueList<Jumper> Jumpers { get; init; }

    /// <summary>Places that were open.</summary>
    public ValueList<string> Opened { get; init; }
}

/// <summary>A fused jumper between two terminals, such as <c>K2.30</c> and <c>K2.87</c>.</summary>
public sealed record Jumper(string From, string To);

/// <summary>
/// One check and what came out of it. It names everything needed to repeat the check, so that it can be weighed
/// again by another version of the engine.
/// </summary>
/// <param name="Check">The check's id.</param>
/// <param name="Kind">reading, look, listen, bench, swap, repair or proof.</param>
/// <param name="Instrument">Such as <c>volts</c>, <c>ohms</c>, <c>eye</c>.</param>
/// <param name="Typed">The text as the person typed it.</param>
/// <param name="Value">What the text was understood to mean.</param>
public sealed record Observation(
    string Check,
    string Kind,
    ArrangementUsed Arrangement,
    string Instrument,
    string Typed,
    ReadingValue Value)
{
    /// <summary>The terminal the red lead was on, if any.</summary>
    public string? Red { get; init; }

    /// <summary>The terminal the black lead was on, if any.</summary>
    public string? Black { get; init; }

    /// <summary>The part the check is about, if it is about one.</summary>
    public string? About { get; init; }

    /// <summary>Watts of the lamp laid on as a substitute load; null for the test lamp and other instruments.</summary>
    public double? LampWatts { get; init; }

    public MeterUsed? Meter { get; init; }

    /// <summary>Whether the text was questioned and the person stood by it.</summary>
    public bool Confirmed { get; init; }
}

/// <summary>A check was done.</summary>
public sealed record ReadingTaken(EventId Id, DateTimeOffset At, Observation Observation) : JobEvent(Id, At);

/// <summary>A check was done after a repair, to prove it.</summary>
public sealed record ProofTaken(EventId Id, DateTimeOffset At, Observation Observation) : JobEvent(Id, At)
{
    /// <summary>The repair that it proves or disproves, if it is about one.</summary>
    public EventId? Proves { get; init; }
}
