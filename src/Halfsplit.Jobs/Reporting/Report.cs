using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Jobs.Events;

namespace Halfsplit.Jobs.Reporting;

/// <summary>How a job stands when it is reported.</summary>
public enum ReportStanding
{
    /// <summary>Checks are still to be done.</summary>
    GoingOn,

    /// <summary>There is a finding, and it was not acted upon.</summary>
    Found,

    /// <summary>A repair is done; its proof is not.</summary>
    Repaired,

    Proven,
    HandedOver,
    GivenUp,
}

/// <summary>All that a report says, in no language yet. Text that a person typed is kept as typed.</summary>
public sealed record Report
{
    /// <summary>The id of the event that opened the job: names the job for good.</summary>
    public required string Job { get; init; }

    public required string Circuit { get; init; }

    public required string SheetName { get; init; }

    public required string EngineVersion { get; init; }

    public required string DataVersion { get; init; }

    public required string Vehicle { get; init; }

    public required string Owner { get; init; }

    /// <summary>Who did the work, or who wrote the events; empty where nobody is named.</summary>
    public required string Worker { get; init; }

    public required string Complaint { get; init; }

    public required ImmutableArray<Message> Noticed { get; init; }

    /// <summary>What was found of parts on the bench.</summary>
    public required ImmutableArray<Message> Bench { get; init; }

    public required DateTimeOffset Opened { get; init; }

    /// <summary>When the last thing was done.</summary>
    public required DateTimeOffset Ended { get; init; }

    public required ReportStanding Standing { get; init; }

    /// <summary>Everything that was done and counts, in order.</summary>
    public required ImmutableArray<ReportedStep> Steps { get; init; }

    /// <summary>The finding that was acted upon, or the present one; null where nothing can be blamed.</summary>
    public required ReportedFinding? Finding { get; init; }

    /// <summary>Cautions of all that was done and of the repair, each once.</summary>
    public required ImmutableArray<Message> Cautions { get; init; }

    /// <summary>Those among them that hold for the repair.</summary>
    public required ImmutableArray<Message> RepairCautions { get; init; }

    /// <summary>What is odd or in doubt about the readings.</summary>
    public required ImmutableArray<Message> Doubts { get; init; }

    /// <summary>What was taken back, by what it was and what had been typed.</summary>
    public required ImmutableArray<TakenBack> TakenBack { get; init; }

    public required ImmutableArray<NoteWritten> Notes { get; init; }

    public required ReportedCost Cost { get; init; }

    /// <summary>The meter that the readings were weighed for.</summary>
    public required Message Meter { get; init; }

    /// <summary>To whom the job was handed over; null where it was not.</summary>
    public required HandedOver? HandedOver { get; init; }

    public IEnumerable<ReportedStep> Readings => Steps.Where(s => s.Sort is StepSort.Reading or StepSort.Skip);

    public IEnumerable<ReportedStep> Repairs => Steps.Where(s => s.Sort == StepSort.Repair);

    public IEnumerable<ReportedStep> Proofs => Steps.Where(s => s.Sort is StepSort.Proof or StepSort.PutBack);
}

/// <summary>A finding as a report says it.</summary>
/// <param name="Finding">The engine's finding.</param>
/// <param name="IsActedUpon">A repair was done upon it.</param>
/// <param name="Blamed">What is blamed in plain words, likeliest first, with its odds.</param>
/// <param name="Repair">What to mend or replace.</param>
/// <param name="NotProven">What the readings leave open, with odds, and how it could be told apart where that is known.</param>
/// <param name="RestsOn">Numbers of the steps that moved the odds most, strongest first.</param>
public sealed record ReportedFinding(
    Finding Finding,
    bool IsActedUpon,
    ImmutableArray<(Message Text, double Odds)> Blamed,
    Message Repair,
    ImmutableArray<(Message Text, double Odds, Message? How)> NotProven,
    ImmutableArray<int> RestsOn);

/// <summary>Something that was taken back: it no longer counts, but it was done.</summary>
public sealed record TakenBack(DateTimeOffset At, Message What, string Typed, string Reason);

/// <summary>Minutes and money.</summary>
/// <param name="Minutes">All that was done, by the table of times.</param>
/// <param name="HourValue">What an hour is worth; null if not told.</param>
/// <param name="Currency">ISO 4217; empty if not told.</param>
/// <param name="Repairs">The repairs done, or the one that is due where none was done.</param>
public sealed record ReportedCost(double Minutes, decimal? HourValue, string Currency, ImmutableArray<RepairCost> Repairs);

/// <summary>What one repair costs.</summary>
/// <param name="Told">What the parts did cost; null if not told, and then the range of the table is said.</param>
public sealed record RepairCost(Message What, Repair Repair, decimal? Told, bool IsDone);
