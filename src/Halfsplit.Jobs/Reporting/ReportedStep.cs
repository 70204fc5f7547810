using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Jobs.Reporting;

/// <summary>What sort of thing was done.</summary>
public enum StepSort
{
    Reading,
    Proof,
    Repair,
    Skip,
    PutBack,
}

/// <summary>One thing that was done: a reading with all that is needed to repeat it, a repair, a skip.</summary>
/// <param name="Number">As in the job's list.</param>
/// <param name="Sort">What was done.</param>
/// <param name="At">When, by the clock of whoever wrote it.</param>
/// <param name="By">Who or which device wrote it; empty if not told.</param>
/// <param name="Check">The check; null for a place that was given up.</param>
/// <param name="What">What was done, in one line.</param>
/// <param name="Minutes">By the table of times.</param>
public sealed record ReportedStep(
    int Number, StepSort Sort, DateTimeOffset At, string By, Check? Check, Message What, double Minutes)
{
    /// <summary>The places it needed open.</summary>
    public ImmutableArray<string> Places { get; init; } = [];

    /// <summary>Condition and what was unplugged, pulled and bridged; null where there is none.</summary>
    public Message? SetUp { get; init; }

    /// <summary>Where the leads were, each as its point and the part's name; null without leads.</summary>
    public (Message Red, Message Black)? Leads { get; init; }

    /// <summary>What a healthy car shows; null where nothing definite can be said.</summary>
    public ReadingValue? Healthy { get; init; }

    /// <summary>What was read; null where nothing was.</summary>
    public ReadingValue? Read { get; init; }

    /// <summary>The text as it was typed; empty where nothing was.</summary>
    public string Typed { get; init; } = "";

    /// <summary>More likely a slip than not.</summary>
    public bool IsDoubtful { get; init; }

    /// <summary>What it cleared, by the names of the suspects, those that lost most first.</summary>
    public ImmutableArray<Message> Cleared { get; init; } = [];

    /// <summary>What carried current in it and can hide nothing harmful, in sentences.</summary>
    public ImmutableArray<Message> Carried { get; init; } = [];

    /// <summary>What it could not clear, in sentences, the most important first.</summary>
    public ImmutableArray<Message> NotCleared { get; init; } = [];
}
