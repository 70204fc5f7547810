using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Tests.Play;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Evidence;

/// <summary>What readings so far say of the next one.</summary>
public sealed class HindsightTests
{
    private static readonly string[] AtTheStarter =
        ["volts BAT.pos BAT.neg | key off", "volts M1.pos BODY | start in gear with the clutch pulled"];

    private const string AtThePost = "volts BAT.pos BODY | start in gear with the clutch pulled";

    private static Investigation Turning(string fault, IEnumerable<string> ids)
    {
        var circuit = ShippedSheets.Load("motorcycle-start");
        var complaint = circuit.Complaints.First(c => c.Name == "starter turns slowly");
        var investigation = Investigation.Open(circuit, complaint);
        var car = new SimulatedCar(circuit, complaint.Load, Game.Fault(fault));
        foreach (var id in ids)
        {
            var check = investigation.FindCheck(id)!;
            investigation.Record(id, check, car.Answer(check));
        }

        return investigation;
    }

    /// <summary>A weak battery and a tight motor both lower the volts while cranking, each by its own degree.</summary>
    [Fact]
    public void A_point_beside_one_that_was_read_is_expected_to_show_what_that_one_showed()
    {
        double Apart(IEnumerable<string> read)
        {
            var investigation = Turning("M1:tight:2.4", read);
            var expected = investigation.Expected(investigation.FindCheck(AtThePost)!, 60);
            double Mean(string suspect) => expected.Single(e => e.Suspect!.Suspect.Id == suspect).Mean!.Value;
            return Math.Abs(Mean("BAT weak") - Mean("M1 tight"));
        }

        // Before, a volt and more lies between them; once the starter's own volts are known, what is left is the short way between.
        Assert.True(Apart([]) > 1, $"{Apart([])}");
        Assert.True(Apart(AtTheStarter) < 0.4, $"{Apart(AtTheStarter)}");
    }

    [Fact]
    public void A_reading_never_widens_what_is_expected()
    {
        double Spread(IEnumerable<string> read)
        {
            var investigation = Turning("BAT:weak:0.06", read);
            return investigation.Expected(investigation.FindCheck(AtThePost)!, 60)
                .Single(e => e.Suspect!.Suspect.Id == "BAT weak").Spread!.Value;
        }

        Assert.True(Spread(AtTheStarter) < Spread([]));
    }

    /// <summary>What parts a weak battery from a tight motor is the amps: both would show the same volts at every point.</summary>
    [Fact]
    public void What_has_been_told_is_not_asked_for_again_at_the_next_terminal()
    {
        double MostBits(IEnumerable<string> read) => Turning("M1:tight:2.42623", ["work of M1 | start in neutral", .. read]).RankedNow()
            .Where(r => r.Check.Id.StartsWith("volts ", StringComparison.Ordinal) && r.Check.Arrangement.Condition.StartsWith("start", StringComparison.Ordinal))
            .Max(r => r.Bits);

        Assert.True(MostBits([AtTheStarter[0]]) > 0.5);
        Assert.InRange(MostBits(AtTheStarter), 0, 0.1);
    }

    /// <summary>A starter shorted so little that its link holds would leave the lamps lit; that one lamp is dark tells of the others.</summary>
    [Fact]
    public void What_a_look_told_is_not_asked_for_again_at_the_next_lamp()
    {
        var circuit = ShippedSheets.Load("motorcycle-start");
        var investigation = Investigation.Open(circuit, circuit.Complaints.First(c => c.Name == "neutral lamp dark"));
        void Record(string id, ReadingValue value) => investigation.Record(id, investigation.FindCheck(id)!, value);
        Record("work of NL | key on in neutral", new ReadingParse.Word(AnswerWord.Dark));
        Record("volts BAT.pos BAT.neg | key off", new ReadingParse.Number(12.33, Quantity.Volts, 0.01));
        Record("volts F1.1p BAT.neg | running in neutral", new ReadingParse.Number(0.0002, Quantity.Volts, 0.0001));
        Record("volts BAT.pos FL1.2 | running in neutral", new ReadingParse.Number(13.85, Quantity.Volts, 0.01));

        Assert.Contains(investigation.Suspects, s => s.Suspect.Id == "M1 shorted" && s.Odds > 0.1);
        Assert.DoesNotContain(investigation.RankedNow(), r => r.Check.Subject == Diagnosis.Checks.CheckSubject.LoadWork && r.Bits > 0.03);
    }

    /// <summary>A reading that is taken for a slip moves nothing that is expected of the next one by its own size.</summary>
    [Fact]
    public void A_slip_does_not_move_what_is_expected()
    {
        var investigation = Turning("M1:tight:2.4", AtTheStarter);
        var next = investigation.FindCheck("volts F2.1p BODY | start in gear with the clutch pulled")!;
        double Expected() => investigation.Expected(next, 3)[0].Mean!.Value;
        var before = Expected();
        investigation.Record("slip", investigation.FindCheck(AtThePost)!, new ReadingParse.Number(0.01, Quantity.Volts, 0.01));
        Assert.InRange(Expected(), before - 0.3, before + 0.3);
    }

    /// <summary>What a clamp shows of wires without amps is its zero, whichever way they would run.</summary>
    [Fact]
    public void A_clamp_that_is_off_is_expected_to_be_as_far_off_on_the_next_wire()
    {
        var circuit = ShippedSheets.Load("daytime-lamps");
        var investigation = Investigation.Open(circuit, circuit.Complaints.First(c => c.Name == "daytime lamps do not come on"));
        foreach (var id in new[] { "amps-clamp of ALT.B+~BAT.pos | running", "amps-clamp of ALT.B+~BAT.pos | running parking", "amps-clamp of DSP~DCU.charging | running" })
        {
            investigation.Record(id, investigation.FindCheck(id)!, new ReadingParse.Number(0.24, Quantity.Amperes, 0.01));
        }

        var expected = investigation.Expected(investigation.FindCheck("amps-clamp of ENG~BODY | running")!, 1000);

        Assert.All(expected, e => Assert.True(e.Mean is not < 0, $"{e.Suspect!.Suspect.Id} {e.Mean}"));
        Assert.InRange(expected.Single(e => e.Suspect!.Suspect.Id == "CHL open").Mean!.Value, 0.15, 0.33);
    }
}
