using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Conversation;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Settings;
using Halfsplit.Cli.Terminals;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Practice;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Verbs;

/// <summary>A simulated car with a hidden fault; the person's minutes and money beside the engine's on the same car.</summary>
public static class Practice
{
    public static int Run(Terminal terminal, PracticeSettings settings)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(settings);
        if (OpenedJob.Of(settings, terminal.Stamps, out var problems, out var code) is not { } job)
        {
            return terminal.Fail(code, settings.Json, problems);
        }

        var document = job.Document;
        job.Learned.Tell(terminal);
        var meter = OptionsOfJob.ToUse(job.Event.Options).MeterInUse;
        var seed = settings.Seed ?? Random.Shared.Next(1, 100_000);
        var cars = terminal.While(() => (
            Player: PracticeCar.Draw(job.Circuit, job.Complaint, meter, seed),
            Engine: PracticeCar.Draw(job.Circuit, job.Complaint, meter, seed)));
        if (cars.Player is not { } car || cars.Engine is not { } same)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, new Message("practice.no-fault", job.Complaint.Name));
        }

        var opened = terminal.While(() => JobSession.Open(document, NothingKept.Instance, terminal.Stamps));
        if (!opened.IsOpen)
        {
            return terminal.Fail(ExitCode.Broken, settings.Json, opened.Problem);
        }

        if (!settings.Json)
        {
            terminal.Line(job.Circuit.Title, Page.Heading);
            terminal.Row(terminal.Say("open.complaint"), Open.Words(terminal, job));
            NoticedPage.Draw(terminal, job);
            terminal.Row(terminal.Say("practice.seed"), terminal.Say("practice.seed-is", seed));
            terminal.Line(terminal.Say("practice.help"));
        }

        var player = new Practising(terminal, opened.Session, car, settings.Json).Run();
        var engine = terminal.While(() => EnginePlay.Run(document, same));
        Score(terminal, settings.Json, seed, job.Circuit, car, player, engine);
        return ExitCode.Good;
    }

    private static void Score(
        Terminal terminal, bool asJson, int seed, Circuit circuit, PracticeCar car, PlayScore player, PlayScore engine)
    {
        if (asJson)
        {
            JsonOutput.WriteLine(terminal, json =>
            {
                json.WriteNumber("seed", seed);
                json.WriteString("fault", car.Hidden.ToString());
                json.Object("player", () => Write(json, player));
                json.Object("engine", () => Write(json, engine));
            });
            return;
        }

        terminal.Blank();
        terminal.Line(
            terminal.Say(player.IsProven ? "practice.solved" : "practice.unsolved", Named(circuit, car)), player.IsProven ? Page.Good : Page.Caution);
        terminal.Line(Row(
            "", terminal.Say("practice.checks"), terminal.Say("practice.repairs"), terminal.Say("practice.minutes"), terminal.Say("practice.money")),
            Page.Heading);
        terminal.Line(Row(terminal.Say(player.IsProven ? "practice.you" : "practice.you-unsolved"), player));
        terminal.Line(Row(terminal.Say("practice.engine"), engine));
    }

    /// <summary>All that was wrong, in the words of the list of suspects.</summary>
    private static Message Named(Circuit circuit, PracticeCar car) => car.AllHidden.Select(f => SuspectName.Of(circuit, car.ModeOf(f), f.Severity))
        .Aggregate((left, right) => new Message("suspect.pair", left, right));

    private static string Row(string who, PlayScore score) => Row(
        who, Text(score.Checks), Text(score.Repairs.Count), CheckPage.Minutes(score.Minutes), Text(score.Money));

    private static string Row(string who, string checks, string repairs, string minutes, string money) =>
        $"  {who,-20}{checks,10}{repairs,12}{minutes,10}{money,10}";

    private static string Text(double value) => value.ToString("0", System.Globalization.CultureInfo.InvariantCulture);

    private static void Write(System.Text.Json.Utf8JsonWriter json, PlayScore score)
    {
        json.WriteNumber("checks", score.Checks);
        json.Texts("repairs", score.Repairs);
        json.WriteNumber("minutes", score.Minutes);
        json.WriteNumber("money", score.Money);
        json.WriteBoolean("cured", score.IsProven);
    }
}
