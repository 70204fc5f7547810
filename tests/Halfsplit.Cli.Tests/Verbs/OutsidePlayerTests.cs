using System.Text.Json;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

/// <summary>
/// A whole job through the command line by a player who knows only the hidden fault and what <c>next --json</c> and
/// <c>predict --json</c> say.
/// </summary>
[Trait("Pace", "slow")]
public abstract class PlayedJob
{
    private const int MostSteps = 40;

    protected static void FindsAndProves(string sheet, string complaint, string fault)
    {
        using var shell = new Shell();
        Shell.Expect(0, shell.Run("open", sheet, "--job", shell.Job, "--complaint", complaint, "--scan-tool"));
        var player = new OutsidePlayer(shell, sheet, fault);
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
}

public sealed class PumpPlayerTests : PlayedJob
{
    [Theory]
    [InlineData("K2:contact-open")]
    public void The_pump_sheet_is_played_to_a_proof(string fault) => FindsAndProves("pump-feed", "pump does not run", fault);
}

public sealed class FanPlayerTests : PlayedJob
{
    [Theory]
    [InlineData("fan never runs", "K6:coil-open")]
    public void The_fan_sheet_is_played_to_a_proof(string complaint, string fault) => FindsAndProves("cooling-fan", complaint, fault);
}

public sealed class HeadlampPlayerTests : PlayedJob
{
    [Theory]
    [InlineData("left headlamp dark", "F21:open")]
    [InlineData("right headlamp dark", "RH.56b:open")]
    public void The_headlamp_sheet_is_played_to_a_proof(string complaint, string fault) => FindsAndProves("headlamps", complaint, fault);
}
