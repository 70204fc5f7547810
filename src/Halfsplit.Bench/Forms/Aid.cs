using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Forms;

/// <summary>An aid as a form: what it is told, and how it answers. One screen shows them all.</summary>
/// <param name="Name">The second half of the text code <c>bench-aid.…</c>.</param>
/// <param name="Group">The second half of the text code <c>bench-group.…</c>.</param>
/// <param name="Answers">Called when all that is needed was filled in and could be read.</param>
public sealed record Aid(string Name, string Group, ImmutableArray<AidInput> Inputs, Func<AidValues, Outcome<Answer>> Answers)
{
    /// <summary>A group in words.</summary>
    public static Message GroupTitle(string group) => new($"bench-group.{group}");

    /// <summary>It speaks of one part, so that a job can take its result as evidence.</summary>
    public bool IsOfPart { get; init; }

    public Message Title => new($"bench-aid.{Name}");

    /// <summary>What it is for, in a sentence.</summary>
    public Message Purpose => new($"bench-purpose.{Name}");

    /// <summary>The answer, or what is wrong with what was filled in.</summary>
    public Outcome<Answer> Ask(AidTyped typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var numbers = ImmutableDictionary.CreateBuilder<string, double>(StringComparer.Ordinal);
        foreach (var input in Inputs)
        {
            typed.Require(input);
            if (input.Kind == InputKind.Number && typed.Number(input) is { } number)
            {
                numbers[input.Name] = number;
            }
        }

        return typed.Problems.Length > 0
            ? Outcome.Wrong<Answer>(typed.Problems)
            : Answers(new AidValues(typed, numbers.ToImmutable()));
    }
}

/// <summary>What was filled in, once it could be read.</summary>
public sealed record AidValues(AidTyped Typed, ImmutableDictionary<string, double> Numbers)
{
    /// <summary>A number that must be there.</summary>
    public double this[string name] => Numbers[name];

    /// <summary>A number that may be left out.</summary>
    public double? Maybe(string name) => Numbers.TryGetValue(name, out var number) ? number : null;

    public int? MaybeCount(string name) => Maybe(name) is { } number ? (int)Math.Round(number) : null;

    public string Text(string name) => Typed.Text(name);

    public ImmutableArray<string> Many(string name) => Typed.Many(name);

    public bool Flag(string name) => Typed.Flag(name);
}
