using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>Why this step: what each answer would leave, what the way costs, and what else could be done.</summary>
public static class WhyPage
{
    private const int MostOthers = 6;

    public static void Draw(Terminal terminal, JobSession session)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        var next = session.Next;
        if (next.Check is { } check && check.Kind is not (CheckKind.Repair or CheckKind.Proof))
        {
            Outcomes(terminal, session, check);
            Risks(terminal, Risk.Of(session.Circuit, check));
        }

        if (next.Plan is not { } plan)
        {
            terminal.Line(terminal.Say("why.rule"), null, 2);
            return;
        }

        if (plan.Steps.Length > 1)
        {
            terminal.Line(
                terminal.Say(
                    "why.runner-up", Money(plan.Best.Way.Cost), Step(terminal, session, plan.Steps[1]), Money(plan.Steps[1].Way.Cost)),
                null, 2, 2);
            if (plan.IsFirstByTelling)
            {
                terminal.Line(terminal.Say("reason.costs-alike"), null, 2, 2);
            }
        }

        terminal.Line(terminal.Say("why.others"), Page.Heading);
        foreach (var step in plan.Steps.Take(MostOthers))
        {
            terminal.Row(
                Money(step.Way.Cost),
                terminal.Say(
                    step.Check is null ? "why.other" : "why.other-check", Step(terminal, session, step), CheckPage.Minutes(step.Way.Minutes),
                    Money(step.Way.Price), step.Bits.ToString("0.00", CliTexts.Formats)),
                9);
        }

        terminal.Blank();
    }

    /// <summary>What following the plan is expected to take, beside buying the most blamed part now.</summary>
    public static void Money(Terminal terminal, JobSession session, Comparison? compared)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        if (compared is null)
        {
            return;
        }

        var way = compared.Follow;
        var risk = Math.Max(0, way.Cost - way.Price - session.Investigation.Options.EconomyInUse.Worth(way.Minutes));
        terminal.Line(
            terminal.Say("plan.way", CheckPage.Minutes(way.Minutes), Money(way.Price), Money(way.Cost), Money(risk)), null, 2, 2);
        if (compared.BuyNow is { } buy)
        {
            terminal.Line(
                terminal.Say("plan.buy-now", Step(terminal, session, buy), OddsText.Of(buy.Odds), Money(buy.Way.Cost)), null, 2, 2);
        }
    }

    /// <summary>A check, a repair or handing over, in words.</summary>
    public static string Step(Terminal terminal, JobSession session, PlannedStep step)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(step);
        return step.Check is { } check ? terminal.Say(CheckTitle.Of(session.Circuit, check))
            : step.IsHandOver ? terminal.Say("plan.hand-over")
            : string.Join(" + ", step.Repairs.Select(r => terminal.Say(CheckTitle.Repair(session.Circuit, r.Id))));
    }

    /// <summary>A range of numbers, or the words of an answer.</summary>
    public static string Answer(Terminal terminal, JobSession session, Check check, ForeseenOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(session);
        ArgumentNullException.ThrowIfNull(outcome);
        return outcome.Typical switch
        {
            ReadingParse.Word { Answer: var word } => CliTexts.Words.TextOf(OfferedWords.For(session.Circuit, check, word)),
            ReadingParse.Number number => (outcome.Low, outcome.High) switch
            {
                ({ } low, { } high) => terminal.Say("why.between", Show(number, low), Show(number, high)),
                ({ } low, null) => terminal.Say("why.above", Show(number, low)),
                (null, { } high) => terminal.Say("why.below", Show(number, high)),
                _ => EntryText.Value(number),
            },
            _ => "OL",
        };
    }

    public static string Money(double cost) => cost.ToString(cost < 10 ? "0.#" : "0", CliTexts.Formats);

    private static string Show(ReadingParse.Number like, double value) =>
        EntryText.Value(like with { Value = double.Parse(value.ToString("G3", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture), Resolution = null });

    private static void Risks(Terminal terminal, ImmutableArray<Risk> risks)
    {
        if (risks.Length > 0)
        {
            terminal.Line(
                terminal.Say("why.risk", CheckPage.Minutes(risks.Sum(r => r.Minutes)), string.Join(", ", risks.Select(r => terminal.Say(r.Name)))),
                null, 2, 2);
        }
    }

    private static void Outcomes(Terminal terminal, JobSession session, Check check)
    {
        terminal.Line(terminal.Say("why.outcomes"), Page.Heading);
        foreach (var outcome in session.Investigation.Foresee(check))
        {
            terminal.Row(
                Answer(terminal, session, check, outcome),
                terminal.Say(
                    "why.leaves", OddsText.Of(outcome.Odds),
                    string.Join(", ", outcome.Leaves.Where(l => l.Odds >= 0.01).Select(l => $"{l.Suspect.Id} {OddsText.Of(l.Odds)}"))),
                24);
        }

        terminal.Blank();
    }
}
