using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Suspects;

namespace Halfsplit.Diagnosis.Coverage;

/// <summary>Which suspects of a complaint can be told apart by what is at hand, and what would tell the others apart.</summary>
/// <param name="Suspects">How many suspects the complaint has, "none of these" not counted.</param>
/// <param name="Repairs">By how many different repairs they are mended; what one repair mends needs no telling apart.</param>
/// <param name="Checks">How many checks can be done with what is at hand.</param>
/// <param name="Alone">How many suspects are told from all that another repair mends, at their likeliest degree.</param>
/// <param name="Groups">Those that are not; likeliest group first.</param>
/// <param name="Unseen">Suspects that no check at hand tells from a healthy car, but that the load does not do its work.</param>
public sealed record CoverageReport(
    int Suspects, int Repairs, int Checks, int Alone, ImmutableArray<SuspectGroup> Groups, ImmutableArray<Suspect> Unseen);

/// <summary>Suspects of different repairs that answer every check at hand alike.</summary>
/// <param name="Suspects">Likeliest first.</param>
/// <param name="Odds">Their odds together, once the complaint is known.</param>
/// <param name="OnlyAtWorst">At their likeliest degrees they are told apart; in some other degrees they are not.</param>
/// <param name="WouldPart">The cheapest check that would part some of them, were what it lacks at hand; null if none would.</param>
/// <param name="ExtraPoint">The cheapest reading at a terminal that can't be touched as it is and would part some; null if none would.</param>
public sealed record SuspectGroup(
    ImmutableArray<Suspect> Suspects, double Odds, bool OnlyAtWorst, LackingCheck? WouldPart, ExtraPoint? ExtraPoint);

/// <summary>A check that is not at hand.</summary>
/// <param name="Minutes">What it takes from a car with nothing opened.</param>
/// <param name="Lacks">What is not at hand for it.</param>
public sealed record LackingCheck(Check Check, double Minutes, ImmutableArray<Message> Lacks);

/// <summary>A terminal that is sealed, hidden in a socket or inside the harness, as if it could be touched.</summary>
/// <param name="Check">The reading there.</param>
/// <param name="Minutes">What it takes from a car with nothing opened, the way into the harness or seal not counted.</param>
public sealed record ExtraPoint(TerminalName Terminal, Check Check, double Minutes);
