using System.Globalization;
using System.Text;
using System.Text.Json;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Plans;

/// <summary>The whole plan as a tree: on paper, as JSON, or as a graph in Graphviz' DOT language.</summary>
public sealed class PlanTree(Terminal terminal, JobSession session)
{
    private const int Indent = 4;

    /// <summary>Lines, each branch under its outcome.</summary>
    public void Draw(PlanBranch branch) => Draw(branch, 0);

    public void Write(Utf8JsonWriter json, PlanBranch branch)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(branch);
        json.WriteString("check", branch.Step.Check?.Id);
        json.WriteString("title", Title(branch.Step));
        json.Number("minutes", branch.Step.Effort?.Minutes);
        json.Number("minutesSoFar", Math.Round(branch.MinutesSoFar, 1));
        if (branch.Ahead is { } ahead)
        {
            json.Object("ahead", () => WhyJson.Value(json, ahead));
        }
        else
        {
            json.WriteNull("ahead");
        }

        WhyJson.Plan(json, branch.Step.Plan, 1);
        WhyJson.Compared(json, branch.Compared);
        json.Array("outcomes", branch.Outcomes, o =>
        {
            WhyJson.Outcome(json, terminal, session, branch.Step.Check!, o.Outcome);
            if (o.Next is { } next)
            {
                json.Object("next", () => Write(json, next));
            }
            else
            {
                json.WriteNull("next");
            }
        });
    }

    /// <summary>A directed graph in the DOT language.</summary>
    public string Dot(PlanBranch branch)
    {
        var text = new StringBuilder("digraph plan {\n  rankdir=LR;\n  node [shape=box];\n");
        var number = 0;
        Node(branch);
        return text.Append("}\n").ToString();

        int Node(PlanBranch at)
        {
            var own = number++;
            var shape = at.Step.Check?.Kind == CheckKind.Repair ? ", style=bold" : "";
            text.Append(CultureInfo.InvariantCulture, $"  n{own} [label={Quoted($"{Title(at.Step)}\n{Cost(at)}")}{shape}];\n");
            foreach (var (outcome, next) in at.Outcomes)
            {
                if (next is not null)
                {
                    var child = Node(next);
                    text.Append(
                        CultureInfo.InvariantCulture,
                        $"  n{own} -> n{child} [label={Quoted($"{Answer(at, outcome)}\n{OddsText.Of(outcome.Odds)}")}];\n");
                }
            }

            return own;
        }
    }

    private static string Quoted(string text) => $"\"{text.Replace("\\", @"\\", StringComparison.Ordinal)
        .Replace("\"", "\\\"", StringComparison.Ordinal).Replace("\n", "\\n", StringComparison.Ordinal)}\"";

    private void Draw(PlanBranch branch, int indent)
    {
        terminal.Line($"{Title(branch.Step)} - {Cost(branch)}", branch.Step.Check?.Kind == CheckKind.Repair ? Page.Good : Page.Heading, indent, 2);
        foreach (var (outcome, next) in branch.Outcomes)
        {
            var leaves = string.Join(", ", outcome.Leaves.Where(l => l.Odds >= 0.01).Select(l => $"{l.Suspect.Id} {OddsText.Of(l.Odds)}"));
            terminal.Line(terminal.Say("plan.outcome", Answer(branch, outcome), OddsText.Of(outcome.Odds), leaves), null, indent + 2, 4);
            if (next is not null)
            {
                Draw(next, indent + Indent);
            }
        }
    }

    private string Answer(PlanBranch branch, ForeseenOutcome outcome) => WhyPage.Answer(terminal, session, branch.Step.Check!, outcome);

    private string Title(NextStep step) => step.Check is null
        ? terminal.Say(step.Reason)
        : CheckPage.Sentence(terminal.Say(CheckTitle.Of(session.Circuit, step.Check)));

    private string Cost(PlanBranch branch) => branch.Ahead is { } ahead
        ? terminal.Say(
            "plan.cost", CheckPage.Minutes(branch.MinutesSoFar), CheckPage.Minutes(ahead.Minutes), WhyPage.Money(ahead.Price), WhyPage.Money(ahead.Cost))
        : terminal.Say("plan.so-far", CheckPage.Minutes(branch.MinutesSoFar));
}
