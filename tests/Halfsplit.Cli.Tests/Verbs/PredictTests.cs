using System.Text.Json;
using Halfsplit.Cli.Tests.Running;
using Xunit;

namespace Halfsplit.Cli.Tests.Verbs;

public sealed class PredictTests : IDisposable
{
    private readonly Shell _shell = new();

    [Fact]
    public void A_healthy_car_is_shown_part_by_part() =>
        ApprovedText.Matches("predict-healthy", Good("pump-feed", "-c", "priming"));

    [Fact]
    public void A_short_blows_its_fuse() => ApprovedText.Matches(
        "predict-short", Good("headlamps", "-c", "dipped beam", "-f", "F21.2~C10.1a:short-to-ground"));

    [Fact]
    public void One_reading_is_shown_with_its_leads() => ApprovedText.Matches(
        "predict-reading",
        Good("pump-feed", "-c", "priming", "-f", "G2:resistive:2", "--read", "C3.3,BAT.neg", "--meter", "volts"));

    [Fact]
    public void Json_tells_volts_amps_relays_fuses_and_loads()
    {
        var car = Json("pump-feed", "-c", "priming");

        Assert.InRange(car.GetProperty("volts").GetProperty("M1.pos").GetDouble(), 11, 13);
        Assert.InRange(car.GetProperty("amps").GetProperty("M1").GetDouble(), 4, 7);
        Assert.InRange(car.GetProperty("amps").GetProperty("F19").GetDouble(), 4, 7);
        Assert.InRange(car.GetProperty("wireAmps").GetProperty("C3.3a~G2").GetDouble(), 4, 7);
        Assert.Equal("pulled-in", car.GetProperty("relays").GetProperty("K2").GetProperty("state").GetString());
        Assert.Equal("whole", car.GetProperty("fuses").GetProperty("F19").GetProperty("state").GetString());
        Assert.Equal("works", car.GetProperty("loads").GetProperty("M1").GetProperty("state").GetString());
        Assert.Equal("on", car.GetProperty("modules").GetProperty("ECU").GetProperty("outputs").GetProperty("pump-drive").GetString());
        Assert.Empty(car.GetProperty("chatter").EnumerateArray());
        Assert.Equal(JsonValueKind.Null, car.GetProperty("reading").ValueKind);
    }

    [Fact]
    public void What_is_unplugged_removed_and_bridged_counts()
    {
        var car = Json("pump-feed", "-c", "key on", "--unplug", "C3", "--remove", "K2", "--jumper", "K2.30,K2.87");
        var volts = car.GetProperty("volts");

        Assert.True(volts.GetProperty("C3.4a").GetDouble() > 12);
        Assert.True(Math.Abs(volts.GetProperty("C3.4b").GetDouble()) < 1);
        Assert.Equal("dead", car.GetProperty("loads").GetProperty("M1").GetProperty("state").GetString());
    }

    [Fact]
    public void A_bare_cavity_is_its_half_a() => Assert.Equal(
        Shown("pump-feed", "-c", "priming", "-r", "C3.4a,BODY"), Shown("pump-feed", "-c", "priming", "-r", "C3.4,BODY"));

    [Theory]
    [InlineData("ohms", "C3.4b,C3.3b", "key off", "1.0")]
    [InlineData("continuity", "C3.4b,C3.3b", "key off", "beeps")]
    [InlineData("ohms", "C3.4a,C3.4b", "key off", "OL")]
    public void Instruments_show_what_a_display_shows(string meter, string leads, string condition, string shown)
    {
        var reading = Shown("pump-feed", "-c", condition, "--unplug", "C3", "-r", leads, "-m", meter);

        Assert.StartsWith(shown, reading, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lamp_loads_what_a_meter_does_not()
    {
        string[] open = ["pump-feed", "-c", "priming", "-f", "C1.2:resistive:100k", "--unplug", "C3", "-r", "C3.4a,BODY"];

        var meter = Json([.. open, "-m", "volts"]).GetProperty("reading");
        var lamp = Json([.. open, "-m", "test-lamp"]).GetProperty("reading");

        Assert.True(meter.GetProperty("value").GetDouble() > 11);
        Assert.Equal("dark", lamp.GetProperty("word").GetString());
    }

    [Fact]
    public void Ohms_on_a_live_circuit_are_refused_with_the_reason()
    {
        var reading = Json("pump-feed", "-c", "priming", "-r", "M1.pos,M1.neg", "-m", "ohms").GetProperty("reading");

        Assert.Equal(JsonValueKind.Null, reading.GetProperty("value").ValueKind);
        Assert.Contains("live circuit", reading.GetProperty("abstains").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_clamp_reads_the_wire_it_is_about()
    {
        var reading = Json("pump-feed", "-c", "priming", "-m", "amps-clamp", "--about", "C3.3a~G2").GetProperty("reading");

        Assert.InRange(reading.GetProperty("value").GetDouble(), 4, 7);
        Assert.Equal("A", reading.GetProperty("unit").GetString());
    }

    [Theory]
    [InlineData("Did you mean \"priming\"?", "-c", "primming")]
    [InlineData("Did you mean \"C3\"?", "-c", "priming", "--unplug", "C33")]
    [InlineData("no relay or fuse that can be pulled", "-c", "priming", "--remove", "M1")]
    [InlineData("Did you mean \"resistive\"?", "-c", "priming", "-f", "G2:resistiv")]
    [InlineData("It can by: open, seized, brushes-worn, shorted, tight", "-c", "priming", "-f", "M1:melted")]
    [InlineData("nothing that can fail", "-c", "priming", "-f", "Q7:open")]
    [InlineData("no fault. Write PART:MODE", "-c", "priming", "-f", "G2")]
    [InlineData("has no degrees", "-c", "priming", "-f", "F19:open:3")]
    [InlineData("It has: M1.pos, M1.neg", "-c", "priming", "-r", "M1.plus,BODY")]
    [InlineData("is not two terminals", "-c", "priming", "-r", "M1.pos")]
    [InlineData("the same point", "-c", "priming", "-r", "M1.pos,C3.4b")]
    [InlineData("no setting of a meter", "-c", "priming", "-r", "M1.pos,BODY", "-m", "volt")]
    [InlineData("which wire the clamp goes round", "-c", "priming", "-m", "amps-clamp")]
    [InlineData("Say where the leads go", "-c", "priming", "-m", "ohms")]
    [InlineData("Say the condition", "-f", "G2:open")]
    [InlineData("is not possible here", "-c", "priming", "-r", "M1.pos,BODY", "-m", "test-lamp", "--lamp", "0")]
    public void What_is_not_there_is_named_with_what_there_is(string told, params string[] options)
    {
        var ran = Shell.Expect(2, _shell.Run(["predict", "pump-feed", .. options]));

        Assert.Contains(told, ran.Error.Replace("\n", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Empty(ran.Output);
    }

    public void Dispose() => _shell.Dispose();

    private string Good(params string[] arguments) => Shell.Expect(0, _shell.Run(["predict", .. arguments])).Output;

    private JsonElement Json(params string[] arguments) =>
        Shell.Expect(0, _shell.Run(["predict", .. arguments, "--json"])).Json;

    private string Shown(params string[] arguments) => Json(arguments).GetProperty("reading").GetProperty("shown").GetString()!;
}
