using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Plans;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Prints the tree of checks for the likeliest outcomes, before anything is measured.</summary>
public static class PlanVerb
{
    private const int DeepestPlan = 12;

    public static int Run(Terminal terminal, PlanSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.Depth is < 1 or > DeepestPlan)
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("cli.out-of-range", "--depth", settings.Depth, 1, DeepestPlan));
        }

        if (!(settings.LeastOdds is >= 0.1 and <= 100))
        {
            return terminal.Fail(ExitCode.Usage, settings.Json, new Message("cli.out-of-range", "--least-odds", settings.LeastOdds, 0.1, 100));
        }

        if (OpenedJob.Of(settings, terminal.Stamps, out var problems, out var code) is not { } job)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        var opened = terminal.While(() => JobSession.Open(JobDocument.Empty.With(job.Event), NothingKept.Instance, terminal.Stamps));
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        var session = opened.Session;
        var tree = new PlanTree(terminal, session);
        var plan = terminal.While(() => session.Investigation.Foretell(settings.Depth, settings.LeastOdds / 100));
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => tree.Write(json, plan));
        }
        else if (settings.Dot)
        {
            terminal.Out.Write(tree.Dot(plan));
        }
        else
        {
            terminal.Line(job.Circuit.Title, Page.Heading);
            terminal.Row(terminal.Say("open.complaint"), Open.Words(terminal, job));
            WhyPage.Money(terminal, session, plan.Compared);
            terminal.Line(terminal.Say("plan.in-all"));
            terminal.Blank();
            tree.Draw(plan);
        }

        return ExitCode.Good;
    }
}
