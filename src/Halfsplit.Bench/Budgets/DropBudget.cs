using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Budgets;

/// <summary>A piece of the chain with the volts that a healthy one drops.</summary>
/// <param name="IsTooMuch">More than twice the most that a healthy piece drops, and more than what a meter can mistake.</param>
public sealed record BudgetLine(ChainLink Link, ValueRange Expected, bool IsTooMuch);

/// <summary>What a chain of pieces may drop, and what was measured of it.</summary>
/// <param name="Allowed">Volts that the whole chain may drop; null where nobody said.</param>
/// <param name="Measured">The sum of what was measured; null where a piece is missing.</param>
public sealed record BudgetResult(double Amps, ImmutableArray<BudgetLine> Lines, ValueRange Expected, double? Allowed, double? Measured, bool IsStarter);

/// <summary>The volts lost on the way to a load and back, piece by piece.</summary>
public static class DropBudget
{
    public static Outcome<BudgetResult> Of(ImmutableArray<ChainLink> chain, double amps, double? allowedVolts, bool isStarter)
    {
        var limits = new InputLimits()
            .Within("amps", amps, "drop-amps", Unit.Amp)
            .Within("allowed-drop", allowedVolts, "allowed-drop", Unit.Volt)
            .Unless(chain.Length > 0, "bench-limit.no-chain", ChainLink.Words);
        foreach (var link in chain)
        {
            limits.Within("measured-drop", link.MeasuredVolts, "measured-drop", Unit.Volt)
                .Unless(!(amps > link.MostAmps), "bench-limit.piece-burns", link.Name, new Measure(link.MostAmps ?? 0, Unit.Amp).Say());
        }

        if (!limits.AreKept)
        {
            return Outcome.Wrong<BudgetResult>(limits.Problems);
        }

        var lines = chain.Select(link => Line(link, amps)).ToImmutableArray();
        return Outcome.Of(new BudgetResult(
            amps, lines, new ValueRange(lines.Sum(l => l.Expected.Low), lines.Sum(l => l.Expected.High)),
            allowedVolts ?? (isStarter ? BenchDefaults.Table["starter.volts-per-100-amps"] * amps / 100 : null),
            chain.All(l => l.MeasuredVolts is not null) ? chain.Sum(l => l.MeasuredVolts!.Value) : null, isStarter));
    }

    public static Answer Answer(BudgetResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        var lines = ImmutableArray.CreateBuilder<AnswerLine>();
        foreach (var line in result.Lines)
        {
            lines.Add(new("expected", Expected(line.Expected), null, line.Link.Name));
            if (line.Link.MeasuredVolts is { } measured)
            {
                lines.Add(new("measured", measured, Unit.Volt, line.Link.Name));
            }
        }

        lines.Add(new("total-expected", Expected(result.Expected), null));
        lines.AddRange(Line("total-measured", result.Measured), Line("allowed", result.Allowed));
        return new Answer(
            new Message("bench-budget.title", new Measure(result.Amps, Unit.Amp).Say()), [new Message("bench-caution.live")],
            [.. lines.OfType<AnswerLine>()], Judged(result),
            [
                result.IsStarter ? new Message("bench-budget.starter-source", BenchDefaults.Table.Say("starter.volts-per-100-amps", Unit.Volt))
                    : new Message("bench-budget.source", BenchDefaults.Table["drop.times-expected"], BenchDefaults.Table.Say("drop.least-volts", Unit.Volt)),
            ]);
    }

    private static ImmutableArray<Message> Judged(BudgetResult result)
    {
        var judged = ImmutableArray.CreateBuilder<Message>();
        foreach (var line in result.Lines.Where(l => l.IsTooMuch).OrderByDescending(l => l.Link.MeasuredVolts - l.Expected.High))
        {
            var more = line.Link.MeasuredVolts!.Value - line.Expected.High;
            judged.Add(new Message(
                "bench-budget.too-much", line.Link.Name, new Measure(more, Unit.Volt).Say(), new Measure(more / result.Amps, Unit.Ohm).Say()));
        }

        if (result.Allowed is { } allowed)
        {
            judged.Add(new Message((result.Measured, result.Expected) switch
            {
                ({ } measured, _) => measured <= allowed ? "bench-budget.kept" : "bench-budget.broken",
                (null, var expected) when expected.High <= allowed => "bench-budget.planned",
                (null, var expected) when expected.Low > allowed => "bench-budget.impossible",
                _ => "bench-budget.tight",
            }));
        }

        return judged.ToImmutable();
    }

    private static BudgetLine Line(ChainLink link, double amps)
    {
        var expected = new ValueRange(link.Ohms.Low * amps, link.Ohms.High * amps);
        return new BudgetLine(
            link, expected,
            link.MeasuredVolts > BenchDefaults.Table["drop.times-expected"] * expected.High && link.MeasuredVolts > BenchDefaults.Table["drop.least-volts"]);
    }

    private static AnswerLine Line(string name, double? volts) => volts is { } value ? new(name, value, Unit.Volt) : null!;

    private static Measure Expected(ValueRange range) => new(range.Middle, Unit.Volt, range);
}
