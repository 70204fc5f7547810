using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Readings;

/// <summary>What a check asks for, so that a typed answer can be understood and doubted.</summary>
public sealed record ExpectedAnswer
{
    private ExpectedAnswer(Quantity? quantity, IEnumerable<AnswerWord> words, double low, double high)
    {
        Quantity = quantity;
        Words = [.. words.Append(AnswerWord.NotSure).Distinct()];
        PlausibleLow = low;
        PlausibleHigh = high;
    }

    /// <summary>What the display shows, or null where only words are taken.</summary>
    public Quantity? Quantity { get; }

    /// <summary>The words taken as an answer; "not sure" is always among them.</summary>
    public ImmutableArray<AnswerWord> Words { get; }

    /// <summary>A number below this is questioned. In the unit of <see cref="Quantity"/>.</summary>
    public double PlausibleLow { get; init; }

    /// <summary>A number above this is questioned. In the unit of <see cref="Quantity"/>.</summary>
    public double PlausibleHigh { get; init; }

    /// <summary>
    /// The readings that the living suspects and the healthy car predict, in the unit of <see cref="Quantity"/>. May be
    /// empty. Used only to notice a slip of the unit ("12.4 mV" where only 12.4 V would make sense) and amps beyond all of them.
    /// </summary>
    public ImmutableArray<double> Predicted { get; init; } = [];

    /// <summary>
    /// Volts of a 12 V vehicle. Questioned below -1 V (leads swapped) and above 18 V, the long over-voltage test
    /// level of ISO 16750-2 (from memory).
    /// </summary>
    public static ExpectedAnswer Volts(params IEnumerable<AnswerWord> words) =>
        new(Readings.Quantity.Volts, words, -1, 18);

    /// <summary>
    /// Ohms of a hand-held meter. Questioned below -1 Ω (zeroed badly, or volts present) and above 100 MΩ, more than
    /// such meters show (common practice, no published source).
    /// </summary>
    public static ExpectedAnswer Ohms(params IEnumerable<AnswerWord> words) =>
        new(Readings.Quantity.Ohms, words, -1, 100e6);

    /// <summary>
    /// Amperes, either way round. Questioned above 1,000 A, more than a car's starter draws (common practice, no
    /// published source); an in-line check narrows this to what the meter's jack bears.
    /// </summary>
    public static ExpectedAnswer Amperes(params IEnumerable<AnswerWord> words) =>
        new(Readings.Quantity.Amperes, words, -1000, 1000);

    /// <summary>A duty cycle, typed in percent, 0 to 1.</summary>
    public static ExpectedAnswer Duty(params IEnumerable<AnswerWord> words) =>
        new(Readings.Quantity.Duty, words, 0, 1);

    /// <summary>A look, a listen, a touch: no number is taken.</summary>
    public static ExpectedAnswer WordOnly(params IEnumerable<AnswerWord> words) =>
        new(null, words, double.NegativeInfinity, double.PositiveInfinity);

    /// <summary>Whether this word answers the check.</summary>
    public bool Takes(AnswerWord word) => Words.Contains(word);

    internal bool IsPlausible(double value) => value >= PlausibleLow && value <= PlausibleHigh;
}
