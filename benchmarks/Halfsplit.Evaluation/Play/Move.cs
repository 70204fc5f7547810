using System.Collections.Immutable;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Repairs;

namespace Halfsplit.Evaluation.Play;

/// <summary>What a player does next.</summary>
public abstract record Move
{
    /// <summary>Does a check; its answer is in <see cref="Attempt.Answer"/> afterwards.</summary>
    public sealed record Look(Check Check) : Move;

    /// <summary>Tries a repair and proves it.</summary>
    public sealed record Mend(Repair Repair, Claim? Claim = null) : Move;

    /// <summary>Closes the job as proven, though the last proof left doubt.</summary>
    public sealed record Close : Move;
}

/// <summary>What a player who reckons with odds says when it blames something.</summary>
/// <param name="Odds">That this repair takes away what is wrong.</param>
/// <param name="Group">Repairs that together hold nineteen in twenty of the odds, likeliest first.</param>
/// <param name="WideGroup">The same of ninety-nine in a hundred.</param>
/// <param name="Suspects">Each suspect worth naming, with its odds and whether it is what is wrong.</param>
public sealed record Claim(double Odds, ImmutableArray<string> Group, ImmutableArray<string> WideGroup, ImmutableArray<Stated> Suspects);

/// <summary>Odds as stated, and whether it was so.</summary>
public readonly record struct Stated(double Odds, bool Hit);
