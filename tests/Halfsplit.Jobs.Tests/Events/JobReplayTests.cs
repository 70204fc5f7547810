using CsCheck;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Xunit;

namespace Halfsplit.Jobs.Tests.Events;

public class JobReplayTests
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);
    private static readonly JobOpened Opened = new(Id(1), Noon, "pump", "sheet: 1", "1", "0.1.0") { Complaint = "no start" };

    [Fact]
    public void What_is_not_withdrawn_is_in_force_in_order()
    {
        var state = Replay(
            Opened, Reading(2), Reading(3), new ReadingWithdrawn(Id(4), Noon, Id(2)),
            new CheckSkipped(Id(5), Noon, SkipReason.CannotReach) { Place = "boot floor" },
            new RepairDone(Id(6), Noon, "G2 resistive", "clean-ground"),
            new ProofTaken(Id(7), Noon, Reading(7).Observation) { Proves = Id(6) });
        Assert.Equal(Opened, state.Opened);
        Assert.Equal([Id(3)], state.Readings.Select(reading => reading.Id));
        Assert.Equal([Id(2)], state.Withdrawn);
        Assert.Equal("boot floor", Assert.Single(state.Skips).Place);
        Assert.Equal(Id(6), Assert.Single(state.Repairs).Id);
        Assert.Equal(Id(6), Assert.Single(state.Proofs).Proves);
        Assert.Equal([Id(1), Id(3), Id(5), Id(6), Id(7)], state.InForce.Select(happened => happened.Id));
        Assert.Equal(Id(7), state.LastToWithdraw?.Id);
        Assert.False(state.IsClosed);
        Assert.Empty(state.Problems);
    }

    [Fact]
    public void A_withdrawn_withdrawal_takes_nothing_back()
    {
        var state = Replay(
            Opened, Reading(2), new ReadingWithdrawn(Id(3), Noon, Id(2)), new ReadingWithdrawn(Id(4), Noon, Id(3)));
        Assert.Equal([Id(2)], state.Readings.Select(reading => reading.Id));
        Assert.Equal([Id(3)], state.Withdrawn);
    }

    [Fact]
    public void A_withdrawn_close_opens_the_job_again()
    {
        var closed = new JobClosed(Id(2), Noon, JobOutcome.Proven);
        Assert.True(Replay(Opened, closed).IsClosed);
        Assert.False(Replay(Opened, closed, new ReadingWithdrawn(Id(3), Noon, Id(2))).IsClosed);
    }

    [Theory]
    [InlineData(1, "the opening")]
    [InlineData(9, "what comes later")]
    [InlineData(3, "itself")]
    [InlineData(5, "nothing")]
    public void A_withdrawal_of_what_cannot_be_withdrawn_is_a_problem_and_changes_nothing(int target, string reason)
    {
        Assert.NotEmpty(reason);
        var state = Replay(Opened, Reading(2), new ReadingWithdrawn(Id(3), Noon, Id(target)), Reading(9));
        Assert.Equal("job.withdraws-nothing", Assert.Single(state.Problems).Code);
        Assert.Equal(Opened, state.Opened);
        Assert.Equal([Id(2), Id(9)], state.Readings.Select(reading => reading.Id));
    }

    [Fact]
    public void Odd_jobs_are_told_about()
    {
        Assert.Equal(["job.not-opened"], Replay(Reading(2)).Problems.Select(problem => problem.Code));
        var second = Opened with { Id = Id(3) };
        var state = Replay(Opened, Reading(2), second);
        Assert.Equal(["job.opened-twice"], state.Problems.Select(problem => problem.Code));
        Assert.Equal(Id(1), state.Opened?.Id);

        var unknown = StoredEvent.Read($$"""{"event":"sound","id":"{{Id(8)}}"}""")!;
        state = JobReplay.Replay([StoredEvent.Of(Opened), unknown]);
        Assert.Equal(Id(8), Assert.Single(state.Unknown).Id);
        Assert.Equal([Id(1)], state.InForce.Select(happened => happened.Id));
    }

    [Fact]
    public void The_order_in_which_events_arrive_does_not_matter() =>
        Gen.Select(Withdrawals().Array[0, 12], Gen.Int[0, 1000]).Sample((events, seed) =>
        {
            var stored = events.Select(StoredEvent.Of).ToArray();
            var one = JobReplay.Replay([.. stored]);
            new Random(seed).Shuffle(stored);
            var other = JobReplay.Replay([.. stored]);
            Assert.Equal(one.InForce, other.InForce);
            Assert.Equal(one.Withdrawn.Order(), other.Withdrawn.Order());
            Assert.Equal(one.Problems, other.Problems);
        });

    [Fact]
    public void An_event_counts_unless_a_withdrawal_that_counts_aims_at_it() =>
        Withdrawals().Array[0, 12].Sample(events =>
        {
            var state = JobReplay.Replay(JobDocument.Of(events.Select(StoredEvent.Of)));
            var ids = events.Select(happened => happened.Id).ToHashSet();
            foreach (var happened in events)
            {
                var aimedAt = events.OfType<ReadingWithdrawn>().Any(withdrawal =>
                    withdrawal.Withdraws == happened.Id && withdrawal.Id > happened.Id
                    && !state.Withdrawn.Contains(withdrawal.Id));
                Assert.Equal(aimedAt, state.Withdrawn.Contains(happened.Id));
            }

            Assert.True(state.Withdrawn.IsSubsetOf(ids));
        });

    private static Gen<JobEvent> Withdrawals() =>
        Gen.Select(Gen.Int[1, 12], Gen.Int[1, 12], Gen.Bool).Select((id, target, withdraws) =>
            withdraws ? new ReadingWithdrawn(Id(id), Noon, Id(target)) : (JobEvent)Reading(id));

    private static JobState Replay(params JobEvent[] events) => JobReplay.Replay(JobDocument.Of(events.Select(StoredEvent.Of)));

    private static EventId Id(int number) => new(((UInt128)1_800_000_000_000 << 80) | (UInt128)number);

    private static ReadingTaken Reading(int id) => new(
        Id(id),
        Noon,
        new Observation("c", "reading", new ArrangementUsed("key off"), "volts", "12.4", new ReadingParse.Number(12.4, Quantity.Volts, 0.1)));
}
