using System.Text.Json;
using Xunit;

namespace Halfsplit.Cli.Tests.Circuits;

/// <summary>The JSON that scripts read from predict and spice.</summary>
public sealed class JsonTests
{
    [Fact]
    public void Predict_gives_volts_amps_states_and_loads()
    {
        using var json = Json("predict", "pump-feed", "-c", "priming", "-f", "G2:resistive:2", "--json");
        var root = json.RootElement;

        Assert.True(root.GetProperty("steady").GetBoolean());
        Assert.Equal(0, root.GetProperty("chatter").GetArrayLength());
        Assert.Equal("G2:resistive:2", root.GetProperty("faults")[0].GetString());
        Assert.Equal("weak", root.GetProperty("loads").GetProperty("M1").GetProperty("state").GetString());
        Assert.Equal("pulled-in", root.GetProperty("relays").GetProperty("K2").GetProperty("state").GetString());
        Assert.Equal("whole", root.GetProperty("fuses").GetProperty("F19").GetProperty("state").GetString());

        // Ohm's law on the fault itself: what flows to ground there, through two ohms, is the volts lost there.
        var lost = root.GetProperty("volts").GetProperty("G2").GetDouble() - root.GetProperty("volts").GetProperty("BODY").GetDouble();
        var amps = Math.Abs(root.GetProperty("amps").GetProperty("G2").GetDouble());
        Assert.InRange(lost / amps, 2, 2.01);
    }

    [Fact]
    public void A_blown_fuse_shows_as_blown_and_its_load_as_dead()
    {
        using var json = Json("predict", "pump-feed", "-c", "priming", "-f", "M1:shorted", "--json");

        Assert.Equal("blown", json.RootElement.GetProperty("fuses").GetProperty("F19").GetProperty("state").GetString());
        Assert.Equal("dead", json.RootElement.GetProperty("loads").GetProperty("M1").GetProperty("state").GetString());
    }

    [Fact]
    public void A_reading_is_what_the_volts_say_where_the_source_is_stiff()
    {
        using var json = Json("predict", "pump-feed", "-c", "priming", "--read", "C3.4,BODY", "--json");
        var reading = json.RootElement.GetProperty("reading");
        var volts = json.RootElement.GetProperty("volts");

        Assert.Equal("C3.4a", reading.GetProperty("red").GetString());
        Assert.Equal("V", reading.GetProperty("unit").GetString());
        Assert.Equal(JsonValueKind.Null, reading.GetProperty("abstains").ValueKind);
        Assert.Equal(
            volts.GetProperty("C3.4a").GetDouble() - volts.GetProperty("BODY").GetDouble(),
            reading.GetProperty("value").GetDouble(), 1e-5);
    }

    [Fact]
    public void Ohms_on_a_live_circuit_abstain()
    {
        using var json = Json("predict", "pump-feed", "-c", "priming", "--read", "C3.4,BODY", "--meter", "ohms", "--json");
        var reading = json.RootElement.GetProperty("reading");

        Assert.Equal(JsonValueKind.Null, reading.GetProperty("value").ValueKind);
        Assert.Equal(JsonValueKind.String, reading.GetProperty("abstains").ValueKind);
    }

    internal static JsonDocument Json(params string[] arguments)
    {
        var run = VerbRun.Of(arguments);
        Assert.Equal("", run.Errors);
        Assert.Equal(0, run.Code);
        return JsonDocument.Parse(run.Output);
    }
}
