using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Circuits.Adapting;

/// <summary>What became of a change.</summary>
/// <param name="Circuit">The changed circuit, without errors; null if the change is refused.</param>
/// <param name="Problem">Why it is refused and how to mend the request; null if it is not.</param>
/// <param name="Assumptions">What was taken for what the person does not know, in the order it was needed.</param>
/// <param name="Warnings">What the lint says of the new circuit and did not say of the old one.</param>
public sealed record Adaptation(
    Circuit? Circuit, Message? Problem, ImmutableArray<Message> Assumptions, ImmutableArray<Message> Warnings)
{
    internal static Adaptation Refused(Message problem) => new(null, problem, [], []);
}
