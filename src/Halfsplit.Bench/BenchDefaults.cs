using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench;

/// <summary>Limits and rules of the bench aids (<c>data/bench.csv</c>), each with its source or the words that say there is none.</summary>
public sealed class BenchDefaults
{
    private readonly ImmutableDictionary<string, ComponentDefault> _byName;

    private BenchDefaults()
    {
        All = [.. BenchData.Read("bench.csv").Select(row => new ComponentDefault(
            row.Text("name"), row.Number("value"), new ValueRange(row.Number("low"), row.Number("high")), row.Text("unit"), row.Text("source")))];
        _byName = All.ToImmutableDictionary(d => d.Name, StringComparer.Ordinal);
    }

    public static BenchDefaults Table { get; } = new();

    /// <summary>Every row, in the table's order.</summary>
    public ImmutableArray<ComponentDefault> All { get; }

    /// <summary>The typical value of a row.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such row: the build is broken.</exception>
    public double this[string name] => _byName[name].Value;

    /// <summary>What stands in an input at first, in its base unit: the value of its limit's row.</summary>
    /// <param name="limit">The row without its <c>limit.</c></param>
    public static double Usual(string limit) => Table[$"limit.{limit}"];

    /// <summary>A row's value in words.</summary>
    internal Message Say(string name, Unit unit) => new Measure(unit == Unit.Percent ? 100 * this[name] : this[name], unit).Say();

    /// <summary>A row's spread in words: "6 % to 15 %".</summary>
    internal Message SayRange(string name, Unit unit, double times = 1)
    {
        var (range, factor) = (RangeOf(name), unit == Unit.Percent ? 100 : times);
        return new Message("bench-unit.range", new Measure(factor * range.Low, unit).Say(), new Measure(factor * range.High, unit).Say());
    }

    /// <summary>A row with its spread.</summary>
    /// <exception cref="KeyNotFoundException">The table has no such row: the build is broken.</exception>
    public ValueRange RangeOf(string name) => _byName[name].Range;
}
