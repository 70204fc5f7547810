using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>What became of a typed reading: a <see cref="ReadingValue"/>, a question, or a refusal with a hint.</summary>
public abstract record ReadingParse
{
    private protected ReadingParse()
    {
    }

    /// <summary>A number was read off the display.</summary>
    /// <param name="Value">In the SI unit of <paramref name="Quantity"/>; always finite.</param>
    /// <param name="Quantity">What was measured.</param>
    /// <param name="Resolution">
    /// The place value of the last digit typed, in the same unit ("12.40 V" gives 0.01), or null where the text
    /// has no digits.
    /// </param>
    public sealed record Number(double Value, Quantity Quantity, double? Resolution) : ReadingValue
    {
        /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
        public double Value { get; init; } = double.IsFinite(Value)
            ? Value
            : throw new ArgumentOutOfRangeException(nameof(Value), Value, "A reading is a finite number.");

        /// <summary>The number jumped while the harness was moved; what it was is then of little worth.</summary>
        public bool Unsteady { get; init; }

        public override string ToString() =>
            Unsteady ? $"{ReadingFormat.Text(this)} {AnswerWord.Jumps.Text}" : ReadingFormat.Text(this);
    }

    /// <summary>The display shows over-limit: more than the range can show, or an open circuit on an ohms range.</summary>
    public sealed record OverLimit : ReadingValue
    {
        public override string ToString() => "OL";
    }

    /// <summary>An observation in words.</summary>
    public sealed record Word(AnswerWord Answer) : ReadingValue
    {
        public override string ToString() => Answer.Text;
    }

    /// <summary>The text can be read, but something about it is unlikely: ask before recording it.</summary>
    /// <param name="Message">The question, with what would make the text clear.</param>
    /// <param name="Meant">What is recorded if the person confirms.</param>
    /// <param name="Alternatives">What else may have been meant; may be empty.</param>
    public sealed record Question(Message Message, ReadingValue Meant, ImmutableArray<ReadingValue> Alternatives)
        : ReadingParse
    {
        public bool Equals(Question? other) =>
            other is not null && Message.Equals(other.Message) && Meant.Equals(other.Meant)
            && Alternatives.SequenceEqual(other.Alternatives);

        public override int GetHashCode() => HashCode.Combine(Message, Meant, Alternatives.Length);
    }

    /// <summary>The text can't be a reading of this check; the message says how to mend it.</summary>
    public sealed record Rejected(Message Message) : ReadingParse;
}

/// <summary>
/// A reading that can be recorded: <see cref="ReadingParse.Number"/>, <see cref="ReadingParse.OverLimit"/> or
/// <see cref="ReadingParse.Word"/>. Its text form parses back to the same value.
/// </summary>
public abstract record ReadingValue : ReadingParse, IFormattable
{
    private protected ReadingValue()
    {
    }

    /// <summary>In a message a reading is said in the language of the text.</summary>
    string IFormattable.ToString(string? format, IFormatProvider? formatProvider) => SpokenReading.Of(this, Language.Of(formatProvider));
}
