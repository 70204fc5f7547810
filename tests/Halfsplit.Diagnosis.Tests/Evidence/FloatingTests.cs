using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Xunit;
using static Halfsplit.Diagnosis.Tests.Play.ClosedLoopTests;

namespace Halfsplit.Diagnosis.Tests.Evidence;

/// <summary>A wire tied to nothing, under a meter of ten megohms.</summary>
public sealed class FloatingTests
{
    private const string Sheet = """
        sheet: 1
        title: Lamp behind a switch
        conditions: { key off: {}, lit: { after: key off, S1: on } }
        complaints: { lamp dark: { load: L1, is: dead, in: lit } }
        parts:
          BAT: { kind: battery }
          F1: { kind: fuse, rating: 10 A }
          S1: { kind: switch }
          C1: { kind: connector, b: L1 }
          L1: { kind: lamp, watts: 21 W }
          G1: { kind: ground }
        wiring:
          - BODY -> wire 16mm2 0.4m BK -> BAT.neg
          - BAT.pos -> wire 2.5mm2 1m RD -> F1 -> wire 1mm2 2m GY as feed -> S1 -> wire 1mm2 2m WH as behind -> C1.1 -> L1
          - L1.2 -> C1.2 -> wire 1mm2 1m BN -> G1
        """;

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.0004)]
    [InlineData(0.012)]
    public void Next_to_no_volts_tell_an_open_from_a_short_poorly(double volts)
    {
        // The fuse's wire behind it: either it has broken before, or it lies at the body and the fuse has blown.
        var before = Ratio(null);
        var after = Ratio(volts);

        Assert.InRange(after / before, 0.05, 20);
    }

    [Fact]
    public void A_ghost_speaks_against_the_short() => Assert.InRange(Ratio(0.15) / Ratio(null), 0, 0.01);

    [Fact]
    public void A_wire_that_was_quiet_says_little_more_when_it_is_quiet_again()
    {
        var (once, often) = (Ratio(0.0), Ratio(0.0, times: 4));

        Assert.InRange(often / once, 0.5, 2);
    }

    /// <summary>Odds that the wire behind the fuse lies at the body, over those that the fuse alone is open.</summary>
    private static double Ratio(double? volts, int times = 1)
    {
        var circuit = SheetReader.Read(Sheet).Circuit!;
        var job = Investigation.Open(circuit, circuit.Complaints[0]);
        if (volts is { } read)
        {
            var check = job.FindCheck("volts F1.2p BODY | key off")!;
            for (var time = 0; time < times; time++)
            {
                job.Record($"{time}", check, Volts(read));
            }
        }

        return Odds(job, "feed short to ground") / Odds(job, "F1 open");
    }
}
