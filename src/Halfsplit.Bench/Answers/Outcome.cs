using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Answers;

/// <summary>A result, or what is wrong with the inputs.</summary>
/// <param name="Result">Null where there are problems.</param>
public sealed record Outcome<T>(T? Result, ImmutableArray<Message> Problems)
    where T : class
{
    public bool IsGood => Problems.Length == 0;

    /// <summary>Goes on with a good result.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, TNext> next)
        where TNext : class
    {
        ArgumentNullException.ThrowIfNull(next);
        return IsGood ? Outcome.Of(next(Result!)) : Outcome.Wrong<TNext>(Problems);
    }
}

/// <summary>Makes outcomes.</summary>
public static class Outcome
{
    public static Outcome<T> Of<T>(T result)
        where T : class => new(result, []);

    public static Outcome<T> Wrong<T>(params ImmutableArray<Message> problems)
        where T : class => new(null, problems);
}
