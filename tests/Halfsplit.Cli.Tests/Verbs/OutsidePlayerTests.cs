using System.Text.Json;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>
/// A whole job through the command line by a player who knows only the hidden fault and what <c>next --json</c> and
/// <c>predict --json</c> say.
/// </summary>
[Trait("Pace", "slow")]
public abstract class OutsidePlayer
{
    private const int MostSteps = 40;

    private static readonly string[] Joints = ["open", "resistive", "loose"];

    protected static void FindsAndProves(string sheet, string complaint, string fault)
    {
        using var shell = new Shell();
        Shell.Expect(0, shell.Run("open", sheet, "--job", shell.Job, "--complaint", complaint, "--scan-tool"));
        var player = new Player(shell, sheet, fault);
        for (var step = 0; step < MostSteps; step++)
        {
            var next = Shell.Expect(0, shell.Run("next", shell.Job, "--json")).Json;
            if (next.GetProperty("done").GetBoolean())
            {
                Assert.True(player.IsMended, "done although the fault is still there");
                var finding = next.GetProperty("finding");
                var (part, mode) = (fault.Split(':')[0], fault.Split(':')[1]);
                var blamed = finding.GetProperty("blamed").EnumerateArray()
                    .Any(b => b.GetProperty("faults").EnumerateArray().Any(f => f.GetString()!.StartsWith($"{part}:{mode}", StringComparison.Ordinal)));
                Assert.True(blamed || player.LastRepairCures, $"the finding names neither {fault} nor its repair:\n{finding}");
                return;
            }

            var check = next.GetProperty("check");
            Assert.True(check.ValueKind == JsonValueKind.Object, $"nothing is asked: {next.GetProperty("reason")}");
            // Naming the check or not is the same: a replay asks the same again.
            string[] named = step % 3 == 0 ? [] : ["--check", check.GetProperty("id").GetString()!];
            Shell.Expect(0, shell.Run(["record", shell.Job, player.Answer(check), "--confirm", "--json", .. named]));
        }

        Assert.Fail($"{fault} is not found in {MostSteps} steps");
    }

    private sealed class Player(Shell shell, string sheet, string fault)
    {
        private readonly string _part = fault.Split(':')[0], _mode = fault.Split(':')[1];

        public bool IsMended { get; private set; }

        /// <summary>The last repair works on the part that is at fault.</summary>
        public bool LastRepairCures { get; private set; }

        public string Answer(JsonElement check)
        {
            if (Text(check, "kind") == "repair")
            {
                // A repair's text names what it works on; the one that names the fault's part, or the part it is in, mends it.
                var target = Text(check, "about")!;
                LastRepairCures = target == _part || target == _part.Split('.')[0] || target == _part.Split('.')[0] + " socket";
                IsMended |= LastRepairCures;
                return "done";
            }

            return Text(check, "instrument") is "eye" or "ear" || Text(check, "red") is null && Text(check, "instrument") != "amps-clamp"
                ? Seen(check)
                : Read(check);
        }

        private string Read(JsonElement check)
        {
            List<string> options = ["--meter", Text(check, "instrument")!];
            if (Text(check, "red") is { } red)
            {
                options.AddRange(["--read", $"{red},{Text(check, "black")}"]);
            }
            else
            {
                options.AddRange(["--about", Text(check, "about")!]);
            }

            if (check.GetProperty("meter").TryGetProperty("lampWatts", out var watts))
            {
                options.AddRange(["--lamp", watts.ToString()]);
            }

            var reading = Predict(check, [.. options]).GetProperty("reading");
            return Text(reading, "shown")?.TrimStart(Text(check, "instrument")!.StartsWith("amps", StringComparison.Ordinal) ? '-' : ' ') ?? "not sure";
        }

        private string Seen(JsonElement check)
        {
            var answers = check.GetProperty("answers").EnumerateArray().Select(a => a.GetString()!).ToHashSet();
            var about = Text(check, "about")!;
            var car = Predict(check, []);
            if (answers.Contains("runs"))
            {
                return car.GetProperty("loads").GetProperty(about).GetProperty("state").GetString() switch
                {
                    "works" => "works",
                    "weak" => "weak",
                    _ => "dead",
                };
            }

            if (answers.Contains("clicks"))
            {
                return Text(car.GetProperty("relays").GetProperty(about), "state") == "pulled-in" && !IsAt(about, "welded", "stuck") ? "clicks" : "silent";
            }

            if (answers.Contains("blown"))
            {
                return Text(car.GetProperty("fuses").GetProperty(about), "state") == "blown" || IsAt(about, "open") ? "blown" : "whole";
            }

            if (answers.Contains("commanded"))
            {
                var name = about.Split('.');
                var module = car.GetProperty("modules").GetProperty(name[0]);
                return module.GetProperty("awake").GetBoolean() && !IsAt(about, "not-commanded")
                    && (Text(module.GetProperty("outputs"), name[1]) == "on" || IsAt(about, "output-off"))
                    ? "commanded"
                    : "not commanded";
            }

            return answers switch
            {
                _ when answers.Contains("passes") => !IsMended && _part == about ? "fails" : "passes",
                _ when answers.Contains("tight") => IsAt(about, Joints) ? "corroded" : "tight",
                _ when answers.Contains("steady") => IsAt(about, Joints) ? "jumps" : "steady",
                _ => "not sure",
            };
        }

        private bool IsAt(string about, params string[] modes) =>
            !IsMended && (_part == about || _part.StartsWith(about + ".", StringComparison.Ordinal)) && modes.Contains(_mode);

        private JsonElement Predict(JsonElement check, string[] reading)
        {
            var arrangement = check.GetProperty("arrangement");
            List<string> options = ["predict", sheet, "--json", "--condition", Text(arrangement, "condition")!];
            foreach (var (name, option) in (ReadOnlySpan<(string, string)>)[("unplugged", "--unplug"), ("removed", "--remove")])
            {
                foreach (var part in arrangement.GetProperty(name).EnumerateArray())
                {
                    options.AddRange([option, part.GetString()!]);
                }
            }

            foreach (var jumper in arrangement.GetProperty("jumpers").EnumerateArray())
            {
                options.AddRange(["--jumper", $"{jumper[0]},{jumper[1]}"]);
            }

            if (!IsMended)
            {
                options.AddRange(["--fault", fault]);
            }

            return Shell.Expect(0, shell.Run([.. options, .. reading])).Json;
        }

        private static string? Text(JsonElement element, string name) => element.GetProperty(name).GetString();
    }
}

public sealed class PumpPlayerTests : OutsidePlayer
{
    [Theory]
    [InlineData("K2:contact-open")]
    public void The_pump_sheet_is_played_to_a_proof(string fault) => FindsAndProves("pump-feed", "pump does not run", fault);
}

public sealed class FanPlayerTests : OutsidePlayer
{
    [Theory]
    [InlineData("fan never runs", "K6:coil-open")]
    public void The_fan_sheet_is_played_to_a_proof(string complaint, string fault) => FindsAndProves("cooling-fan", complaint, fault);
}

public sealed class HeadlampPlayerTests : OutsidePlayer
{
    [Theory]
    [InlineData("both headlamps dim", "G5:resistive:0.5")]
    [InlineData("left headlamp dark", "F21:open")]
    [InlineData("right headlamp dark", "RH.56b:open")]
    public void The_headlamp_sheet_is_played_to_a_proof(string complaint, string fault) => FindsAndProves("headlamps", complaint, fault);
}
