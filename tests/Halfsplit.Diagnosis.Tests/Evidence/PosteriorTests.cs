using System.Text.RegularExpressions;
using CsCheck;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;
using static Halfsplit.Diagnosis.Tests.Play.ClosedLoopTests;

namespace Halfsplit.Diagnosis.Tests.Evidence;

public sealed class PosteriorTests
{
    private static readonly string[] Checks =
    [
        "work of M1 | priming", "volts BAT.pos BAT.neg | key off", "volts F19.2p BODY | key on", "volts C3.4b C3.3b | priming",
        "click of K2 | priming", "work of L1 | key on", "volts BAT.pos C1.2a | priming", "ohms C3.4b C3.3b | key off; unplug C3",
    ];

    private static Investigation Pump(string? text = null)
    {
        var circuit = text is null ? ShippedSheets.Load("pump-feed") : SheetReader.Read(text).Circuit!;
        return Investigation.Open(circuit, circuit.Complaints[0]);
    }

    private static void Answer(Investigation investigation, SimulatedCar car, IEnumerable<string> checks)
    {
        foreach (var id in checks)
        {
            var check = investigation.FindCheck(id) ?? throw new InvalidOperationException(id);
            investigation.Record(id, check, car.Answer(check));
        }
    }

    [Fact]
    public void Odds_add_up_to_one_whatever_is_read()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        Gen.Select(Gen.Int[0, Checks.Length - 1], Gen.Double[-2, 15]).Array[1, 6].Sample(
            readings =>
            {
                var investigation = Investigation.Open(circuit, circuit.Complaints[0]);
                for (var i = 0; i < readings.Length; i++)
                {
                    var check = investigation.FindCheck(Checks[readings[i].Item1])!;
                    investigation.Record($"{i}", check, check.TakesNumber
                        ? new ReadingParse.Number(Math.Round(readings[i].Item2, 2), check.Id.StartsWith("ohms", StringComparison.Ordinal) ? Quantity.Ohms : Quantity.Volts, 0.01)
                        : new ReadingParse.Word(check.Answers[0][0]));
                }

                Assert.Equal(1.0, investigation.Suspects.Sum(s => s.Odds), 9);
                Assert.All(investigation.Suspects, s => Assert.InRange(s.Odds, 0, 1));
            },
            iter: 12, threads: 1);
    }

    [Fact]
    public void The_order_of_readings_never_changes_the_odds()
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var car = new SimulatedCar(circuit, "M1", Game.Fault("G2:resistive:12"));
        var straight = Pump();
        Answer(straight, car, Checks);
        Gen.Shuffle(Checks).Sample(
            order =>
            {
                var other = Pump();
                Answer(other, car, order);
                foreach (var suspect in straight.Suspects)
                {
                    Assert.Equal(suspect.Odds, Odds(other, suspect.Suspect.Id), 12);
                }
            },
            iter: 6, threads: 1);
    }

    [Fact]
    public void A_withdrawn_reading_is_as_if_it_had_never_been()
    {
        var car = new SimulatedCar(ShippedSheets.Load("pump-feed"), "M1", Game.Fault("K2:contact-open"));
        var without = Pump();
        Answer(without, car, Checks[..3]);
        var with = Pump();
        Answer(with, car, Checks[..3]);
        var wrong = with.FindCheck("volts C3.4b C3.3b | priming")!;
        with.Record("wrong", wrong, Volts(12.5));
        Assert.True(with.Withdraw("wrong"));

        Assert.Equal(without.Suspects.Select(s => (s.Suspect.Id, s.Odds)), with.Suspects.Select(s => (s.Suspect.Id, s.Odds)));
        Assert.Equal(without.Next().Check, with.Next().Check);
    }

    [Fact]
    public void Other_names_for_parts_change_nothing()
    {
        var text = ShippedSheets.Text("pump-feed")!;
        var renamed = Regex.Replace(text, @"\bK2\b", "RQ7");
        renamed = Regex.Replace(renamed, @"\bC3\b", "PL1");
        var car = new SimulatedCar(ShippedSheets.Load("pump-feed"), "M1", Game.Fault("C3.3:resistive:9"));
        var one = Pump();
        Answer(one, car, Checks);
        var two = Pump(renamed);
        foreach (var (id, value) in one.Observations.Select(o => (o.Check.Id, o.Value)))
        {
            var other = id.Replace("K2", "RQ7", StringComparison.Ordinal).Replace("C3", "PL1", StringComparison.Ordinal);
            two.Record(other, two.FindCheck(other)!, value);
        }

        foreach (var suspect in one.Suspects)
        {
            var other = suspect.Suspect.Id.Replace("K2", "RQ7", StringComparison.Ordinal).Replace("C3", "PL1", StringComparison.Ordinal);
            Assert.Equal(suspect.Odds, Odds(two, other), 9);
        }
    }

    [Fact]
    public void Readings_that_fit_nothing_raise_none_of_these()
    {
        var investigation = Pump();
        var before = Odds(investigation, "none of these");
        foreach (var (id, volts) in ((string, double)[])
            [("volts BAT.pos BAT.neg | key off", 12.6), ("volts F19.1p BODY | key on", 5.1), ("volts F1.2p BODY | key on", 7.3), ("volts F18.1p BODY | key on", 3.9)])
        {
            investigation.Record(id, investigation.FindCheck(id)!, Volts(volts));
        }

        Assert.True(Odds(investigation, "none of these") > 10 * before, $"{Odds(investigation, "none of these")}");
    }

    [Theory]
    [InlineData(2)]
    [InlineData(4)]
    [InlineData(6)]
    public void One_slip_does_not_lead_to_a_wrong_part(int slipAt)
    {
        var circuit = ShippedSheets.Load("pump-feed");
        var car = new SimulatedCar(circuit, "M1", Game.Fault("G2:open"));
        var played = Game.Play(circuit, circuit.Complaints[0], car, slipAt, (check, value) =>
            value is ReadingParse.Number number ? Volts(number.Value > 6 ? 0.02 : 12.3) : value);

        Assert.True(played.IsProven, played.ToString());
        Assert.DoesNotContain(played.Findings, f => f.Repair.Price.Low >= 60);
        Assert.Equal("clean-ground G2", played.Findings[^1].Repair.Id);
    }
}
