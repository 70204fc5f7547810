using CsCheck;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Readings;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Noticing;

/// <summary>What was noticed moves the odds the way it says, never to 0 or 1, in whatever order it is said.</summary>
public sealed class NoticedTests
{
    private static readonly Circuit Pump = ShippedSheets.Load("pump-feed");
    private static readonly Circuit Fan = ShippedSheets.Load("cooling-fan");
    private static readonly Circuit Lamps = ShippedSheets.Load("headlamps");

    private static Noticed Said(Circuit circuit, string text, int complaint = 0)
    {
        var (what, problem) = NoticedChoice.Read(circuit, circuit.Complaints[complaint], text);
        return what ?? throw new InvalidOperationException(problem!.ToString());
    }

    private static Dictionary<string, double> Odds(Circuit circuit, int complaint, params string[] noticed) =>
        Investigation.Open(
                circuit, circuit.Complaints[complaint], null, noticed.Select(n => Said(circuit, n, complaint)))
            .Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);

    /// <summary>Sheet, complaint, what is said, a suspect it speaks for, one it speaks against.</summary>
    public static TheoryData<string, int, string, string, string> Cases => new()
    {
        // The main relay's coil is open: nothing clicks. The pump relay's: the main relay clicks all the same.
        { "pump-feed", 0, "no-sound", "K1 coil open", "K2 coil open" },
        { "pump-feed", 0, "relay-clicks:K2", "G2 open", "K2 coil open" },
        { "pump-feed", 0, "relay-clicks", "M1 open", "K1 coil open" },
        { "pump-feed", 0, "hums", "M1 seized", "M1 open" },
        { "pump-feed", 0, "works-when-thumped", "M1 brushes worn", "F19 open" },
        { "pump-feed", 0, "works-when-thumped:M1", "M1 brushes worn", "K2 stuck" },
        { "pump-feed", 0, "works-when-harness-moved", "C3 loose", "M1 seized" },
        { "pump-feed", 0, "works-sometimes", "C3 loose", "F19 open" },
        { "pump-feed", 0, "came-on-suddenly", "F19 open", "G2 resistive" },
        { "pump-feed", 0, "got-worse-slowly", "G2 resistive", "F19 open" },
        { "pump-feed", 0, "fuse-blew:F19", "F19 open", "M1 open" },
        { "pump-feed", 0, "fuse-blew", "M1 shorted", "G2 open" },
        { "pump-feed", 0, "fuse-blew-again:F19", "M1 shorted", "F19 open" },
        { "pump-feed", 0, "new-fuse-did-not-help:F19", "M1 shorted", "F19 open" },
        { "pump-feed", 0, "new-relay-did-not-help:K2", "M1 open", "K2 contact open" },
        { "pump-feed", 0, "new-load-did-not-help", "G2 open", "M1 open" },
        { "pump-feed", 0, "new-part-did-not-help:C3", "G2 open", "C3 loose" },
        { "pump-feed", 0, "ground-cleaned-without-help:G2", "M1 open", "G2 open" },
        { "pump-feed", 0, "others-work:L1", "M1 open", "BAT discharged" },
        { "headlamps", 0, "others-dim", "G5 resistive", "C10.1 resistive" },
        { "headlamps", 0, "others-dim:PL", "G5 resistive", "C10.3 resistive" },
        { "headlamps", 0, "others-work:RH", "C10.3 resistive", "G5 resistive" },
        { "cooling-fan", 2, "hot-plug:C8", "C8.1 resistive", "K6 contact resistive" },
        { "headlamps", 0, "hot-plug", "C10.3 resistive", "BAT weak" },
        { "cooling-fan", 0, "smell-of-burning", "FAN shorted", "F14 open" },
        { "headlamps", 1, "after-rain-or-wash", "C10.3 open", "F21 open" },
        { "headlamps", 1, "after-work-there:left headlamp", "C10.3 open", "K8 stuck" },
        { "pump-feed", 0, "code-supply-low:ECU", "BAT discharged", "M1 open" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_moves_the_odds_the_way_it_says(string sheet, int complaint, string said, string raised, string lowered)
    {
        var circuit = ShippedSheets.Load(sheet);
        var before = Odds(circuit, complaint);
        var after = Odds(circuit, complaint, said);

        Assert.True(after[raised] / before[raised] > 1.02, $"{raised}: {before[raised]} -> {after[raised]}");
        Assert.True(after[lowered] / before[lowered] < 1, $"{lowered}: {before[lowered]} -> {after[lowered]}");
        Assert.Equal(1, after.Values.Sum(), 1e-9);
        // Nothing that is said proves anything, and the unknown is not moved more than the rest on average.
        Assert.All(after, s => Assert.InRange(s.Value, 1e-12, 0.999));
        Assert.Equal(before["none of these"], after["none of these"], 1e-9);
    }

    [Fact]
    public void A_stored_code_speaks_for_the_control_circuit()
    {
        foreach (var (text, raised) in ((string, string)[])[("code-stored", "K6.85~ECU.fan-high open"), ("code-circuit-open", "K6.85~ECU.fan-high open")])
        {
            var said = $"{text}:ECU.fan-high";
            var before = Odds(Fan, 0);
            var after = Odds(Fan, 0, said);
            Assert.True(after[raised] > 2 * before[raised], $"{said}: {before[raised]} -> {after[raised]}");
            Assert.True(after["FAN open"] < before["FAN open"]);
        }
    }

    [Fact]
    public void Every_row_can_be_said_of_some_shipped_sheet_and_is_told_apart_from_its_group()
    {
        var sayable = ((Circuit[])[Pump, Fan, Lamps])
            .SelectMany(c => NoticedChoice.For(c, c.Complaints[0])).Select(c => c.Kind.Name).ToHashSet(StringComparer.Ordinal);

        Assert.Empty(NoticedTable.All.Select(k => k.Name).Except(sayable));
        Assert.All(NoticedTable.All, k =>
        {
            Assert.InRange(k.IfSo, 0.001, 0.999);
            Assert.InRange(k.Otherwise, 0.001, 0.999);
            Assert.NotEqual(k.IfSo, k.Otherwise);
            Assert.NotEmpty(k.Source);
            Assert.True(k.Includes.Length == 0 || NoticedTable.Find(k.Includes) is not null, k.Name);
        });
    }

    [Fact]
    public void The_order_in_which_things_are_said_never_changes_the_odds()
    {
        string[] all = ["no-sound", "new-relay-did-not-help:K2", "got-worse-slowly", "works-when-thumped", "after-rain-or-wash", "fuse-blew"];
        var expected = Odds(Pump, 0, all);
        Gen.Shuffle(all).Sample(
            order =>
            {
                var odds = Odds(Pump, 0, order);
                Assert.All(expected, e => Assert.Equal(e.Value, odds[e.Key], 1e-12));
            },
            iter: 4, threads: 1);
    }

    [Fact]
    public void Said_before_or_after_a_reading_it_comes_to_the_same()
    {
        var what = Said(Pump, "new-relay-did-not-help:K2");
        var first = Investigation.Open(Pump, Pump.Complaints[0], null, [what]);
        var later = Investigation.Open(Pump, Pump.Complaints[0]);
        foreach (var investigation in (Investigation[])[first, later])
        {
            // Readings that fit no single fault: pairs join in.
            foreach (var (id, volts) in ((string, double)[])
                [("volts F19.1p BODY | key on", 5.1), ("volts F1.2p BODY | key on", 7.3), ("volts F18.1p BODY | key on", 3.9)])
            {
                investigation.Record(id, investigation.FindCheck(id)!, new ReadingParse.Number(volts, Quantity.Volts, 0.01));
            }

            Assert.Contains(investigation.Suspects, s => s.Suspect.Modes.Length == 2);
        }

        var without = later.Suspects;
        later.Notice("n", what);

        Assert.Equal(first.Suspects.Select(s => (s.Suspect.Id, s.Odds)), later.Suspects.Select(s => (s.Suspect.Id, s.Odds)));
        Assert.True(later.WithdrawNoticed("n"));
        Assert.False(later.WithdrawNoticed("n"));
        Assert.Equal(without.Select(s => (s.Suspect.Id, s.Odds)), later.Suspects.Select(s => (s.Suspect.Id, s.Odds)));
    }

    [Fact]
    public void Twice_the_same_counts_once_and_a_stronger_word_takes_the_weaker_ones_place()
    {
        Assert.Equal(Odds(Pump, 0, "fuse-blew:F19"), Odds(Pump, 0, "fuse-blew:F19", "fuse-blew:F19"));
        Assert.Equal(Odds(Pump, 0, "fuse-blew-again:F19"), Odds(Pump, 0, "fuse-blew:F19", "fuse-blew-again:F19"));
    }

    [Fact]
    public void Things_that_no_suspect_explains_together_raise_none_of_these()
    {
        var odds = Odds(Pump, 0, "fuse-blew:F19", "hums", "relay-clicks:K2", "new-load-did-not-help", "works-when-harness-moved");

        Assert.True(odds["none of these"] > 1.2 * Odds(Pump, 0)["none of these"], $"{odds["none of these"]}");
    }

    [Fact]
    public void Each_thing_tells_how_it_moved_every_suspect()
    {
        string[] said = ["no-sound", "new-load-did-not-help"];
        var investigation = Investigation.Open(Pump, Pump.Complaints[0], null, said.Select(s => Said(Pump, s)));
        var bare = Investigation.Open(Pump, Pump.Complaints[0]).Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds);
        var weights = investigation.NoticedWeights();

        Assert.Equal(2, weights.Length);
        Assert.All(weights, w => Assert.Equal(w.Space.Hypotheses.Length, w.LogLikelihoods.Length));
        Assert.All(weights.SelectMany(w => w.LogLikelihoods), l => Assert.True(l < 0 && double.IsFinite(l)));
        // A suspect without degrees: its likelihoods alone take the odds before to those after.
        var coil = investigation.Suspects.First(s => s.Suspect.Id == "K2 coil open");
        var none = investigation.Suspects.First(s => s.Suspect.IsNone);
        var ratio = weights.Sum(w => w.LogRatioOf(coil.Suspect));
        Assert.Equal(
            Math.Log(coil.Odds / none.Odds), Math.Log(bare["K2 coil open"] / bare["none of these"]) + ratio, 1e-9);
    }

    [Theory]
    [InlineData("no-sond", "noticed.unknown")]
    [InlineData("fuse-blew:F91", "noticed.no-such-thing")]
    [InlineData("new-relay-did-not-help", "noticed.name-one")]
    [InlineData("no-sound:K1", "noticed.names-nothing")]
    [InlineData("", "noticed.unknown")]
    [InlineData("P0230", "noticed.code-number")]
    [InlineData("p0a1f", "noticed.code-number")]
    [InlineData("P4999", "noticed.unknown")]
    public void What_can_not_be_said_is_told(string text, string code)
    {
        var (what, problem) = NoticedChoice.Read(Pump, Pump.Complaints[0], text);

        Assert.Null(what);
        Assert.Equal(code, problem!.Code);
    }

    [Fact]
    public void A_codes_number_says_nothing_where_nothing_stores_codes()
    {
        var circuit = ShippedSheets.Load("accessory-socket");

        Assert.Equal("noticed.no-codes", NoticedChoice.Read(circuit, circuit.Complaints[0], "P0230").Problem!.Code);
    }

    [Fact]
    public void Case_and_blanks_do_not_matter() =>
        Assert.Equal("fuse-blew-again:F19", Said(Pump, "Fuse blew again: f19").ToString());
}
