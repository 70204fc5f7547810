using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Verbs;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Noticing;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Jobs.Sessions;

namespace Halfsplit.Cli.Conversation;

/// <summary>One job as a conversation, until it is done, the person quits, or the input ends.</summary>
public sealed class Diagnosing(Terminal terminal, JobSession session)
{
    /// <summary>The check the person chose from the list; null for the one that is asked.</summary>
    private RankedCheck? _chosen;

    private Dictionary<string, double>? _before;

    /// <summary>Talks to the end. True when the job is done.</summary>
    public bool Run()
    {
        while (!session.IsDone)
        {
            Show();
            if (!Listen())
            {
                return false;
            }
        }

        Status.Draw(terminal, session);
        return true;
    }

    /// <summary>What is asked, after what the last answer moved.</summary>
    private void Show()
    {
        terminal.While(() => session.Next);
        if (_before is not null && SuspectList.Moved(session, _before))
        {
            terminal.Line(terminal.Say("talk.moved"), Page.Heading);
            SuspectList.Draw(terminal, session, 6, _before);
            terminal.Blank();
        }

        _before = null;
        if (_chosen is { } chosen)
        {
            CheckPage.Draw(
                terminal, session, chosen.Check, chosen.Effort, new Message("reason.chosen"),
                Cautions.For(session.Circuit, session.Investigation.Options, session.Position, chosen.Check));
        }
        else
        {
            Next.Draw(terminal, session);
            var others = session.Next.Alternatives;
            if (others.Length > 0)
            {
                terminal.Row(
                    terminal.Say("talk.or-else"),
                    terminal.Say("talk.or-else-first", terminal.Say(CheckTitle.Of(session.Circuit, others[0].Check)), others.Length));
            }
        }

        if (Asked is { } check)
        {
            CheckPage.Answers(terminal, session, check);
        }

        terminal.Row(terminal.Say("talk.or-type"), terminal.Say("talk.commands"));
    }

    private Check? Asked => _chosen?.Check ?? session.Next.Check;

    /// <summary>Takes lines until one changes what is asked. False when the conversation ends.</summary>
    private bool Listen()
    {
        while (true)
        {
            if (Prompt.Ask(terminal) is not { } line)
            {
                terminal.Line(terminal.Say("talk.input-ended"), Page.Caution);
                return false;
            }

            if (line.Length == 0)
            {
                continue;
            }

            var (command, rest) = TalkCommand.Read(line);
            switch (command)
            {
                case "quit" when rest.Length == 0:
                    return false;
                case "help" when rest.Length == 0:
                    terminal.Line(terminal.Say("talk.help"));
                    break;
                case "status" when rest.Length == 0:
                    Status.Draw(terminal, session);
                    break;
                case "why" when rest.Length == 0:
                    Why();
                    break;
                case "list" when rest.Length == 0:
                    return Choose() is { } goOn ? goOn : true;
                case "note":
                    Tell(session.Note(rest), "note.saved");
                    break;
                case "notice":
                    if (Notice(rest))
                    {
                        return true;
                    }

                    break;
                case "back" when rest.Length == 0:
                    if (Back())
                    {
                        return true;
                    }

                    break;
                case "skip":
                    if (Skip(rest))
                    {
                        return true;
                    }

                    break;
                case "hand-over":
                    TroublePage.PutBack(terminal, session.Investigation.PutBackList);
                    Tell(session.HandOver(null, rest.Length > 0 ? rest : null), "done.handed-over");
                    return true;
                default:
                    if (Answer(line))
                    {
                        return true;
                    }

                    break;
            }
        }
    }

    /// <summary>Something noticed on the way; without a name, what can be said.</summary>
    private bool Notice(string rest)
    {
        if (rest.Length == 0)
        {
            NoticedPage.Choices(terminal, session.Circuit, session.Investigation.Complaint);
            return false;
        }

        var (what, problem) = NoticedChoice.Read(session.Circuit, session.Investigation.Complaint, rest);
        if (what is null)
        {
            terminal.Line(problem!, Page.Caution);
            return false;
        }

        Remember();
        var outcome = terminal.While(() => session.Notice(what));
        Tell(outcome, "notice.saved", terminal.Say(NoticedText.Of(session.Circuit, what)));
        _chosen = outcome is SessionOutcome.Kept ? null : _chosen;
        return outcome is SessionOutcome.Kept;
    }

    private bool Answer(string line)
    {
        var check = Asked;
        Remember();
        var outcome = terminal.While(() => session.Record(line, check, words: CliTexts.Words));
        if (outcome is SessionOutcome.Asked asked)
        {
            outcome = Doubt(line, check, asked.Question);
        }

        switch (outcome)
        {
            case SessionOutcome.Kept:
                terminal.Line(
                    terminal.Say("record.saved", EntryText.Of(terminal, session, session.Entries[^1])), Page.Good, 0, 4);
                ClearancePage.Draw(terminal, session, session.Entries[^1], most: 1);
                terminal.Blank();
                _chosen = null;
                return true;
            case null:
                break;
            default:
                Tell(outcome, "");
                break;
        }

        _before = null;
        return false;
    }

    /// <summary>A doubtful reading is asked back: yes, one of the other meanings by its number, or another reading.</summary>
    private SessionOutcome? Doubt(string line, Check? check, ReadingParse.Question question)
    {
        terminal.Line(terminal.Say(question.Message), Page.Caution);
        terminal.Line(terminal.Say("talk.yes", EntryText.Value(question.Meant)), null, 2);
        for (var i = 0; i < question.Alternatives.Length; i++)
        {
            terminal.Line(terminal.Say("talk.other", i + 1, EntryText.Value(question.Alternatives[i])), null, 2);
        }

        terminal.Line(terminal.Say("talk.no"), null, 2);
        var answer = Prompt.Ask(terminal) ?? "";
        if (TalkCommand.IsYes(answer))
        {
            return session.Record(line, check, confirmed: true);
        }

        for (var i = 0; i < question.Alternatives.Length; i++)
        {
            if (answer == (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture))
            {
                return session.Record(EntryText.Value(question.Alternatives[i]), check, confirmed: true);
            }
        }

        terminal.Line(terminal.Say("talk.not-recorded"));
        return null;
    }

    private bool Back()
    {
        if (session.Entries.Count == 0)
        {
            terminal.Line(terminal.Say("session.nothing-to-withdraw"));
            return false;
        }

        Remember();
        var text = EntryText.Of(terminal, session, session.Entries[^1]);
        Tell(terminal.While(() => session.Withdraw()), "withdraw.done", text);
        _chosen = null;
        return true;
    }

    private bool Skip(string rest)
    {
        if (Asked is not { } check)
        {
            terminal.Line(terminal.Say("session.nothing-asked"));
            return false;
        }

        string? place = null;
        if (TalkCommand.Place(rest) is { } named)
        {
            var names = new Cars.Names(new Simulation.CircuitSimulator(session.Investigation.Network));
            place = named.Length > 0 ? names.PlaceOrPart(named) : session.HardestPlace(check);
            if (place is null)
            {
                terminal.Line(names.Problems.Count > 0 ? names.Problems[0] : new Message("skip.no-place"), Page.Caution);
                return false;
            }
        }

        var outcome = session.Skip(check, place);
        if (outcome is not SessionOutcome.Kept)
        {
            Tell(outcome, "");
            return false;
        }

        terminal.Line(terminal.Say("record.saved", EntryText.Of(terminal, session, session.Entries[^1])), Page.Good, 0, 4);
        terminal.Blank();
        _chosen = null;
        return true;
    }

    private void Why()
    {
        terminal.Line(_chosen is null ? session.Next.Reason : new Message("reason.chosen"));
        if (session.Entries.Count > 0)
        {
            terminal.Blank();
            terminal.Line(EntryText.Of(terminal, session, session.Entries[^1]), null, 2, 4);
            ClearancePage.Draw(terminal, session, session.Entries[^1], most: 6);
            terminal.Blank();
        }

        SuspectList.Draw(terminal, session, 8);
        if (session.Investigation.PresentFinding() is { } finding && session.Entries.Count > 0)
        {
            terminal.Blank();
            terminal.Line(terminal.Say("why.would-be"));
            FindingPage.Draw(terminal, session, finding, isAdvice: false);
            NotProvenPage.Draw(terminal, session);
        }
    }

    /// <summary>Lets the person choose another check. Null and false go on; false only when the input ended.</summary>
    private bool? Choose()
    {
        ImmutableArray<RankedCheck> ranked = terminal.While(() => session.Investigation.RankedNow());
        CheckList.Draw(terminal, session, ranked);
        if (ranked.Length == 0)
        {
            return null;
        }

        terminal.Line(terminal.Say("list.choose"));
        var answer = Prompt.Ask(terminal);
        _chosen = answer is null ? _chosen : CheckList.Choose(ranked, answer);
        return answer is null ? false : null;
    }

    private void Remember() =>
        _before = session.Investigation.Suspects.ToDictionary(s => s.Suspect.Id, s => s.Odds, StringComparer.Ordinal);

    private void Tell(SessionOutcome outcome, string code, params object[] arguments)
    {
        if (outcome is SessionOutcome.Kept)
        {
            terminal.Line(terminal.Say("record.saved", terminal.Say(code, arguments)), Page.Good);
            return;
        }

        terminal.Line(
            outcome switch
            {
                SessionOutcome.Refused refused => refused.Message,
                SessionOutcome.Misplaced misplaced => misplaced.Message,
                SessionOutcome.NotKept lost => lost.Message,
                _ => new Message("talk.not-recorded"),
            },
            Page.Caution);
    }
}
