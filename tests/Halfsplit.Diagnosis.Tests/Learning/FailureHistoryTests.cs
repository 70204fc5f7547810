using CsCheck;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Learning;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Learning;

/// <summary>Finished jobs raise what they found, within bounds, whatever order they come in.</summary>
public sealed class FailureHistoryTests
{
    private static readonly Circuit Pump = ShippedSheets.Load("pump-feed");
    private static readonly Circuit Lamps = ShippedSheets.Load("headlamps");
    private static readonly CaseExpectation PumpDead = CaseExpectation.Of(Pump, Pump.Complaints[0]);
    private static readonly CaseExpectation LampsDim = CaseExpectation.Of(Lamps, Lamps.Complaints[0]);

    private static ProvenCase Pumps(string job, string suspect, string repair) => PumpDead.Proven(job, suspect, repair)!;

    private static IEnumerable<ProvenCase> Jobs(int count, string suspect, string repair) =>
        Enumerable.Range(0, count).Select(i => Pumps($"{i:00}", suspect, repair));

    private static Dictionary<string, double> Odds(Circuit circuit, FailureHistory? history) =>
        Investigation.Open(circuit, circuit.Complaints[0], history: history)
            .Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);

    [Fact]
    public void No_jobs_change_nothing()
    {
        var history = FailureHistory.Of([], Pump.Title);

        Assert.Equal(0, history.Jobs);
        Assert.Equal(Odds(Pump, null), Odds(Pump, history));
    }

    [Fact]
    public void One_job_moves_no_odds_wildly()
    {
        var before = Odds(Pump, null);
        foreach (var (suspect, repair) in ((string, string)[])[("K2 contact open", "replace K2"), ("C1.2 open", "mend-contact C1.2")])
        {
            var after = Odds(Pump, FailureHistory.Of(Jobs(1, suspect, repair), Pump.Title));

            Assert.InRange(Ratio(after[suspect]) / Ratio(before[suspect]), 1.05, 2);
            Assert.All(before.Where(b => b.Key != suspect), b => Assert.InRange(Ratio(after[b.Key]) / Ratio(b.Value), 0.6, 1.4));
        }
    }

    [Fact]
    public void Twenty_jobs_of_one_fault_make_it_the_first_suspect_and_no_certainty()
    {
        var before = Odds(Pump, null);
        var after = Odds(Pump, FailureHistory.Of(Jobs(20, "K2 contact open", "replace K2"), Pump.Title));

        Assert.InRange(before["K2 contact open"], 0.005, 0.15);
        Assert.Equal("K2 contact open", after.MaxBy(a => a.Value).Key);
        Assert.InRange(after["K2 contact open"], 0.3, 0.9);
        Assert.True(after["M1 open"] < before["M1 open"]);
        // Ten more move it less than the ten before did.
        var ten = Odds(Pump, FailureHistory.Of(Jobs(10, "K2 contact open", "replace K2"), Pump.Title))["K2 contact open"];
        Assert.True(after["K2 contact open"] - ten < ten - before["K2 contact open"]);
    }

    [Fact]
    public void Jobs_as_expected_leave_the_weights_about_where_they_were()
    {
        // Every suspect found as often as expected, in thousands of jobs: the factors must all come to about one.
        var cases = new List<ProvenCase>();
        foreach (var share in PumpDead.Shares)
        {
            for (var i = 0; i < Math.Round(4000 * share.Share); i++)
            {
                cases.Add(new ProvenCase($"{share.Suspect} {i}", PumpDead, share));
            }
        }

        var history = FailureHistory.Of(cases, Pump.Title);
        Assert.All(
            PumpDead.Shares.Where(s => s.Share > 0.005),
            s => Assert.InRange(history.KindFactor(s.Kind) * history.SuspectFactor(s.Suspect), 0.85, 1.15));
    }

    [Fact]
    public void The_kind_teaches_other_circuits_and_the_suspect_only_its_own()
    {
        var jobs = Jobs(12, "K2 contact resistive", "replace K2").ToList();
        var lamps = FailureHistory.Of(jobs, Lamps.Title);

        Assert.Equal((12, 0), (lamps.Jobs, lamps.CircuitJobs));
        Assert.Empty(lamps.Suspects);
        Assert.True(Odds(Lamps, lamps)["K8 contact resistive"] > 1.5 * Odds(Lamps, null)["K8 contact resistive"]);
        var pump = FailureHistory.Of(jobs, Pump.Title);
        Assert.Equal(12, pump.Suspects.Single(s => s.Name == "K2 contact resistive").Jobs);
        Assert.True(pump.SuspectFactor("K2 contact resistive") > 1);
        Assert.True(pump.SuspectFactor("K1 contact resistive") < 1);
    }

    [Fact]
    public void The_order_of_jobs_does_not_matter_and_a_copy_counts_once()
    {
        ProvenCase[] jobs =
        [
            .. Jobs(3, "K2 contact open", "replace K2"), Pumps("x", "M1 open", "replace M1"),
            LampsDim.Proven("y", "G5 resistive", "clean-ground G5")!, LampsDim.Proven("z", "C10.3 resistive", "mend-contact C10.3")!,
        ];
        var expected = FailureHistory.Of(jobs, Pump.Title);
        Gen.Shuffle(jobs).Sample(
            order =>
            {
                var history = FailureHistory.Of(order.Concat(order.Take(2)), Pump.Title);
                Assert.Equal((6, 4), (history.Jobs, history.CircuitJobs));
                Assert.Equal(expected.Kinds.AsEnumerable(), history.Kinds);
                Assert.Equal(expected.Suspects.AsEnumerable(), history.Suspects);
            },
            iter: 20, threads: 1);
    }

    [Fact]
    public void The_fault_is_the_one_blamed_that_the_repair_mends()
    {
        Assert.Equal("G2 resistive", Pumps("1", "M1 open + G2 resistive", "clean-ground G2").Fault.Suspect);
        Assert.Equal("K2 contact open", Pumps("1", "K2 contact open", "replace K2").Fault.Suspect);
        // Nobody was blamed: the likeliest that it mends.
        Assert.Equal("M1", Pumps("1", "", "replace M1").Fault.Suspect.Split(' ')[0]);
        Assert.Null(PumpDead.Proven("1", "M1 open", "replace the cat"));
    }

    private static double Ratio(double odds) => odds / (1 - odds);
}
