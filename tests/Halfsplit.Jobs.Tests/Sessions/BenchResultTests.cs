using System.Text;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;
using Xunit;

namespace Halfsplit.Jobs.Tests.Sessions;

/// <summary>A result from the bench becomes evidence in a job: once, kept, taken back.</summary>
public sealed class BenchResultTests
{
    private static Noticed Found(JobSession session, string text) =>
        PartFindings.Read(session.Circuit, session.Complaint(), text).What!;

    private static JobSession Pump() => SessionJob.Open(SessionJob.Opened("pump-feed"));

    private static string Refusal(SessionOutcome outcome) => Assert.IsType<SessionOutcome.Misplaced>(outcome).Message.Code;

    [Fact]
    public void It_survives_the_file_and_moves_the_odds_again()
    {
        var session = Pump();
        session.Record("silent");
        var before = session.Odds();
        Assert.IsType<SessionOutcome.Kept>(session.Attach("contact", Found(session, "relay-contact-bad:K2"), ["--millivolts", "900", "--amps", "6"]));
        var lines = session.Document.ToJsonLines();
        var again = SessionJob.Open(JobDocument.Read(lines).Document);

        Assert.NotEqual(before, session.Odds());
        Assert.Equal(session.Odds(), again.Odds());
        Assert.Equal("relay-contact-bad:K2", Assert.Single(again.BenchResults).What.ToString());
        Assert.Empty(again.Noticed);
        Assert.Empty(again.Problems);
        Assert.Equal(["--millivolts", "900", "--amps", "6"], again.State.Found.Single().Typed);
        Assert.Contains("\"event\":\"part-found\"", Encoding.UTF8.GetString(lines), StringComparison.Ordinal);
    }

    [Fact]
    public void The_order_of_results_and_readings_does_not_matter()
    {
        var first = Pump();
        first.Attach("contact", Found(first, "relay-contact-bad:K2"), []);
        first.Record("silent");
        var last = Pump();
        last.Record("silent", first.Entries[0].Check);
        last.Attach("contact", Found(last, "relay-contact-bad:K2"), []);

        Assert.Equal(first.Odds(), last.Odds());
    }

    [Fact]
    public void It_is_attached_once_and_a_contradiction_is_refused()
    {
        var session = Pump();
        session.Attach("winding", Found(session, "relay-coil-open:K2"), []);
        var odds = session.Odds();

        Assert.Equal("found.already", Refusal(session.Attach("relay", Found(session, "relay-coil-open:K2"), [])));
        Assert.Equal("found.contradicts", Refusal(session.Attach("relay", Found(session, "relay-coil-good:K2"), [])));
        Assert.Equal(odds, session.Odds());
        Assert.IsType<SessionOutcome.Kept>(session.Attach("relay", Found(session, "relay-coil-good:K1"), []));
    }

    [Fact]
    public void A_copy_that_a_merge_brings_counts_no_more_and_goes_with_the_first()
    {
        var session = Pump();
        var before = session.Odds();
        session.Attach("winding", Found(session, "relay-coil-open:K2"), []);
        var (id, at) = EventStamps.OfThisMachine.Next(session.Document.LastId);
        var merged = SessionJob.Open(session.Document.With(new PartFound(id, at, "relay", "relay-coil-open", "K2")));

        Assert.Equal(session.Odds(), merged.Odds());
        Assert.IsType<SessionOutcome.Kept>(merged.WithdrawBench(Found(merged, "relay-coil-open:K2")));
        Assert.Equal(before, merged.Odds());
    }

    [Fact]
    public void It_can_be_taken_back_and_the_readings_stay()
    {
        var session = Pump();
        session.Record("silent");
        var before = session.Odds();
        session.Attach("fuse", Found(session, "fuse-whole:F19"), []);

        Assert.IsType<SessionOutcome.Kept>(session.WithdrawBench(Found(session, "fuse-whole:F19"), "wrong fuse"));
        Assert.Equal(before, session.Odds());
        Assert.Empty(session.BenchResults);
        Assert.Single(session.Entries);
        Assert.Equal("found.not-attached", Refusal(session.WithdrawBench(Found(session, "fuse-whole:F19"))));
        Assert.Equal(SessionJob.Open(session.Document).Odds(), session.Odds());
    }

    [Fact]
    public void The_same_measurement_does_not_count_as_a_check_and_as_a_result()
    {
        var session = Pump();
        var bench = session.FindCheck(Check.Create(
            CheckKind.Bench, CheckSubject.BenchRelay, new Arrangement(CheckCatalog.RestCondition(session.Circuit)).Remove("K2"),
            new Probe(Instrument.Eye, null, null, "K2")).Id)!;
        var recorded = session.Record("bad", bench);
        Assert.True(recorded is SessionOutcome.Kept, recorded.ToString());

        Assert.Equal("found.measured-before", Refusal(session.Attach("contact", Found(session, "relay-contact-bad:K2"), [])));
        Assert.IsType<SessionOutcome.Kept>(session.Attach("contact", Found(session, "relay-contact-bad:K1"), []));
    }

    [Fact]
    public void A_result_of_a_newer_program_is_kept_and_told()
    {
        var document = SessionJob.Opened("pump-feed");
        var (id, at) = EventStamps.OfThisMachine.Next(document.LastId);
        var session = SessionJob.Open(document.With(new PartFound(id, at, "scope", "relay-coil-purple", "K2")));

        Assert.Equal("session.unknown-found", Assert.Single(session.Problems).Code);
        Assert.Equal(SessionJob.Open(document).Odds(), session.Odds());
    }

    /// <summary>What the job read (condition, points, value), what the bench says, and the code of the doubt; null where they fit.</summary>
    public static TheoryData<string, string, string, string, string, BenchQuantity, double, string?> Held => new()
    {
        { "key off", "BAT.pos", "BAT.neg", "12.6", "battery-low:BAT", BenchQuantity.RestVolts, 9.0, "found.does-not-fit" },
        { "key off", "BAT.pos", "BAT.neg", "12.6", "battery-charged:BAT", BenchQuantity.RestVolts, 12.5, null },
        { "key on", "BAT.pos", "BAT.neg", "12.2", "battery-charged:BAT", BenchQuantity.RestVolts, 12.6, null },
        { "key on", "BAT.pos", "BAT.neg", "12.2", "battery-low:BAT", BenchQuantity.RestVolts, 11.5, "found.does-not-fit" },
        { "key off", "BAT.pos", "BAT.neg", "12.6", "battery-strong:BAT", BenchQuantity.CrankingVolts, 12.9, "found.cranking-above-rest" },
        { "key off", "BAT.pos", "BAT.neg", "12.6", "battery-strong:BAT", BenchQuantity.CrankingVolts, 10.4, null },
        { "priming", "F19.1p", "BAT.neg", "12.4", "fuse-blown:F19", BenchQuantity.TabVolts, 0.02, "found.does-not-fit" },
        { "priming", "F19.1p", "BAT.neg", "12.4", "fuse-whole:F19", BenchQuantity.TabVolts, 12.3, null },
        // The pump is off here: nothing feeds its fuse. On the bench its load was on.
        { "key on", "F19.1p", "BAT.neg", "0", "fuse-whole:F19", BenchQuantity.TabVolts, 12.3, null },
    };

    [Theory]
    [MemberData(nameof(Held))]
    public void A_result_is_held_against_what_the_job_has_read_of_the_same_part(
        string condition, string red, string black, string read, string found, BenchQuantity quantity, double measured, string? doubt)
    {
        var session = Pump();
        Assert.IsType<SessionOutcome.Kept>(session.Record(read, Volts(session, condition, red, black), confirmed: true));
        var lines = session.Document.Events.Length;
        var outcome = session.Attach("aid", Found(session, found), [], [new BenchValue(quantity, measured)]);

        Assert.Equal(doubt, outcome is SessionOutcome.Doubted doubted ? doubted.Message.Code : null);
        Assert.Equal(doubt is null ? lines + 1 : lines, session.Document.Events.Length);
        Assert.True(doubt is not null || outcome is SessionOutcome.Kept);
    }

    [Fact]
    public void Who_stands_by_it_attaches_it_all_the_same_and_the_file_says_so()
    {
        var session = Pump();
        session.Record("12.6", Volts(session, "key off", "BAT.pos", "BAT.neg"), confirmed: true);
        BenchValue[] measured = [new(BenchQuantity.RestVolts, 9)];
        var doubted = Assert.IsType<SessionOutcome.Doubted>(session.Attach("battery", Found(session, "battery-low:BAT"), [], measured));

        // Which finding, which reading by number and name, what it was, and what the bench says.
        Assert.Equal("noticed-of.battery-low", Assert.IsType<Message>(doubted.Message.Arguments[0]).Code);
        Assert.Equal(1, doubted.Message.Arguments[1]);
        Assert.Equal(["12.6 V", "9 V"], doubted.Message.Arguments.Skip(3).Select(a => a.ToString()));
        Assert.IsType<SessionOutcome.Kept>(session.Attach("battery", Found(session, "battery-low:BAT"), [], measured, confirmed: true));
        Assert.True(SessionJob.Open(JobDocument.Read(session.Document.ToJsonLines()).Document).State.Found.Single().Confirmed);
    }

    [Fact]
    public void A_winding_is_held_against_its_own_ohms()
    {
        var session = Pump();
        session.Record("84", Coil(session), confirmed: true);

        Assert.IsType<SessionOutcome.Doubted>(session.Attach("winding", Found(session, "relay-coil-open:K2"), [], [new(BenchQuantity.WindingOhms, double.PositiveInfinity)]));
        Assert.IsType<SessionOutcome.Doubted>(session.Attach("winding", Found(session, "relay-coil-shorted:K2"), [], [new(BenchQuantity.WindingOhms, 12)]));
        Assert.IsType<SessionOutcome.Kept>(session.Attach("winding", Found(session, "relay-coil-good:K2"), [], [new(BenchQuantity.WindingOhms, 88)]));
    }

    /// <summary>Ohms of a coil as the job read them and as the bench did; whether they can't be of one coil.</summary>
    [Theory]
    [InlineData("OL", 150_000, false)]
    [InlineData("OL", 88, true)]
    [InlineData("250 kΩ", double.PositiveInfinity, false)]
    [InlineData("250 kΩ", 900_000, false)]
    [InlineData("250 kΩ", 88, true)]
    [InlineData("84", 150_000, true)]
    [InlineData("84", 88, false)]
    public void What_is_as_good_as_open_is_open_on_both_sides(string read, double measured, bool isDoubted)
    {
        var session = Pump();
        Assert.IsType<SessionOutcome.Kept>(session.Record(read, Coil(session), confirmed: true));

        var outcome = session.Attach("winding", Found(session, "relay-coil-good:K2"), [], [new(BenchQuantity.WindingOhms, measured)]);
        Assert.Equal(isDoubted, outcome is SessionOutcome.Doubted);
    }

    [Fact]
    public void What_was_read_before_a_repair_is_held_against_nothing_but_the_part_by_itself()
    {
        var session = Pump();
        session.Record("84", Coil(session), confirmed: true);
        session.Record("12.4", Volts(session, "priming", "F19.1p", "BAT.neg"), confirmed: true);
        Assert.IsType<SessionOutcome.Kept>(session.Record("done", session.FindCheck(Check.Create(
            CheckKind.Repair, CheckSubject.Repair, new Arrangement("key off"), new Probe(Instrument.Eye, null, null, "G2"), "clean-ground G2").Id)));

        Assert.IsType<SessionOutcome.Doubted>(session.Attach("winding", Found(session, "relay-coil-shorted:K2"), [], [new(BenchQuantity.WindingOhms, 12)]));
        Assert.IsType<SessionOutcome.Kept>(session.Attach("fuse", Found(session, "fuse-blown:F19"), [], [new(BenchQuantity.TabVolts, 0.02)]));
    }

    // The blower runs with the ignition on, and not in the accessory position; with the engine running the supply is another.
    [Theory]
    [InlineData("key on", true)]
    [InlineData("accessory", false)]
    [InlineData("running", false)]
    public void A_motors_current_is_held_against_what_was_read_while_it_should_run(string condition, bool isDoubted)
    {
        var session = SessionJob.Open(SessionJob.Opened("accessory-socket"));
        var wire = session.Circuit.Wires.Single(w => w.To == new TerminalName("BM", "pos")).Id;
        var clamp = session.FindCheck(Check.Create(
            CheckKind.Reading, CheckSubject.Number, new Arrangement(condition), new Probe(Instrument.AmpsClamp, null, null, wire)).Id)!;
        // Turned round, the clamp shows the same amps with a minus.
        Assert.IsType<SessionOutcome.Kept>(session.Record("-3.1", clamp, confirmed: true));

        var outcome = session.Attach("motor", Found(session, "motor-good:BM"), [], [new(BenchQuantity.RunningAmps, 12)]);
        Assert.Equal(isDoubted, outcome is SessionOutcome.Doubted);
    }

    // The same finding of the same contact: what was measured says which degree of the fault it speaks for.
    [Theory]
    [InlineData(0.4)]
    [InlineData(6.9)]
    public void A_measured_contact_lifts_the_degrees_near_its_own_ohms_alone(double ohms)
    {
        var plain = Pump();
        var measured = Pump();
        foreach (var session in new[] { plain, measured })
        {
            session.Attach("contact", Found(session, "relay-contact-bad:K2"), [], session == measured ? [new(BenchQuantity.ContactOhms, ohms)] : []);
        }

        var weight = Assert.Single(measured.Investigation.NoticedWeights());
        var cars = weight.Space.Hypotheses
            .Where(h => h.Faults is [{ Part: "K2", Mode: "contact-resistive", Severity: not null }])
            .Select(h => (Ohms: h.Faults[0].Severity!.Value, Log: weight.LogLikelihoods[h.Index])).ToList();
        var nearest = cars.MinBy(c => Math.Abs(Math.Log(c.Ohms / ohms)));
        var farthest = cars.MaxBy(c => Math.Abs(Math.Log(c.Ohms / ohms)));

        Assert.True(nearest.Log > farthest.Log + Math.Log(10), $"{nearest} {farthest}");
        Assert.All(cars.Where(c => Math.Abs(Math.Log10(c.Ohms / ohms)) > 1.5), c => Assert.Equal(farthest.Log, c.Log, 0.05));
        Assert.Equal(measured.Odds(), SessionJob.Open(JobDocument.Read(measured.Document.ToJsonLines()).Document).Odds());
        Assert.NotEqual(plain.Odds(), measured.Odds());
    }

    // A contact of 90 mΩ is bad, and no reason for one of 6.9 Ω, nor for one that is open.
    [Fact]
    public void A_mild_contact_says_nothing_for_a_bad_one()
    {
        var session = Pump();
        session.Attach("contact", Found(session, "relay-contact-bad:K2"), [], [new(BenchQuantity.ContactOhms, 0.09)]);
        var weight = Assert.Single(session.Investigation.NoticedWeights());

        var car = weight.Space.Hypotheses
            .Where(h => h.Faults is [{ Part: "K2", Mode: "contact-resistive", Severity: not null }])
            .MinBy(h => Math.Abs(Math.Log(h.Faults[0].Severity!.Value / 6.9)))!;
        var open = weight.Space.Hypotheses.First(h => h.Faults is [{ Part: "K2", Mode: "contact-open" }]);
        Assert.Equal(Math.Log(weight.What.Kind.Otherwise), weight.LogLikelihoods[car.Index], 0.01);
        Assert.Equal(Math.Log(weight.What.Kind.Otherwise), weight.LogLikelihoods[open.Index], 0.01);
    }

    private static Check Coil(JobSession session) => session.FindCheck(Check.Create(
        CheckKind.Reading, CheckSubject.Number, new Arrangement(CheckCatalog.RestCondition(session.Circuit)).Remove("K2"),
        new Probe(Instrument.Ohms, new("K2", "86p"), new("K2", "85p"))).Id)!;

    private static Check Volts(JobSession session, string condition, string red, string black) => session.FindCheck(Check.Create(
        CheckKind.Reading, CheckSubject.Number, new Arrangement(condition),
        new Probe(Instrument.Volts, TerminalName.Parse(red), TerminalName.Parse(black))).Id)!;
}
