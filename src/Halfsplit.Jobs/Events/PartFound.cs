namespace Halfsplit.Jobs.Events;

/// <summary>Something was found of a part on the bench: evidence on the part as the complaint found it.</summary>
/// <param name="Aid">The bench aid that found it, such as <c>contact</c>.</param>
/// <param name="Found">What, a row of <c>data/part-findings.csv</c>, such as <c>relay-contact-bad</c>.</param>
/// <param name="Part">The part of the sheet.</param>
public sealed record PartFound(EventId Id, DateTimeOffset At, string Aid, string Found, string Part) : JobEvent(Id, At)
{
    /// <summary>What the aid was told, as typed, so that it can be asked again.</summary>
    public ValueList<string> Typed { get; init; }

    /// <summary>The ohms that were measured of the contact; null where none were, and in files of older programs.</summary>
    public double? Ohms { get; init; }

    /// <summary>It does not fit the job's own readings, and the person stood by it.</summary>
    public bool Confirmed { get; init; }
}
