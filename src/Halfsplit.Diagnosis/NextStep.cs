using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Findings;
using Halfsplit.Diagnosis.Planning;

namespace Halfsplit.Diagnosis;

/// <summary>What to do now.</summary>
/// <param name="Check">The check, repair or proof to do; null when done or when nothing is left that would help.</param>
/// <param name="Effort">Its minutes and steps from where the car stands.</param>
/// <param name="Reason">Why this one.</param>
/// <param name="Cautions">To be shown before its first step.</param>
/// <param name="Finding">The finding, as soon as repair is the best next step.</param>
/// <param name="Alternatives">The next best checks.</param>
/// <param name="IsProven">The repair is proven and everything is put back: the job is done.</param>
public sealed record NextStep(
    Check? Check,
    Effort? Effort,
    Message Reason,
    ImmutableArray<Message> Cautions,
    Finding? Finding,
    ImmutableArray<RankedCheck> Alternatives,
    bool IsProven)
{
    /// <summary>The plan behind it: what each thing that could be done now would lead to; null where a rule decided.</summary>
    public Plan? Plan { get; init; }

    /// <summary>Where else to look, when nothing on the sheet fits or nothing is left to do.</summary>
    public OutsideAdvice? Outside { get; init; }

    /// <summary>What to put back, in order; with the step that asks for it, else empty.</summary>
    public ImmutableArray<PutBackItem> PutBack { get; init; } = [];
}
