using System.Globalization;
using System.Text.RegularExpressions;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Bench;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Verbs;
using Halfsplit.Jobs.Sessions;
using Spectre.Console.Cli;

namespace Halfsplit.Cli;

/// <summary>The verbs, and what becomes of a wrong command line.</summary>
public static partial class HalfsplitProgram
{
    /// <summary>Runs one command line to its end. Never throws, never returns a negative code.</summary>
    public static int Run(IEnumerable<string> arguments, Terminal terminal)
    {
        ArgumentNullException.ThrowIfNull(arguments);
        ArgumentNullException.ThrowIfNull(terminal);
        var given = ArgumentGuard.Do(arguments);
        CliTexts.Language = RunLanguage.Of(given, terminal.Language);
        if (RunLanguage.Asked(given) is { } asked && Language.Find(asked) is null)
        {
            return terminal.Fail(
                ExitCode.Usage, false, new Message("cli.bad-language", asked, string.Join(", ", Language.All.Select(l => l.Code))));
        }

        var app = new CommandApp();
        app.Configure(config =>
        {
            config.SetApplicationName("halfsplit");
            config.SetApplicationVersion(JobOpening.EngineVersion);
            config.UseStrictParsing();
            config.SetApplicationCulture(CultureInfo.GetCultureInfo(CliTexts.Language.Code));
            config.ConfigureConsole(terminal.Console);
            config.SetExceptionHandler((trouble, _) => Explain(trouble, terminal));
            config.Settings.MaximumIndirectExamples = 0;
            AddVerbs(config, terminal);
        });
        var code = app.Run(given.Length == 0 ? ["--help"] : given);
        terminal.Out.Flush();
        terminal.Error.Flush();
        return code < 0 ? ExitCode.Usage : code;
    }

    private static void AddVerbs(IConfigurator config, Terminal terminal)
    {
        void Add<T>(string verb, Func<Terminal, T, int> run, params string[][] examples)
            where T : CommandSettings
        {
            var added = config.AddDelegate<T>(verb, (_, settings, _) => run(terminal, settings))
                .WithDescription(terminal.Say($"help.{verb}"));
            foreach (var example in examples)
            {
                added.WithExample([verb, .. example]);
            }
        }

        Add<ShelfSettings>("shelf", Shelf.Run, ["\"cranks but won't start\""], ["blows", "the", "15", "A", "fuse"]);
        Add<SheetSettings>("lint", Lint.Run, ["my-car.yaml"]);
        Add<AdaptSettings>(
            "adapt", Adapt.Run, ["pump-feed", "-o", "my-car.yaml"],
            ["pump-feed", "-o", "my-car.yaml", "--change", "\"place K2 = boot side\"", "--change", "\"length K2.87~C1.2a = unknown\""],
            ["pump-feed", "--against", "my-car.yaml"]);
        Add<FromTableSettings>("from-table", FromTable.Run, ["wires.csv", "-o", "my-car.yaml"], ["wires.csv", "--parts", "parts.csv", "-o", "my-car.yaml"]);
        Add<ToTableSettings>("to-table", ToTable.Run, ["pump-feed", "-o", "wires.csv", "--parts", "parts.csv"]);
        Add<CarSettings>(
            "predict", Predict.Run,
            ["pump-feed", "--condition", "priming", "--fault", "G2:resistive:2"],
            ["pump-feed", "-c", "priming", "-f", "F19:open", "--read", "C3.4,BODY", "--meter", "volts"]);
        Add<DrawSettings>(
            "draw", Draw.Run,
            ["pump-feed", "--condition", "priming", "-o", "pump.svg"],
            ["--job", "car.job.jsonl", "--theme", "print", "-o", "car.pdf"]);
        Add<PlanSettings>(
            "plan", PlanVerb.Run, ["pump-feed", "--complaint", "\"pump does not run\"", "--depth", "4"], ["headlamps", "--dot"]);
        Add<OpenSettings>("open", Open.Run, ["pump-feed", "--job", "car.job.jsonl", "--complaint", "\"pump does not run\"", "--helper"]);
        Add<NextSettings>("next", Next.Run, ["car.job.jsonl"], ["car.job.jsonl", "--why"]);
        Add<NoticeSettings>("notice", Notice.Run, ["pump-feed"], ["car.job.jsonl", "no-sound"], ["car.job.jsonl", "new-relay-did-not-help:K2"]);
        Add<RecordSettings>("record", Record.Run, ["car.job.jsonl", "12.4 V"], ["car.job.jsonl", "no beep"]);
        Add<WithdrawSettings>("withdraw", Changes.Withdraw, ["car.job.jsonl"]);
        Add<SkipSettings>("skip", Changes.Skip, ["car.job.jsonl", "--place"]);
        Add<StatusSettings>("status", Status.Run, ["car.job.jsonl"]);
        Add<NoteSettings>("note", Changes.Note, ["car.job.jsonl", "\"green dust in the plug\""]);
        Add<HandOverSettings>("hand-over", Changes.HandOver, ["car.job.jsonl", "--to", "\"a workshop\""]);
        Add<DescribeSettings>("describe", Changes.Describe, ["car.job.jsonl", "--vehicle", "\"red hatchback, 180 000 km\"", "--worker", "\"A. Smith\""]);
        Add<ReportSettings>(
            "report", ReportVerb.Run, ["car.job.jsonl", "-o", "car.html"], ["car.job.jsonl", "-o", "car.pdf", "--for", "colleague"],
            ["car.job.jsonl", "--format", "csv"]);
        Add<DiagnoseSettings>(
            "diagnose", Diagnose.Run, ["pump-feed"], ["headlamps", "--job", "car.job.jsonl", "--complaint", "\"both headlamps dim\""]);
        Add<PracticeSettings>("practice", Practice.Run, ["cooling-fan", "--seed", "7"]);
        Add<HistorySettings>("history", History.Run, ["finished-jobs"]);
        Add<CoverageSettings>("coverage", Coverage.Run, ["pump-feed", "--complaint", "\"pump does not run\"", "--scan-tool"]);
        Add<CarSettings>("spice", Spice.Run, ["pump-feed", "-c", "priming", "--read", "C3.4,BODY"]);
        Add<PinsSettings>(
            "pins", Pins.Run, ["pump-feed", "--part", "K2"],
            ["pump-feed", "--part", "C3", "--reading", "\"volts A body in key on = 0.02\""], ["headlamps", "--part", "C10", "--talk"]);
        BenchVerbs.Add(config, terminal);
    }

    /// <summary>What the parser says of a number it can't read; it names a type of the program, which helps nobody.</summary>
    [GeneratedRegex("^Failed to convert '(.*)' to ")]
    private static partial Regex NotConverted();

    private static int Explain(Exception trouble, Terminal terminal)
    {
        if (trouble is CommandAppException wrong)
        {
            return terminal.Fail(
                ExitCode.Usage, false,
                NotConverted().Match(wrong.Message) is { Success: true } number
                    ? new Message("cli.unreadable-number", ArgumentGuard.Undo(number.Groups[1].Value))
                    : new Message("cli.wrong-usage", wrong.Message));
        }

        return terminal.Fail(ExitCode.Internal, false, new Message("cli.internal", trouble.GetType().Name, trouble.Message));
    }
}
