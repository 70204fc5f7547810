using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Planning;

public sealed class EffortTests
{
    private static readonly Halfsplit.Circuits.Model.Circuit Circuit = ShippedSheets.Load("pump-feed");
    private static readonly Investigation Investigation = Investigation.Open(Circuit, Circuit.Complaints[0]);

    private static Check Check(string id) => Investigation.FindCheck(id) ?? throw new InvalidOperationException(id);

    [Fact]
    public void A_place_is_opened_once_and_then_stays_open()
    {
        var start = Position.Start(Circuit);
        var first = Check("volts C3.4b BODY | key on");
        var second = Check("volts C3.3b BODY | key on");
        var cold = Effort.Of(Circuit, DiagnosisOptions.Default, start, second).Minutes;
        var after = Effort.Of(Circuit, DiagnosisOptions.Default, start.After(Circuit, first), second).Minutes;

        Assert.True(cold - after >= Circuit.FindPlace("boot floor")!.OpenMinutes, $"{cold} then {after}");
    }

    [Fact]
    public void A_condition_that_ends_by_itself_costs_a_helper_or_more_minutes_each_time()
    {
        var start = Position.Start(Circuit);
        var primed = Check("volts F19.2p BODY | priming");
        var alone = Effort.Of(Circuit, DiagnosisOptions.Default, start, primed).Minutes;
        var helped = Effort.Of(Circuit, new DiagnosisOptions(Helper: true), start, primed).Minutes;
        var held = Effort.Of(Circuit, DiagnosisOptions.Default, start, Check("volts F19.2p BODY | key on")).Minutes;
        var again = Effort.Of(Circuit, DiagnosisOptions.Default, start.After(Circuit, primed), Check("volts F19.1p BODY | priming")).Minutes;

        Assert.True(held < helped && helped < alone, $"{held} {helped} {alone}");
        Assert.True(again > 1.5, $"the second reading needs the key again: {again}");
    }

    [Fact]
    public void What_has_to_get_hot_is_waited_for_once()
    {
        var circuit = ShippedSheets.Load("fan-one-relay");
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var wait = circuit.FindCondition("running hot")!.TakesMinutes;
        Assert.True(wait > 0);
        var hot = investigation.FindCheck("work of FAN | running hot")!;
        var off = investigation.FindCheck("volts BAT.pos BAT.neg | key off")!;
        var stopped = investigation.FindCheck("work of FAN | stopped hot")!;
        var start = Position.Start(circuit);
        double Minutes(Position from, Check check) => Effort.MinutesOf(circuit, DiagnosisOptions.Default, from, check);

        var cold = Effort.Of(circuit, DiagnosisOptions.Default, start, hot);
        Assert.Contains(cold.Steps, s => s.Code == "step.wait-for");
        Assert.Equal(cold.Minutes, Minutes(start.After(circuit, hot).After(circuit, off), hot) + wait, 2);
        Assert.True(Minutes(start, stopped) > wait, "to be stopped hot it has to get hot first");
        Assert.True(Minutes(start.After(circuit, hot), stopped) < wait);
        Assert.True(Minutes(start, off) < wait);
    }

    [Fact]
    public void What_is_slow_on_the_way_is_waited_for_in_the_order_of_the_way_and_with_its_cautions()
    {
        var yaml = ShippedSheets.Text("fan-one-relay")!.Replace("running cold:    { after: cranking,", "running cold:    { after: cranking, takes: 2 min,", StringComparison.Ordinal);
        var circuit = SheetReader.Read(yaml).Circuit!;
        var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
        var stopped = investigation.FindCheck("work of FAN | stopped hot")!;
        var start = Position.Start(circuit);

        var waits = Effort.Of(circuit, DiagnosisOptions.Default, start, stopped).Steps.Where(s => s.Code == "step.wait-for");
        Assert.Equal(["running cold", "running hot"], waits.Select(w => w.Arguments[0]));
        Assert.Contains(Cautions.For(circuit, DiagnosisOptions.Default, start, stopped), c => c.Code == "caution.engine-running");
        Assert.DoesNotContain(Cautions.For(circuit, DiagnosisOptions.Default, start.After(circuit, stopped), stopped), c => c.Code == "caution.engine-running");
    }

    [Fact]
    public void Minutes_are_the_same_with_and_without_words()
    {
        var start = Position.Start(Circuit);
        foreach (var ranked in Investigation.RankedNow())
        {
            Assert.Equal(ranked.Effort.Minutes, Effort.MinutesOf(Circuit, DiagnosisOptions.Default, start, ranked.Check));
            Assert.NotEmpty(ranked.Effort.Steps);
        }
    }

    /// <summary>Every check that is offered, from the start and from where a reading with a jumper leaves the car.</summary>
    [Theory]
    [InlineData(null)]
    [InlineData("volts C3.4b C3.3b | key on; remove K2; jumper K2.30,K2.87")]
    [InlineData("ohms C3.4b C3.3b | key off; unplug C3")]
    public void Many_checks_take_what_each_by_itself_takes(string? done)
    {
        var from = done is null ? Position.Start(Circuit) : Position.Start(Circuit).After(Circuit, Check(done));
        var checks = CheckCatalog.Generate(
            Halfsplit.Simulation.Compiled.NetworkCompiler.Compile(Circuit), Circuit.Complaints[0], DiagnosisOptions.Default, []);

        var many = new ManyMinutes(Circuit, DiagnosisOptions.Default).FewestFirst(from, checks).ToList();

        Assert.Equal(checks.Length, many.Count);
        Assert.All(many, m => Assert.Equal(Effort.WeighedMinutesOf(Circuit, DiagnosisOptions.Default, from, m.Check), m.Minutes, 1e-9));
        Assert.Equal(many.Select(m => m.Minutes).Order(), many.Select(m => m.Minutes));
    }

    [Fact]
    public void Places_given_up_and_tools_missing_take_their_checks_away()
    {
        var network = Halfsplit.Simulation.Compiled.NetworkCompiler.Compile(Circuit);
        var all = CheckCatalog.Generate(network, Circuit.Complaints[0], DiagnosisOptions.Default, []);
        var givenUp = CheckCatalog.Generate(network, Circuit.Complaints[0], DiagnosisOptions.Default, ["boot floor"]);
        var noLever = CheckCatalog.Generate(network, Circuit.Complaints[0], new DiagnosisOptions(Tools: ["screwdriver"]), []);

        Assert.Contains(all, c => c.Probe.Red?.Part == "C3");
        Assert.DoesNotContain(givenUp, c => c.Probe.Red?.Part == "C3");
        Assert.Contains(all, c => c.Arrangement.Removed.Contains("K2"));
        Assert.DoesNotContain(noLever, c => c.Arrangement.Removed.Contains("K2"));
    }

    [Fact]
    public void The_same_job_gives_the_same_plan()
    {
        var first = Game.Play("pump-feed", "pump does not run", "K2:coil-open");
        var second = Game.Play("pump-feed", "pump does not run", "K2:coil-open");

        Assert.Equal(first.Moves.Select(m => m.Check.Id), second.Moves.Select(m => m.Check.Id));
    }
}
