using Halfsplit.Bench.Answers;

namespace Halfsplit.App.Parts;

/// <summary>What an aid answered.</summary>
/// <param name="Typed">What it was told, as NAME=TEXT.</param>
public sealed record AidAnswered(Answer Answer, string[] Typed);
