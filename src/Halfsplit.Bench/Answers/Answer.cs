using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Noticing;

namespace Halfsplit.Bench.Answers;

/// <summary>One line of an answer: a number or words under a name.</summary>
/// <param name="Name">The second half of the text code <c>bench-line.…</c>, and the key in JSON.</param>
/// <param name="Measure">Null where the line has words.</param>
/// <param name="Words">Null where the line has a number.</param>
/// <param name="About">What the line is about where several have the same name: a fuse, a joint; empty otherwise.</param>
public sealed record AnswerLine(string Name, Measure? Measure, Message? Words, string About = "")
{
    public AnswerLine(string name, double value, Unit unit, string about = "")
        : this(name, new Measure(value, unit), null, about) { }

    public AnswerLine(string name, Message words, string about = "")
        : this(name, null, words, about) { }

    public Message Label => About.Length == 0 ? new Message($"bench-line.{Name}") : new Message("bench-line.about", About, new Message($"bench-line.{Name}"));

    public Message Said => Words ?? Measure!.Say();
}

/// <summary>
/// What a bench aid has to say, ready for any screen: the numbers, what they mean, the cautions that come first, and what the answer
/// rests on.
/// </summary>
/// <param name="Judgements">What the numbers mean, the weightiest first.</param>
/// <param name="Notes">Which tables and assumptions it rests on, and what it does not say.</param>
public sealed record Answer(
    Message Title, ImmutableArray<Message> Cautions, ImmutableArray<AnswerLine> Lines, ImmutableArray<Message> Judgements,
    ImmutableArray<Message> Notes)
{
    /// <summary>What to do, in this order; empty where an aid only answers.</summary>
    public ImmutableArray<Message> Steps { get; init; } = [];

    /// <summary>The measurement that is asked for next, as it is typed: <c>ohms 1 2</c>; null where none is.</summary>
    public string? NextReading { get; init; }

    /// <summary>
    /// What was found of the part that was measured, a row of <c>data/part-findings.csv</c>, so that a job can take it as evidence; null
    /// where the answer speaks of no part, or too little for or against it.
    /// </summary>
    public string? Found { get; init; }

    /// <summary>Kinds of parts, as sheets name them, that it can have been; empty where the finding alone says.</summary>
    public ImmutableArray<string> PartKinds { get; init; } = [];

    /// <summary>What was measured of that part, so that a job can hold it against its own readings; empty where nothing compares.</summary>
    public ImmutableArray<BenchValue> Measured { get; init; } = [];
}
