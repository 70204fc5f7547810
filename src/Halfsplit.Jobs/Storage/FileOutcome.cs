using System.Diagnostics.CodeAnalysis;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Storage;

/// <summary>What came of something done with a file: the result, or a message that says how to mend it.</summary>
public sealed record FileOutcome<T>
    where T : class
{
    private FileOutcome(T? value, Message? problem)
    {
        Value = value;
        Problem = problem;
    }

    public T? Value { get; }

    public Message? Problem { get; }

    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Problem))]
    public bool IsDone => Value is not null;

    internal static FileOutcome<T> Done(T value) => new(value, null);

    internal static FileOutcome<T> Failed(Message problem) => new(null, problem);
}
