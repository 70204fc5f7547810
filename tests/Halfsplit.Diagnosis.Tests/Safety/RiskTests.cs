using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Safety;

/// <summary>A lesser risk costs extra: a check is chosen later for it, and its minutes stay those of the work.</summary>
public sealed class RiskTests
{
    [Theory]
    [InlineData("fuel vapour", "", "C2")]
    [InlineData("", "fuel vapour", "C1")]
    [InlineData("", "a dog on a long chain", "C1")]
    public void Of_two_places_that_tell_about_as_much_the_one_without_a_risk_is_read(string left, string right, string read)
    {
        var job = Job(left, right);

        var planned = job.Next().Plan!.Steps.First(s => s.Check?.Probe.Red?.Part is "C1" or "C2").Check!;

        Assert.Equal(read, planned.Probe.Red!.Value.Part);
    }

    [Fact]
    public void A_risk_that_can_t_be_spared_is_in_the_price_of_the_plan_and_not_in_its_minutes()
    {
        var (calm, risky) = (Job("", ""), Job("fuel vapour", "fuel vapour"));

        Assert.Equal(calm.Next().Effort!.Minutes, risky.Next().Effort!.Minutes);
        // One step of three minutes' worth at least, at 40 an hour.
        Assert.True(WhatMayGoWrong(risky) >= WhatMayGoWrong(calm) + 2, $"{WhatMayGoWrong(calm)} {WhatMayGoWrong(risky)}");

        static double WhatMayGoWrong(Investigation job)
        {
            var way = job.Next().Plan!.Best.Way;
            return way.Cost - way.Price - job.Options.EconomyInUse.Worth(way.Minutes);
        }
    }

    /// <summary>A lamp behind two connectors next to each other, as hard to reach; what is always checked first is done.</summary>
    private static Investigation Job(string left, string right)
    {
        var circuit = SheetReader.Read($$"""
            sheet: 1
            title: A lamp behind two connectors
            conditions:
              key off: {}
              key on: { IGN: on }
            places:
              left: { open: 2 min, reach: 1 m, cautions: [{{left}}] }
              right: { open: 2 min, reach: 1 m, cautions: [{{right}}] }
            complaints:
              lamp is dark: { load: L1, is: dead, in: key on }
            parts:
              BAT: { kind: battery }
              F1: { kind: fuse, rating: 10 A, probe: no }
              IGN: { kind: switch, probe: no }
              C1: { kind: connector, place: left }
              C2: { kind: connector, place: right }
              L1: { kind: lamp, watts: 21 W, probe: no }
              G1: { kind: ground, probe: no }
            wiring:
              - BAT.pos -> wire 2.5mm2 1m RD -> F1 -> wire 1mm2 1m RD -> IGN -> wire 1mm2 1m BK -> C1.1a -> C1.1b -> wire 1mm2 0.1m BK -> C2.1a -> C2.1b -> wire 1mm2 1m BK -> L1.1
              - L1.2 -> wire 1mm2 1m BN -> G1
            """).Circuit!;
        var job = Investigation.Open(circuit, circuit.Complaints[0]);
        var car = new SimulatedCar(circuit, "L1", Game.Fault("C1.1:open"));
        while (job.Next() is { Plan: null, Check: { } first })
        {
            job.Record(first.Id, first, car.Answer(first));
        }

        return job;
    }

    [Theory]
    [InlineData("volts C3.4b BODY | key on", "risk.fuel-vapour")]
    [InlineData("work of M1 | cranking", "risk.cranking")]
    [InlineData("work of M1 | running", "risk.engine-running")]
    [InlineData("volts BAT.pos BAT.neg | key off", "risk.hot-parts")]
    public void A_step_takes_the_risks_of_its_places_and_of_its_condition(string id, string risk)
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var check = Investigation.Open(circuit, circuit.Complaints[2]).FindCheck(id)!;

        Assert.Contains(Risk.Of(circuit, check), r => r.Name.Code == risk && r.Minutes > 0);
    }

    [Fact]
    public void A_black_lead_that_stays_clipped_to_the_battery_takes_no_risk_anew()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var job = Investigation.Open(circuit, circuit.Complaints[0]);

        Assert.Equal(Risk.Of(circuit, job.FindCheck("volts C3.4b BODY | key on")!), Risk.Of(circuit, job.FindCheck("volts C3.4b BAT.neg | key on")!));
    }
}
