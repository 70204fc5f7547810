namespace Halfsplit.Circuits.Model;

/// <summary>How well a load does its work.</summary>
public enum LoadCondition { Dead, Weak, Works }

/// <summary>What the person comes with: a load that does not do what it should in some condition.</summary>
/// <param name="Name">In the person's words: "pump does not run".</param>
/// <param name="Load">The load complained of.</param>
/// <param name="Is">What it does instead of working.</param>
/// <param name="Condition">In which condition of the car it should work.</param>
public sealed record Complaint(string Name, string Load, LoadCondition Is, string Condition);
