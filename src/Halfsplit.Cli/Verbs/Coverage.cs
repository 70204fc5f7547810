using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Coverage;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>Says which suspects of a complaint can be told apart with what is at hand.</summary>
public static class Coverage
{
    public static int Run(Terminal terminal, CoverageSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (OpenedJob.Of(settings, terminal.Stamps, out var problems, out var code) is not { } job)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        var opened = JobSession.Open(JobDocument.Empty.With(job.Event), NothingKept.Instance, terminal.Stamps);
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        var report = terminal.While(() => opened.Session.Investigation.Coverage());
        if (settings.Json)
        {
            JsonOutput.Write(terminal, json => CoverageJson.Write(json, opened.Session, report));
        }
        else
        {
            CoveragePage.Draw(terminal, opened.Session, report);
        }

        return ExitCode.Good;
    }
}
