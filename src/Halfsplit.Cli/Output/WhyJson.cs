using System.Text.Json;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Output;

/// <summary>The plan behind a step, for scripts.</summary>
public static class WhyJson
{
    /// <summary>What following the plan is expected to take, and the other things that could be done; null where a rule decided.</summary>
    /// <param name="mostWays">How many of these at most, best first.</param>
    public static void Plan(Utf8JsonWriter json, Plan? plan, int mostWays = int.MaxValue)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (plan is null)
        {
            json.WriteNull("plan");
            return;
        }

        json.Object("plan", () =>
        {
            Way(json, plan.Best);
            BuyNow(json, plan.BuyNow);
            json.Array("ways", plan.Steps.Take(mostWays), step => Way(json, step));
        });
    }

    /// <summary>Following the plan beside buying now; null once a repair is being proven.</summary>
    public static void Compared(Utf8JsonWriter json, Comparison? compared)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (compared is null)
        {
            json.WriteNull("compared");
            return;
        }

        json.Object("compared", () =>
        {
            json.Object("follow", () => Value(json, compared.Follow));
            BuyNow(json, compared.BuyNow);
        });
    }

    private static void BuyNow(Utf8JsonWriter json, PlannedStep? buy)
    {
        if (buy is null)
        {
            json.WriteNull("buyNow");
            return;
        }

        json.Object("buyNow", () => Way(json, buy));
    }

    /// <summary>The outcomes of a check and what each would leave.</summary>
    public static void Outcomes(Utf8JsonWriter json, Terminal terminal, JobSession session, Check check)
    {
        ArgumentNullException.ThrowIfNull(session);
        json.Array("outcomes", session.Investigation.Foresee(check), outcome => Outcome(json, terminal, session, check, outcome));
    }

    public static void Outcome(Utf8JsonWriter json, Terminal terminal, JobSession session, Check check, ForeseenOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(outcome);
        json.WriteString("answer", WhyPage.Answer(terminal, session, check, outcome));
        json.Number("low", outcome.Low);
        json.Number("high", outcome.High);
        json.Odds("odds", outcome.Odds);
        json.Array("leaves", outcome.Leaves, left =>
        {
            json.WriteString("id", left.Suspect.Id);
            json.Odds("odds", left.Odds);
        });
    }

    public static void Way(Utf8JsonWriter json, PlannedStep step)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(step);
        json.WriteString("check", step.Check?.Id);
        json.Texts("repairs", step.Repairs.Select(r => r.Id));
        json.WriteBoolean("handOver", step.IsHandOver);
        json.Number("bits", step.Check is null ? null : step.Bits);
        json.Number("cures", step.Repairs.IsEmpty ? null : step.Odds);
        Value(json, step.Way);
    }

    /// <summary>What the way to the end is expected to take.</summary>
    public static void Value(Utf8JsonWriter json, PlanValue way)
    {
        ArgumentNullException.ThrowIfNull(json);
        json.Number("minutes", Math.Round(way.Minutes, 1));
        json.Number("parts", Math.Round(way.Price, 1));
        json.Number("cost", Math.Round(way.Cost, 1));
    }
}
