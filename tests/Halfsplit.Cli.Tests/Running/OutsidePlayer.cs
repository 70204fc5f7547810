using System.Text.Json;

namespace Halfsplit.Cli.Tests.Running;

/// <summary>
/// Somebody who knows what is wrong with a car and answers by nothing but what <c>next --json</c> asks and
/// <c>predict --json</c> says.
/// </summary>
internal sealed class OutsidePlayer(Shell shell, string sheet, string fault)
{
    private static readonly string[] Joints = ["open", "resistive", "loose"];

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

        if (Text(check, "kind") == "put-back")
        {
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
            var words = check.GetProperty("expected").EnumerateArray()
                .Select(e => e.GetProperty("words")).Where(w => w.ValueKind == JsonValueKind.Array)
                .Select(w => w[0].GetString()).ToHashSet();
            string[] own = words.Overlaps(["bright", "dim", "dark"]) ? ["bright", "dim", "dark"]
                : words.Overlaps(["runs", "runs slowly", "silent"]) ? ["runs", "runs slowly", "silent"]
                : ["works", "weak", "dead"];
            return car.GetProperty("loads").GetProperty(about).GetProperty("state").GetString() switch
            {
                "works" => own[0],
                "weak" => own[1],
                _ => own[2],
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
