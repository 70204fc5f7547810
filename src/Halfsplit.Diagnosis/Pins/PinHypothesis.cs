using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>One way in which the pins may be assigned.</summary>
/// <param name="Settles">What is to be found: hypotheses with the same text need not be parted.</param>
/// <param name="Weight">How likely it is before anything is measured, against the others.</param>
/// <param name="Expects">What a measurement would show.</param>
/// <param name="Allows">False where a measurement would harm the meter or mean nothing: ohms on pins under power.</param>
public sealed record PinHypothesis(
    string Settles, double Weight, ImmutableArray<PinRole> Roles, string Detail, Func<PinTest, PinExpectation> Expects, Func<PinTest, bool> Allows);

/// <summary>What a pin is.</summary>
/// <param name="Role">The second half of a text code, or a name that a person gave.</param>
public readonly record struct PinRole(string Pin, string Role);

/// <summary>Pins, what they may be, and what can be measured to find out.</summary>
/// <param name="Offered">The measurements to choose from; others are understood as well.</param>
public sealed record PinPuzzle(ImmutableArray<string> Pins, ImmutableArray<PinHypothesis> Hypotheses, ImmutableArray<PinTest> Offered);
