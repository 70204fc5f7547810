using Halfsplit.App.Views;
using Halfsplit.Circuits.Messages;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Desk;

public sealed partial class EngineDesk
{
    /// <summary>The parts of the job that a result of the bench can be about.</summary>
    private static DeskReply BenchParts(JobSession session, AttachWish wish) => PartFindings.Find(wish.Found) is not { } kind
        ? Trouble("app.bench.nothing-to-attach")
        : new DeskReply
        {
            Parts = [.. PartFindings.PartsOf(session.Circuit, session.Investigation.Complaint, kind, [.. wish.PartKinds])
                .Select(p => new BenchPartView(p, AppTexts.Catalog.Say(Describe.Target(session.Circuit, p))))],
        };

    /// <summary>Attaches a result of the bench: the same call as the terminal's.</summary>
    private DeskReply Attach(JobSession session, AttachWish wish, bool confirmed)
    {
        if (PartFindings.Find(wish.Found) is not { } kind)
        {
            return Trouble("app.bench.nothing-to-attach");
        }

        var (what, problem) = PartFindings.On(session.Circuit, session.Investigation.Complaint, kind, wish.Part, [.. wish.PartKinds]);
        if (what is null)
        {
            return new DeskReply { Problem = AppTexts.Catalog.Say(problem!) };
        }

        var before = Odds(session);
        var measured = wish.Measured.Select(m => new BenchValue(Enum.Parse<BenchQuantity>(m.What), m.Value ?? double.PositiveInfinity)).ToList();
        var outcome = session.Attach(wish.Aid, what, wish.Typed, measured, confirmed);
        return outcome is SessionOutcome.Doubted doubted ? new DeskReply { Misfit = AppTexts.Catalog.Say(doubted.Message) } : Tell(outcome, before);
    }
}
