using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;
using Xunit;

namespace Halfsplit.Jobs.Tests.Sessions;

public sealed class NoticingTests
{
    private static Noticed Said(JobSession session, string text) =>
        NoticedChoice.Read(session.Circuit, session.Complaint(), text).What!;

    [Fact]
    public void What_was_noticed_survives_the_file_and_moves_the_odds_again()
    {
        var session = SessionJob.Began("dim");
        var before = session.Odds();
        Assert.IsType<SessionOutcome.Kept>(session.Notice(Said(session, "others-dim:PL")));
        var again = SessionJob.Open(JobDocument.Read(session.Document.ToJsonLines()).Document);

        Assert.NotEqual(before, session.Odds());
        Assert.Equal(session.Odds(), again.Odds());
        Assert.Equal("others-dim:PL", Assert.Single(again.Noticed).What.ToString());
        Assert.Empty(again.Problems);
    }

    [Fact]
    public void It_can_be_taken_back_and_the_readings_stay()
    {
        var session = SessionJob.Began("dim");
        var before = session.Odds();
        session.Notice(Said(session, "others-dim"));

        Assert.IsType<SessionOutcome.Kept>(session.WithdrawNoticed(Said(session, "others-dim")));
        Assert.Equal(before, session.Odds());
        Assert.Empty(session.Noticed);
        Assert.Single(session.Entries);
        Assert.IsType<SessionOutcome.Misplaced>(session.WithdrawNoticed(Said(session, "others-dim")));
    }

    [Fact]
    public void Taking_a_reading_back_keeps_what_was_noticed()
    {
        var session = SessionJob.Began("dim");
        session.Notice(Said(session, "others-dim"));
        Assert.IsType<SessionOutcome.Kept>(session.Withdraw());

        Assert.Empty(session.Entries);
        Assert.Single(session.Noticed);
        Assert.Equal(SessionJob.Open(session.Document).Odds(), session.Odds());
    }

    [Fact]
    public void Twice_the_same_and_what_contradicts_is_refused()
    {
        var session = SessionJob.Began();
        session.Notice(Said(session, "came-on-suddenly"));

        Assert.Equal("noticed.already", Refusal(session.Notice(Said(session, "came-on-suddenly"))));
        Assert.Equal("noticed.contradicts", Refusal(session.Notice(Said(session, "got-worse-slowly"))));
        Assert.IsType<SessionOutcome.Kept>(session.Notice(Said(session, "fuse-blew:F21")));
        Assert.IsType<SessionOutcome.Kept>(session.Notice(Said(session, "fuse-blew-again:F21")));
        Assert.Equal(3, session.Noticed.Count);

        static string Refusal(SessionOutcome outcome) => Assert.IsType<SessionOutcome.Misplaced>(outcome).Message.Code;
    }

    [Fact]
    public void A_thing_of_a_newer_program_is_kept_and_told()
    {
        var document = SessionJob.Opened();
        var (id, at) = EventStamps.OfThisMachine.Next(document.LastId);
        var session = SessionJob.Open(document.With(new ThingNoticed(id, at, "purple-smoke") { About = "LH" }));

        Assert.Equal("session.unknown-noticed", Assert.Single(session.Problems).Code);
        Assert.Equal(SessionJob.Open(document).Odds(), session.Odds());
    }
}
