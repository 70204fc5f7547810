using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Noticing;

/// <summary>What the bench found of a part moves the odds the way it says, and by no more than the table says.</summary>
public sealed class PartFindingTests
{
    private static Noticed Found(Investigation opened, string text)
    {
        var (what, problem) = PartFindings.Read(opened.Circuit, opened.Complaint, text);
        return what ?? throw new InvalidOperationException(problem!.ToString());
    }

    private static Dictionary<string, double> Odds(Investigation opened, params Noticed[] found)
    {
        var anew = opened.Anew();
        foreach (var what in found)
        {
            anew.Notice(what.ToString(), what);
        }

        return anew.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);
    }

    /// <summary>Opening takes long, and what it simulates is the same for every case.</summary>
    private static readonly Lazy<Investigation> Pump = new(() => Open("pump-feed"));

    private static Investigation Open(string sheet, int complaint = 0) =>
        Investigation.Open(ShippedSheets.Load(sheet), ShippedSheets.Load(sheet).Complaints[complaint]);

    /// <summary>What was found, a suspect it speaks for, one it speaks against.</summary>
    public static TheoryData<string, string, string> Cases => new()
    {
        { "relay-coil-open:K2", "K2 coil open", "K2 contact open" },
        { "relay-coil-good:K2", "K2 contact open", "K2 coil open" },
        { "relay-contact-bad:K2", "K2 contact resistive", "M1 open" },
        { "relay-contact-good:K2", "M1 open", "K2 contact resistive" },
        { "fuse-blown:F19", "F19 open", "M1 open" },
        { "fuse-blown:F19", "M1 shorted", "G2 open" },
        { "fuse-whole:F19", "M1 open", "F19 open" },
        { "motor-worn-brushes:M1", "M1 brushes worn", "F19 open" },
        { "motor-seized:M1", "M1 seized", "M1 open" },
        { "motor-good:M1", "G2 open", "M1 open" },
        { "winding-open:M1", "M1 open", "M1 seized" },
        { "winding-good:M1", "K2 contact open", "M1 open" },
        { "battery-low:BAT", "BAT discharged", "M1 open" },
    };

    [Theory]
    [MemberData(nameof(Cases))]
    public void It_moves_the_odds_the_way_it_says(string found, string raised, string lowered) => AssertMoves(Pump.Value, found, raised, lowered);

    [Fact]
    public void An_alternator_speaks_too()
    {
        var opened = Open("charging", 1);
        var other = opened.Suspects.First(s => s.Suspect is { IsNone: false, Id: not "ALT no output" }).Suspect.Id;

        AssertMoves(opened, "alternator-silent", "ALT no output", other);
    }

    // Some open contacts conduct at times; one that was measured while it conducted was not open then.
    [Theory]
    [InlineData("relay-contact-good:K2", 0.01)]
    [InlineData("relay-contact-bad:K2", 0.09)]
    public void A_contact_that_conducted_is_no_open_one(string found, double ohms)
    {
        var what = Found(Pump.Value, found);
        var (against, other) = (what.Kind.IfSo, what.Kind.Otherwise);
        var moved = Moved(what with { Ohms = ohms });

        // What speaks for a bad contact says nothing for an open one; what speaks against it counts in full.
        Assert.Equal(against < other ? against / other : 1, moved, 0.02);
        Assert.True(moved < Moved(what), $"{moved}");
        // No current at all is what an open contact shows.
        Assert.Equal(Moved(what), Moved(what with { Ohms = double.PositiveInfinity }), 1e-9);

        double Moved(Noticed told)
        {
            var (before, after) = (Odds(Pump.Value), Odds(Pump.Value, told));
            return after["K2 contact open"] / after["M1 open"] / (before["K2 contact open"] / before["M1 open"]);
        }
    }

    private static void AssertMoves(Investigation opened, string found, string raised, string lowered)
    {
        var before = Odds(opened);
        var after = Odds(opened, Found(opened, found));

        Assert.True(after[raised] > before[raised], $"{raised}: {before[raised]} -> {after[raised]}");
        Assert.True(after[lowered] < before[lowered], $"{lowered}: {before[lowered]} -> {after[lowered]}");
        Assert.Equal(before["none of these"], after["none of these"], 1e-9);
    }

    [Fact]
    public void No_result_moves_two_suspects_apart_by_more_than_the_table_says()
    {
        var before = Odds(Pump.Value);
        var tried = 0;
        foreach (var kind in PartFindings.All)
        {
            foreach (var part in NoticedChoice.ThingsOf(Pump.Value.Circuit, Pump.Value.Complaint, kind))
            {
                var after = Odds(Pump.Value, new Noticed(kind, part));
                var moved = after.Select(a => a.Value / before[a.Key]).ToList();
                var most = Math.Max(kind.IfSo / kind.Otherwise, kind.Otherwise / kind.IfSo);
                Assert.True(moved.Max() / moved.Min() <= most * (1 + 1e-9), $"{kind.Name}:{part} moves by {moved.Max() / moved.Min()}, the table says {most}");
                Assert.All(after.Values, odds => Assert.InRange(odds, 1e-12, 0.999));
                tried++;
            }
        }

        Assert.True(tried > 20, $"{tried}");
    }

    [Fact]
    public void A_row_speaks_for_a_fault_or_for_health_and_says_where_it_is_from()
    {
        Assert.NotEmpty(PartFindings.All);
        Assert.All(PartFindings.All, kind =>
        {
            Assert.InRange(kind.IfSo, 0.001, 0.999);
            Assert.InRange(kind.Otherwise, 0.001, 0.999);
            Assert.NotEqual("", kind.Group);
            Assert.True(kind.Source.Length > 10, kind.Name);
            Assert.Null(NoticedTable.Find(kind.Name));
        });
    }

    [Fact]
    public void A_relay_that_was_on_the_bench_is_not_asked_for_again_and_one_with_a_good_coil_is()
    {
        var circuit = Pump.Value.Circuit;
        var check = Check.Create(
            CheckKind.Bench, CheckSubject.BenchRelay, new Arrangement(CheckCatalog.RestCondition(circuit)).Remove("K2"), new Probe(Instrument.Eye, null, null, "K2"));
        bool IsAsked(string found)
        {
            var anew = Pump.Value.Anew();
            anew.Notice(found, Found(Pump.Value, found));
            return anew.MayAsk(check.Id);
        }

        Assert.False(IsAsked("relay-contact-bad:K2"));
        Assert.True(IsAsked("relay-contact-bad:K1"));
        Assert.True(IsAsked("relay-coil-good:K2"));
    }

    [Fact]
    public void A_blown_fuse_on_the_bench_counts_once_beside_the_one_that_was_noticed()
    {
        var noticed = NoticedChoice.Read(Pump.Value.Circuit, Pump.Value.Complaint, "fuse-blew:F19").What!;
        var onBench = Found(Pump.Value, "fuse-blown:F19");

        Assert.Equal(Odds(Pump.Value, onBench), Odds(Pump.Value, noticed, onBench));
    }

    [Fact]
    public void The_history_of_a_suspect_tells_what_the_bench_did()
    {
        var investigation = Pump.Value.Anew();
        investigation.Record("1", CheckCatalog.Reproduce(investigation.Circuit, investigation.Complaint), new ReadingParse.Word(AnswerWord.Silent));
        var before = investigation.Suspects.Single(s => s.Suspect.Id == "K2 coil open");
        var complaint = investigation.HistoryOf(before.Suspect).AfterComplaint;
        investigation.Notice("2", Found(investigation, "relay-coil-open:K2"));
        var suspect = investigation.Suspects.Single(s => s.Suspect.Id == "K2 coil open");
        var history = investigation.HistoryOf(suspect.Suspect);
        var step = Assert.Single(history.Noticed);

        Assert.Equal(complaint, history.AfterComplaint, 1e-9);
        Assert.Equal(before.Odds, step.Without, 1e-9);
        Assert.Equal(suspect.Odds, step.Final, 1e-9);
        Assert.True(step.Factor > 10);
    }

    [Theory]
    [InlineData("relay-coil-open", "found.name-one")]
    [InlineData("relay-coil-open:K9", "found.no-such-part")]
    [InlineData("relay-coil-open:M1", "found.no-such-part")]
    [InlineData("diode-open:D1", "found.no-such-sort")]
    [InlineData("purple:K2", "found.unknown")]
    public void What_can_not_be_is_told(string text, string code)
    {
        Assert.Equal(code, PartFindings.Read(Pump.Value.Circuit, Pump.Value.Complaint, text).Problem!.Code);
    }

    /// <summary>A pump's winding is no injector's: the answer is about a motor.</summary>
    [Fact]
    public void A_winding_is_attached_to_a_part_of_its_kind_alone()
    {
        var kind = PartFindings.Find("winding-good")!;
        var (circuit, complaint) = (Pump.Value.Circuit, Pump.Value.Complaint);

        Assert.Equal(["M1"], PartFindings.PartsOf(circuit, complaint, kind, ["motor"]));
        Assert.Null(PartFindings.On(circuit, complaint, kind, "INJ1", ["motor"]).What);
        Assert.NotNull(PartFindings.On(circuit, complaint, kind, "INJ1", ["solenoid"]).What);
    }
}
