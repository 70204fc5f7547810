using System.Collections.Immutable;

namespace Halfsplit.Circuits.Messages;

/// <summary>
/// Something to tell a person: a code that names a text in a resource file, and the arguments of that text.
/// The words are found only at the edge (terminal, app, report), in the person's language.
/// </summary>
/// <param name="Code">Name of the text, e.g. <c>sheet.unknown-key</c>.</param>
/// <param name="Arguments">Values for the text's numbered gaps; strings, numbers or other messages.</param>
public sealed record Message(string Code, ImmutableArray<object> Arguments)
{
    public Message(string code, params object[] arguments)
        : this(code, ImmutableArray.Create(arguments)) { }

    public bool Equals(Message? other) =>
        other is not null && Code == other.Code && Arguments.SequenceEqual(other.Arguments);

    public override int GetHashCode() => Code.GetHashCode(StringComparison.Ordinal);

    /// <summary>For logs and debuggers; people read what <see cref="TextCatalog"/> says.</summary>
    public override string ToString() => $"{Code}({string.Join(", ", Arguments)})";
}
