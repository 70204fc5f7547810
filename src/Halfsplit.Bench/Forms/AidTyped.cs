using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Forms;

/// <summary>What a person filled into a form, read input by input; what is missing or can't be read is collected.</summary>
/// <param name="texts">What was typed, by the inputs' names; several for an input that takes many.</param>
/// <param name="file">The bytes of the file, where one was picked.</param>
public sealed class AidTyped(IReadOnlyDictionary<string, ImmutableArray<string>> texts, ReadOnlyMemory<byte> file = default)
{
    private readonly ImmutableArray<Message>.Builder _problems = ImmutableArray.CreateBuilder<Message>();

    public ReadOnlyMemory<byte> File { get; } = file;

    public ImmutableArray<Message> Problems => _problems.ToImmutable();

    /// <summary>The one text of an input; empty where nothing was typed.</summary>
    public string Text(string name) => Many(name) is [var first, ..] ? first : "";

    /// <summary>The texts of an input, empty ones left out.</summary>
    public ImmutableArray<string> Many(string name) =>
        [.. (texts.TryGetValue(name, out var typed) ? typed : []).Select(t => t.Trim()).Where(t => t.Length > 0)];

    public bool Flag(string name) => Text(name) == "true";

    /// <summary>A number in the base unit; null where nothing was typed.</summary>
    public double? Number(AidInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        var text = Text(input.Name);
        if (text.Length == 0)
        {
            return null;
        }

        if (input.MayBeOpen && string.Equals(text, "OL", StringComparison.OrdinalIgnoreCase))
        {
            return double.PositiveInfinity;
        }

        double? read = QuantityOf(input.Unit) is { } quantity
            ? TypedQuantity.Read(text, quantity, input.Times)
            : TypedQuantity.Number(text) is var (number, behind) && (behind.Length == 0 || behind == input.UnitSymbol) ? number * input.Times : null;
        if (read is null)
        {
            _problems.Add(new Message("bench-form.no-number", input.Label, text));
        }
        else if (input.IsWhole && read != Math.Round(read.Value))
        {
            _problems.Add(new Message("bench-form.no-whole-number", input.Label, text));
        }

        return read;
    }

    /// <summary>Tells what must be filled in and is not.</summary>
    internal void Require(AidInput input)
    {
        if (!input.IsOptional && input.Kind is InputKind.Number or InputKind.Text && Text(input.Name).Length == 0)
        {
            _problems.Add(new Message("bench-form.missing", input.Label));
        }
        else if (input is { Kind: InputKind.File, IsOptional: false } && File.IsEmpty)
        {
            _problems.Add(new Message("bench-form.missing", input.Label));
        }
    }

    private static Quantity? QuantityOf(Unit? unit) => unit switch
    {
        Unit.Volt => Quantity.Volts,
        Unit.Ohm => Quantity.Ohms,
        Unit.Amp => Quantity.Amperes,
        _ => null,
    };
}
