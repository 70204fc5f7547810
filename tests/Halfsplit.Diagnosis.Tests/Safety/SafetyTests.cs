using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Diagnosis.Suspects;
using Halfsplit.Diagnosis.Tests.Play;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Compiled;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Safety;

/// <summary>No check is offered that could hurt.</summary>
public sealed class SafetyTests
{
    [Theory]
    [InlineData("pump-feed", 0, "K2.87~C1.2a:short-to-ground")]
    [InlineData("pump-feed", 0, "M1:shorted:0.05")]
    [InlineData("cooling-fan", 0, "FAN:shorted:0.01")]
    [InlineData("headlamps", 1, "F21.1:open")]
    public void What_is_offered_blows_no_further_fuse_and_reads_no_ohms_on_live_metal(string sheet, int complaint, string fault)
    {
        var circuit = ShippedSheets.Load(sheet);
        var about = circuit.Complaints[complaint];
        var car = new SimulatedCar(circuit, about.Load, Game.Fault(fault));
        var investigation = Investigation.Open(circuit, about);
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        for (var move = 0; move < 14 && investigation.Next().Check is { } check && check.Kind != CheckKind.Repair; move++)
        {
            foreach (var offered in investigation.RankedNow().Select(r => r.Check).Append(check))
            {
                var laid = InstrumentReader.TakesPart(offered.Probe.Instrument) ? offered.Probe : null;
                var point = simulator.Simulate(offered.Arrangement, car.Faults, new SimulationOptions(1, laid));
                Assert.Empty(point.BlownFuses.Except(simulator.Blown(car.Faults)));
                if (offered.Probe.Instrument is Instrument.Ohms or Instrument.Continuity)
                {
                    Assert.NotEqual(Abstention.LiveCircuit, simulator.Read(offered.Arrangement, car.Faults, offered.Probe).Abstains);
                }
            }

            investigation.Record($"{move}", check, car.Answer(check));
        }
    }

    [Theory]
    [InlineData("motorcycle-start", "work of M1 | start in gear with the clutch pulled", true)]
    [InlineData("motorcycle-start", "volts BAT.pos BAT.neg | key off", false)]
    [InlineData("pump-feed", "work of M1 | cranking", true)]
    [InlineData("pump-feed", "work of M1 | priming", false)]
    public void Before_an_engine_may_start_it_is_said(string sheet, string check, bool cranks)
    {
        var circuit = ShippedSheets.Load(sheet);
        var investigation = Investigation.Open(circuit, circuit.Complaints[1]);
        var cautions = Cautions.For(circuit, DiagnosisOptions.Default, Position.Start(circuit), investigation.FindCheck(check)!);

        Assert.Equal(cranks, cautions.Any(c => c.Code == "caution.cranking"));
    }

    [Fact]
    public void With_a_smell_of_fuel_no_jumper_bypasses_the_crash_cut_off()
    {
        // Here the cut-off sits in the pump relay's coil feed, so that a jumper across its contacts would bypass it.
        const string Sheet = """
            sheet: 1
            title: Pump with a cut-off in the coil's feed
            conditions:
              key off: {}
              key on: { IGN: on }
            complaints:
              pump is dead: { load: M1, is: dead, in: key on }
            parts:
              BAT: { kind: battery }
              F1: { kind: fuse, rating: 15 A }
              F2: { kind: fuse, rating: 10 A }
              IGN: { kind: switch }
              S1: { kind: switch, opens by itself: yes }
              K1: { kind: relay }
              C1: { kind: connector, b: M1 }
              M1: { kind: motor, runs: 5 A at 13 V, winding: 0.8 ohm }
              G1: { kind: ground }
            wiring:
              - BAT.pos -> wire 4mm2 1m RD -> F1 -> wire 2.5mm2 1m RD -> K1.30
              - BAT.pos -> wire 2.5mm2 1m RD -> F2 -> wire 1mm2 1m RD -> IGN -> wire 1mm2 1m BK -> S1 -> wire 1mm2 1m BK -> K1.86
              - K1.85 -> wire 1mm2 1m BN -> G1
              - K1.87 -> wire 2.5mm2 3m YE -> C1.1 -> M1.pos
              - M1.neg -> C1.2 -> wire 2.5mm2 1m BN -> G1
            """;
        var circuit = SheetReader.Read(Sheet).Circuit!;
        Assert.True(Allowed(circuit, DiagnosisOptions.Default), "without a smell of fuel the jumper is a good check here");
        Assert.False(Allowed(circuit, new DiagnosisOptions(SmellOfFuelOrImpact: true)));
    }

    private static bool Allowed(Circuit circuit, DiagnosisOptions options)
    {
        var complaint = circuit.Complaints[0];
        var simulator = new CircuitSimulator(NetworkCompiler.Compile(circuit));
        var forecaster = new Forecaster(simulator, complaint.Load);
        var living = Partition.Of(Posterior.Of(HypothesisSpace.Create(simulator, complaint), forecaster, []), s => s.Id, 100);
        var jumper = CheckCatalog.Generate(simulator.Network, complaint, options, [])
            .First(c => c.Arrangement.Jumpers.Length > 0 && c.Arrangement.Condition == complaint.Condition);
        return new SafetyScreen(forecaster, options).Allows(jumper, living, []);
    }

    [Fact]
    public void Parts_marked_as_airbag_or_not_to_be_probed_are_never_touched()
    {
        var circuit = ShippedSheets.Load("cooling-fan");
        var closed = circuit.Parts.Where(p => !p.Notes.Probe).Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        Assert.NotEmpty(closed);
        var checks = CheckCatalog.Generate(NetworkCompiler.Compile(circuit), circuit.Complaints[0], DiagnosisOptions.Default, []);

        Assert.DoesNotContain(checks, c => c.Probe.Red is { } red && closed.Contains(red.Part));
        Assert.DoesNotContain(checks, c => c.Probe.Black is { } black && closed.Contains(black.Part));
    }

    /// <summary>On every sheet that is shipped, whatever check lays a jumper or lets a lamp stand in for a load.</summary>
    [Theory]
    [InlineData("horn")]
    [InlineData("pump-feed")]
    [InlineData("headlamps")]
    [InlineData("starter-24v")]
    [InlineData("trailer-7pin")]
    public void A_jumper_and_a_substitute_load_come_with_their_caution(string sheet)
    {
        var circuit = ShippedSheets.Load(sheet);
        var told = 0;
        foreach (var complaint in circuit.Complaints)
        {
            foreach (var check in CheckCatalog.Generate(NetworkCompiler.Compile(circuit), complaint, DiagnosisOptions.Default, []))
            {
                var cautions = Cautions.For(circuit, DiagnosisOptions.Default, Position.Start(circuit), check).Select(c => c.Code).ToList();
                Assert.True(check.Arrangement.Jumpers.Length == 0 || cautions.Contains("caution.jumper"), check.Id);
                Assert.True(check.Probe.LampWatts is null || cautions.Contains("caution.substitute-load"), check.Id);
                told += check.Arrangement.Jumpers.Length + (check.Probe.LampWatts is null ? 0 : 1);
            }
        }

        Assert.True(told > 0);
    }
}
