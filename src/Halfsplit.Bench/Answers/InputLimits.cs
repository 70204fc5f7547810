using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Answers;

/// <summary>Collects what is wrong with the inputs of an aid; every refusal says the range.</summary>
public sealed class InputLimits
{
    private readonly ImmutableArray<Message>.Builder _problems = ImmutableArray.CreateBuilder<Message>();

    public ImmutableArray<Message> Problems => _problems.ToImmutable();

    public bool AreKept => _problems.Count == 0;

    /// <summary>Refuses a value outside its range, or one that is no number.</summary>
    /// <param name="input">The second half of the text code <c>bench-input.…</c>.</param>
    public InputLimits Within(string input, double value, double low, double high, Unit unit)
    {
        if (!(value >= low && value <= high))
        {
            _problems.Add(new Message(
                "bench-limit.range", new Message($"bench-input.{input}"), new Measure(value, unit).Say(), new Measure(low, unit).Say(),
                new Measure(high, unit).Say()));
        }

        return this;
    }

    /// <summary>The same for an input that may be left out.</summary>
    public InputLimits Within(string input, double? value, double low, double high, Unit unit) =>
        value is { } given ? Within(input, given, low, high, unit) : this;

    /// <summary>Refuses a value outside the spread of a row of <c>data/bench.csv</c>, or one that is no number; one that was left out is fine.</summary>
    /// <param name="row">The row without its <c>limit.</c>: <c>length</c>.</param>
    /// <param name="times">What the row's ends are multiplied by.</param>
    public InputLimits Within(string input, double? value, string row, Unit unit, double times = 1)
    {
        var range = BenchDefaults.Table.RangeOf($"limit.{row}");
        return Within(input, value, times * range.Low, times * range.High, unit);
    }

    /// <summary>Refuses something impossible for another reason.</summary>
    public InputLimits Unless(bool fine, string code, params object[] arguments)
    {
        if (!fine)
        {
            _problems.Add(new Message(code, arguments));
        }

        return this;
    }
}
