using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Bench.Forms;

/// <summary>How an input is filled in.</summary>
public enum InputKind
{
    Number,
    Text,
    Choice,

    /// <summary>Several texts, each on its own.</summary>
    Many,
    Flag,

    /// <summary>The bytes of a file.</summary>
    File,
}

/// <summary>One thing that an aid is told.</summary>
/// <param name="Name">The second half of the text code <c>bench-input.…</c>.</param>
/// <param name="Unit">Of a number; null where it is none, or has none.</param>
public sealed record AidInput(string Name, InputKind Kind = InputKind.Number, Unit? Unit = null)
{
    public bool IsOptional { get; init; }

    /// <summary>What stands in it at first; empty for nothing. A number with a decimal point.</summary>
    public string Usual { get; init; } = "";

    /// <summary>A number of things, which has no decimals.</summary>
    public bool IsWhole { get; init; }

    /// <summary>A meter may show OL.</summary>
    public bool MayBeOpen { get; init; }

    /// <summary>What a number counts in the base unit: 0.001 where it is told in thousandths.</summary>
    public double Times { get; init; } = 1;

    /// <summary>The choices, each the second half of a text code <c>bench-choice.…</c>.</summary>
    public ImmutableArray<string> Choices { get; init; } = [];

    /// <summary>The code of a text that says how to write it; null where that goes without saying.</summary>
    public string? Hint { get; init; }

    /// <summary>One of the choices in words.</summary>
    public static Message ChoiceText(string choice) => new($"bench-choice.{choice}");

    public Message Label => new($"bench-input.{Name}");

    /// <summary>The unit as it stands behind a field: "mV"; empty where there is none.</summary>
    public string UnitSymbol => Unit is { } unit ? (Times == 1e-3 ? MeterUnits.Letter(-3) : "") + Measure.SymbolOf(unit) : "";
}
