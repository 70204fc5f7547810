using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Explaining;

/// <summary>What one reading cleared and what it could not clear, by simulation.</summary>
/// <param name="Entry">The reading's name in the job.</param>
/// <param name="Cleared">Suspects whose odds it brought down to next to nothing, those that lost most first.</param>
/// <param name="NotCleared">Where a harmful resistance could still hide, the worst first.</param>
/// <param name="Proven">What carried current in this reading and can hide nothing harmful.</param>
/// <param name="Reasons">What it could not clear and why, in sentences, the most important first.</param>
/// <param name="Assurances">What it showed to carry current, in sentences.</param>
public sealed record Clearance(
    string Entry,
    Check Check,
    ImmutableArray<OddsMove> Cleared,
    ImmutableArray<ResistanceLimit> NotCleared,
    ImmutableArray<ResistanceLimit> Proven,
    ImmutableArray<Message> Reasons,
    ImmutableArray<Message> Assurances);

/// <summary>A suspect's odds before and after a reading, in the order in which the readings were taken.</summary>
public sealed record OddsMove(Suspect Suspect, double Before, double After);

/// <summary>How much resistance more a reading would not have shown in stretches that are alike in it.</summary>
/// <param name="Stretches">In the order of the circuit.</param>
/// <param name="Amps">What flowed through them in the reading, in the likeliest car.</param>
/// <param name="SameOhms">Up to this the display would show the same digits; null where words answer.</param>
/// <param name="HiddenOhms">Up to this it is lost in the accuracy of the meter and in what differs from car to car.</param>
/// <param name="Share">
/// The headline ohms over the ohms that would take the whole supply at the current these stretches carry in service: from
/// some hundredths on it is felt.
/// </param>
/// <param name="IsLoaded">A current worth the name flowed; the headline is then <paramref name="HiddenOhms"/>, else <paramref name="SameOhms"/>.</param>
public sealed record ResistanceLimit(
    ImmutableArray<Stretch> Stretches, double Amps, double? SameOhms, double HiddenOhms, double Share, bool IsLoaded)
{
    /// <summary>What is said first: the most that surely could not be seen, or with current the most that could hide.</summary>
    public double Ohms => IsLoaded ? HiddenOhms : SameOhms ?? HiddenOhms;
}
