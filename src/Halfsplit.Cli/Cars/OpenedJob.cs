using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Cli.Settings;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Cars;

/// <summary>A sheet and what is at hand, turned into the event that opens a job.</summary>
/// <param name="Noticed">What was noticed before, as events behind the first.</param>
/// <param name="Learned">Where the history comes from.</param>
public sealed record OpenedJob(
    Circuit Circuit, Complaint Complaint, JobOpened Event, ImmutableArray<ThingNoticed> Noticed, LearnedFrom Learned)
{
    /// <summary>All of it, as a job in memory.</summary>
    public JobDocument Document => JobDocument.Of([StoredEvent.Of(Event), .. Noticed.Select(StoredEvent.Of)]);

    /// <summary>Understands the options; on failure the problems and the exit code.</summary>
    public static OpenedJob? Of(
        AtHandSettings settings, EventStamps stamps, out ImmutableArray<Message> problems, out int code)
    {
        ArgumentNullException.ThrowIfNull(settings);
        code = ExitCode.Usage;
        if (settings.SheetName is not { } sheet)
        {
            problems = [new Message("cli.say-sheet")];
            return null;
        }

        var source = SheetSource.Find(sheet);
        code = ExitCode.Broken;
        if (source.Text is null)
        {
            problems = [source.Problem!];
            return null;
        }

        if (source.Read().Circuit is not { } circuit)
        {
            problems = [new Message("cli.sheet-has-errors", sheet)];
            return null;
        }

        var names = new Names(new CircuitSimulator(NetworkCompiler.Compile(circuit)));
        var complaint = Complaints.Of(circuit, settings, names);
        var unreachable = settings.Unreachable.Select(names.PlaceOrPart).OfType<string>().ToList();
        var options = AtHand(settings, circuit, names);
        var noticed = complaint is null ? [] : Noticings.Of(circuit, complaint, settings.Noticed, names);
        problems = [.. names.Problems];
        if (problems.Length > 0)
        {
            code = ExitCode.Usage;
            return null;
        }

        code = ExitCode.Broken;
        var (learned, unread) = LearnedFrom.Of(settings, circuit);
        if (learned is null)
        {
            problems = [unread!];
            return null;
        }

        code = ExitCode.Good;
        var opened = JobOpening.Create(
            stamps, sheet, source.Text, complaint!, options, unreachable, settings.Vehicle ?? "", learned.History);
        return new OpenedJob(circuit, complaint!, opened, JobOpening.Noticed(stamps, opened, noticed), learned);
    }

    private static DiagnosisOptions AtHand(AtHandSettings settings, Circuit circuit, Names names)
    {
        var known = circuit.Places.SelectMany(p => p.Tools).Distinct(StringComparer.Ordinal).ToList();
        var tools = ImmutableArray.CreateBuilder<string>();
        foreach (var tool in settings.Tools.SelectMany(t => t.Split(',', StringSplitOptions.TrimEntries)))
        {
            if (known.Find(k => string.Equals(k, tool, StringComparison.OrdinalIgnoreCase)) is { } found)
            {
                tools.Add(found);
            }
            else
            {
                names.Add(new Message("cli.no-tool", tool, Spelling.Hint(tool, known), string.Join(", ", known)));
            }
        }

        var usual = Meter.Default;
        var meter = usual with
        {
            InputOhms = Within(settings.MeterInput, "--meter-input", 1e3, 1e12) ?? usual.InputOhms,
            Counts = Within(settings.MeterCounts, "--meter-counts", 200, 1e6) ?? usual.Counts,
            GainAccuracy = Within(settings.MeterAccuracy, "--meter-accuracy", 0.001, 20) / 100 ?? usual.GainAccuracy,
            JackAmps = Within(settings.JackAmps, "--jack", 0, 100) ?? usual.JackAmps,
            LampWatts = Within(settings.LampWatts, "--lamp", 0.1, 100) ?? usual.LampWatts,
        };
        return new DiagnosisOptions(
            settings.Helper,
            Within(settings.LeadMetres, "--lead", 0, 100) ?? DiagnosisOptions.Default.LeadMetres,
            tools.Count == 0 ? default : tools.ToImmutable(),
            !settings.NoClamp, !settings.NoTestLamp, settings.ScanTool, settings.SpareRelay, settings.SmellOfFuel,
            meter == usual ? null : meter,
            Within(settings.HourValue, "--hour-value", 0, 10_000) is { } hour ? Economy.Default with { HourValue = hour } : null,
            RemoteStarter: settings.RemoteStarter);

        double? Within(double? value, string option, double low, double high)
        {
            if (value is { } given && !(given >= low && given <= high))
            {
                names.Add(new Message("cli.out-of-range", option, given, low, high));
                return null;
            }

            return value;
        }
    }
}
