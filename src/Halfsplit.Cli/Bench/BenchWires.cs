using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Bench.Budgets;
using Halfsplit.Bench.Wires;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Bench;

/// <summary>A wire, and a chain of wires and joints.</summary>
public static class BenchWires
{
    public static int Wire(Terminal terminal, WireSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var gauge = Gauges.Parse(string.Join(' ', settings.Gauge));
        var outcome = gauge.IsGood
            ? WireAid.Of(new WireQuestion(
                gauge.Result!, settings.Metres, settings.Amps, settings.HasReturn, settings.Celsius, settings.SupplyVolts, settings.AllowedVolts))
            : Outcome.Wrong<WireResult>(gauge.Problems);
        return AnswerPage.Show(terminal, settings, outcome.Then(WireAnswer.Of));
    }

    public static int Drop(Terminal terminal, DropSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var pieces = settings.Pieces.Select(p => ChainLink.Parse(p, settings.Celsius)).ToImmutableArray();
        var outcome = pieces.All(p => p.IsGood)
            ? DropBudget.Of([.. pieces.Select(p => p.Result!)], settings.Amps, settings.AllowedVolts, settings.IsStarter)
            : Outcome.Wrong<BudgetResult>([.. pieces.SelectMany(p => p.Problems)]);
        return AnswerPage.Show(terminal, settings, outcome.Then(DropBudget.Answer));
    }
}
