using System.Collections.Immutable;
using System.Text;
using Halfsplit.App.Showing;
using Halfsplit.Bench.Motors;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Jobs.Events;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.App.Desk;

/// <summary>
/// The engine's side of the app: one job at a time, one request after the other. It runs in a worker of its own, so that
/// the screen never waits for it, and has no clock, store or page of its own.
/// </summary>
public sealed partial class EngineDesk(EventStamps stamps)
{
    /// <summary>Cars whose answers are worked out at a time: short enough for what the person asks in between.</summary>
    public const int Piece = 48;

    private readonly StagedStore _store = new();
    private JobSession? _session;

    /// <summary>The last job that was opened or laid out: another that begins as it did is soon open.</summary>
    private JobSession? _alike;

    /// <summary>The check the person chose; null for the one that is asked.</summary>
    private Check? _chosen;

    /// <summary>Odds before the last answer, to be told with what it did.</summary>
    private Dictionary<string, double>? _before;

    /// <summary>Answers one request.</summary>
    public DeskReply Answer(DeskRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        return request.Verb switch
        {
            "wake" => new DeskReply(),
            "opening" => OpeningViews.Of(request.Text!, request.Name!) is { } opening
                ? new DeskReply { Opening = opening }
                : Trouble("app.opening.unknown", request.Name!),
            "lay-out" => LayOut(request.Wish!),
            "begin" => Begin(request.Wish!),
            "open" => Open(request.Lines!),
            _ => _session is { } session ? Answer(session, request) : Trouble("app.desk.no-job"),
        };
    }

    /// <summary>Answers a request about the open job.</summary>
    private DeskReply Answer(JobSession session, DeskRequest request) => request.Verb switch
    {
        "job" => Whole(),
        "next" => Sure(session),
        "sight" => Sight(session),
        "told" => Told(session),
        "prepare" => Prepare(session, request),
        "record" => Record(session, request),
        "skip" => Skip(session, request),
        "withdraw" => Withdraw(session, request.Entry),
        "notice" => Notice(session, request.Name!),
        "bench-parts" => BenchParts(session, request.Attach!),
        "bench-rated" => new DeskReply { Rated = SheetRating.Of(session.Circuit) },
        "attach" => Attach(session, request.Attach!, request.Confirmed),
        "note" => Tell(session.Note(request.Text!)),
        "hand-over" => Tell(session.HandOver(request.Name, request.Text)),
        "choose" => Choose(session, request),
        "why" => new DeskReply { Why = WhyViews.Of(session, _chosen, session.FirstSight) },
        "ranked" => new DeskReply { Ranked = WhyViews.Ranked(session, session.Investigation.RankedNow()) },
        "noticeable" => new DeskReply { Noticeable = OpeningViews.Noticeable(session.Circuit, session.Investigation.Complaint) },
        "put-back" => new DeskReply { PutBack = StepViews.PutBack(session.Investigation.PutBackList) },
        "circuit" => new DeskReply { Circuit = CircuitViews.Of(session, request.Text, Find(session, request.Check)) },
        "report" => new DeskReply { Report = ReportViews.Of(session, request.Name!) },
        "describe" => Tell(session.Describe(request.Text, request.Name, request.Worker)),
        "part" => CircuitViews.State(session, request.Name!, request.Text) is { } part
            ? new DeskReply { Part = part }
            : Trouble("app.desk.no-part", request.Name!),
        "between" => CircuitViews.CheckOf(session, request.Points!) is { } check
            ? new DeskReply { Between = CircuitViews.Between(session, check) }
            : Trouble("app.between.no-points"),
        "ahead" => Ahead(session, request),
        _ => throw new ArgumentOutOfRangeException(nameof(request), request.Verb, "The desk knows no such verb."),
    };

    /// <summary>
    /// Works out what opening a job will need, while the person still reads the safety page. Nothing is opened and nothing
    /// kept; a job that was open is put away.
    /// </summary>
    private DeskReply LayOut(JobWish wish)
    {
        var (opened, _, problem) = Opening(wish);
        if (opened is null)
        {
            return problem!;
        }

        (_session, _chosen, _before) = (null, null, null);
        var document = JobDocument.Of([StoredEvent.Of(opened)]);
        if (_alike?.BeginsAs(document) is not true && JobSession.Open(document, NothingKept.Instance, stamps).Session is { } session)
        {
            _alike = session;
            _ = JobViews.Of(session);
            _ = session.FirstSight;
        }

        return new DeskReply();
    }

    private DeskReply Begin(JobWish wish)
    {
        var (opened, more, problem) = Opening(wish);
        if (opened is null)
        {
            return problem!;
        }

        var reply = Open(JobDocument.Of([StoredEvent.Of(opened), .. more.Select(StoredEvent.Of)]));
        return reply.Job is null ? reply : reply with { Keep = StagedStore.Order(opened.Id, null, [opened, .. more]) };
    }

    /// <summary>The events that open a job; or why there are none.</summary>
    private (JobOpened? Opened, ImmutableArray<ThingNoticed> More, DeskReply? Problem) Opening(JobWish wish)
    {
        var text = ShippedSheets.Text(wish.Sheet);
        if (text is null || SheetReader.Read(text).Circuit is not { } circuit
            || OpeningViews.Complaint(circuit, wish.Complaint) is not { } complaint)
        {
            return (null, [], Trouble("app.opening.unknown", wish.Complaint));
        }

        var noticed = OpeningViews.Noticed(circuit, complaint, wish.Noticed);
        if (JobSession.FirstContradiction(noticed) is { } other)
        {
            return (null, [], Trouble("app.opening.contradicts", AppTexts.Catalog.Say(NoticedText.Of(circuit, other))));
        }

        var opened = JobOpening.Create(
            stamps, wish.Sheet, text, complaint, OpeningViews.Options(wish), wish.Unreachable, wish.Vehicle.Trim());
        return (opened, JobOpening.Noticed(stamps, opened, noticed), null);
    }

    private DeskReply Open(string[] lines) =>
        Open(JobDocument.Read(Encoding.UTF8.GetBytes(string.Join('\n', lines))).Document);

    private DeskReply Open(JobDocument document)
    {
        (_chosen, _before) = (null, null);
        _session = null;
        // What another circuit took is let go of first: a phone has not the room for two.
        _alike = _alike?.BeginsAs(document) is true ? _alike : null;
        var opened = JobSession.Open(document, _store, stamps, _alike);
        if (!opened.IsOpen)
        {
            return new DeskReply { Problem = AppTexts.Catalog.Say(opened.Problem) };
        }

        _alike = _session = opened.Session;
        return Whole();
    }

    private DeskReply Record(JobSession session, DeskRequest request)
    {
        var check = Find(session, request.Check);
        if (request.Check is not null && check is null)
        {
            return Trouble("app.desk.no-check");
        }

        var before = Odds(session);
        var outcome = session.Record(request.Typed ?? "", check, request.Confirmed);
        if (outcome is SessionOutcome.Asked asked)
        {
            return new DeskReply
            {
                Doubt = new Views.DoubtView(
                    AppTexts.Catalog.Say(asked.Question.Message), EntryViews.Value(asked.Question.Meant),
                    [.. asked.Question.Alternatives.Select(a => new Views.MeaningView(a.ToString()!, EntryViews.Value(a)))]),
            };
        }

        if (Trouble(outcome) is { } trouble)
        {
            return trouble;
        }

        // What it did is told when asked for: keeping an answer must not wait for it.
        (_chosen, _before) = (null, before);
        return new DeskReply { Saved = JobViews.Kept(session, session.Entries[^1]), Keep = _store.Take(session.Opened.Id) };
    }

    /// <summary>What the last answer did, and how the job stands.</summary>
    private DeskReply Told(JobSession session) => new()
    {
        Job = JobViews.Of(session, _before),
        Saved = session.Entries.Count > 0 ? JobViews.Saved(session, session.Entries[^1]) : null,
    };

    /// <summary>Works out what the cars would answer to the check that is asked, a piece at a time, while the person walks to it.</summary>
    private DeskReply Prepare(JobSession session, DeskRequest request) => new()
    {
        HasMore = Find(session, request.Check) is { } check && session.Investigation.Prepare(check, request.From, Piece),
    };

    private DeskReply Skip(JobSession session, DeskRequest request)
    {
        var check = Find(session, request.Check);
        var place = request.Place is "hardest" && (check ?? session.Next.Check) is { } asked
            ? session.HardestPlace(asked)
            : request.Place;
        return Tell(session.Skip(check, place, request.Reason switch
        {
            "not-sure" => SkipReason.NotSure,
            "no-tool" => SkipReason.NoTool,
            _ => SkipReason.CannotReach,
        }));
    }

    private DeskReply Withdraw(JobSession session, int? number)
    {
        var target = number is null ? null : session.Entries.FirstOrDefault(e => e.Number == number);
        return Tell(session.Withdraw(target), Odds(session));
    }

    private DeskReply Notice(JobSession session, string said)
    {
        var (what, problem) = NoticedChoice.Read(session.Circuit, session.Investigation.Complaint, said);
        return what is null
            ? new DeskReply { Problem = AppTexts.Catalog.Say(problem!) }
            : Tell(session.Notice(what), Odds(session));
    }

    /// <summary>A check of the list, or any two points; without either, back to the one that is asked.</summary>
    private DeskReply Choose(JobSession session, DeskRequest request)
    {
        _chosen = request.Points is { } points ? CircuitViews.CheckOf(session, points)
            : request.Check is { } id ? session.FindCheck(id)
            : null;
        return _chosen is null && (request.Points is not null || request.Check is not null) ? Trouble("app.desk.no-check") : Step();
    }

    private DeskReply Step() => _chosen is { } check ? new DeskReply { Step = StepViews.Chosen(_session!, check) } : Sight(_session!);

    private DeskReply Sure(JobSession session)
    {
        if (_chosen is not null)
        {
            return Step();
        }

        var next = session.Next;
        return new DeskReply { Step = StepViews.Of(session, next) with { Why = WhyViews.Of(session, null, next) } };
    }

    /// <summary>What to do now, soon: where no rule decides, planned roughly; no step where that finds no check.</summary>
    private DeskReply Sight(JobSession session)
    {
        if (_chosen is not null)
        {
            return Step();
        }

        var sight = session.FirstSight;
        return sight is { Plan: not null, Check: not { Kind: not CheckKind.Repair } }
            ? new DeskReply { IsSure = false }
            : new DeskReply { Step = StepViews.Of(session, sight), IsSure = sight.Plan is null };
    }

    private DeskReply Whole() => new() { Job = JobViews.Of(_session!) };

    private Check? Find(JobSession session, string? id) =>
        id is null ? _chosen : _chosen is { } chosen && chosen.Id == id ? chosen : session.FindCheck(id);

    private DeskReply Tell(SessionOutcome outcome, Dictionary<string, double>? before = null)
    {
        if (Trouble(outcome) is { } trouble)
        {
            return trouble;
        }

        (_chosen, _before) = (null, before);
        return new DeskReply { Job = JobViews.Of(_session!, before), Keep = _store.Take(_session!.Opened.Id) };
    }

    /// <summary>Why nothing was kept; null where it was.</summary>
    private static DeskReply? Trouble(SessionOutcome outcome)
    {
        var problem = outcome switch
        {
            SessionOutcome.Kept => null,
            SessionOutcome.Refused refused => refused.Message,
            SessionOutcome.Misplaced misplaced => misplaced.Message,
            SessionOutcome.Doubted doubted => doubted.Message,
            SessionOutcome.NotKept lost => lost.Message,
            _ => new Circuits.Messages.Message("app.desk.not-recorded"),
        };
        return problem is null ? null : new DeskReply { Problem = AppTexts.Catalog.Say(problem) };
    }

    private static Dictionary<string, double> Odds(JobSession session) =>
        session.Investigation.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);

    private static DeskReply Trouble(string code, params object[] arguments) => new() { Problem = AppTexts.Say(code, arguments) };
}
