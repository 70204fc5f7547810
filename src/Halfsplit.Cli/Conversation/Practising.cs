using System.Collections.Immutable;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Cars;
using Halfsplit.Cli.Output;
using Halfsplit.Cli.Terminals;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Planning;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Diagnosis.Repairs;
using Halfsplit.Jobs.Practice;
using Halfsplit.Jobs.Sessions;
using Halfsplit.Simulation;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Cli.Conversation;

/// <summary>The person plays against a simulated car: reads, guesses, and is told whether the repair helped.</summary>
public sealed class Practising(Terminal terminal, JobSession session, PracticeCar car, bool asJson)
{
    /// <summary>More than a repair has proofs, repeats and the putting back.</summary>
    private const int MostProofs = 20;

    private ImmutableArray<RankedCheck> _listed = [];

    /// <summary>Plays until the car is mended, the person gives up, or the input ends.</summary>
    public PlayScore Run()
    {
        while (true)
        {
            if (Prompt.Ask(terminal, asJson) is not { } line)
            {
                return PlayScore.Of(session, false);
            }

            var (command, rest) = Prompt.Split(line);
            switch (command)
            {
                case "":
                    break;
                case "QUIT" or "GIVE":
                    return PlayScore.Of(session, false);
                case "HELP":
                    Say("practice.help");
                    break;
                case "STATUS":
                    Verbs.Status.Draw(terminal, session);
                    break;
                case "LIST":
                    _listed = terminal.While(() => session.Investigation.RankedNow());
                    CheckList.Draw(terminal, session, _listed);
                    break;
                case "DO":
                    if (Advised())
                    {
                        return PlayScore.Of(session, true);
                    }

                    break;
                case "VOLTS":
                    Volts(rest);
                    break;
                case "REPAIR":
                    if (Guess(rest))
                    {
                        return PlayScore.Of(session, true);
                    }

                    break;
                default:
                    if (CheckList.Choose(_listed, line) is { } chosen)
                    {
                        Do(chosen.Check);
                    }
                    else
                    {
                        Say("practice.unknown", line);
                    }

                    break;
            }
        }
    }

    /// <summary>The engine's own next step. True when that mended the car.</summary>
    private bool Advised()
    {
        var next = terminal.While(() => session.Next);
        switch (next.Check)
        {
            case null:
                terminal.Line(next.Reason, Page.Caution);
                return false;
            case { Kind: CheckKind.Repair } check:
                return Mend(check);
            case var check:
                Do(check);
                return false;
        }
    }

    private void Do(Check check)
    {
        var answer = car.Answer(check);
        var unclear = answer is ReadingParse.Word { Answer: var word } && word == AnswerWord.NotSure;
        var outcome = unclear
            ? session.Skip(check, null, Jobs.Events.SkipReason.NotSure)
            : session.Record(EnginePlay.AsTyped(answer), check, confirmed: true);
        if (outcome is not SessionOutcome.Kept)
        {
            Say("talk.not-recorded");
            return;
        }

        _listed = [];
        var entry = session.Entries[^1];
        var text = EntryText.Of(terminal, session, entry);
        Tell("practice.read", text, CheckPage.Minutes(entry.Minutes), CheckPage.Minutes(session.MinutesSpent));
    }

    /// <summary>"volts RED BLACK", with "in CONDITION" behind it where it is not the complaint's.</summary>
    private void Volts(string rest)
    {
        var parts = rest.Split(" in ", 2, StringSplitOptions.TrimEntries);
        var points = parts[0].Split((char[])[' ', ','], StringSplitOptions.RemoveEmptyEntries);
        var names = new Names(new CircuitSimulator(session.Investigation.Network));
        if (points.Length != 2)
        {
            Say("practice.volts");
            return;
        }

        var condition = parts.Length > 1 ? names.Condition(parts[1]) : session.Investigation.Complaint.Condition;
        var pair = names.Pair($"{points[0]},{points[1]}");
        if (condition is null || pair is not { } leads)
        {
            terminal.Line(names.Problems[0], Page.Caution);
            return;
        }

        if (new[] { leads.First, leads.Second }.Any(t => !MayTouch(session.Circuit[t.Part])))
        {
            Say("practice.no-probing");
            return;
        }

        Do(Check.Create(
            CheckKind.Reading, CheckSubject.Number, new Arrangement(condition), new Probe(Instrument.Volts, leads.First, leads.Second)));
    }

    private bool MayTouch(Part part) =>
        part.Notes.Probe && !Diagnosis.Safety.Cautions.ForbidProbing(session.Circuit, part);

    private bool Guess(string target)
    {
        var known = session.Investigation.Suspects
            .SelectMany(s => s.Suspect.Modes)
            .Select(m => RepairCatalog.For(session.Circuit, m, []))
            .DistinctBy(r => r.Id)
            .ToList();
        var repair = known.Find(r => Same(r.Id, target)) ?? known.Find(r => Same(r.Target, target));
        if (repair is null)
        {
            terminal.Line(new Message(
                "practice.no-repair", target, Spelling.Hint(target, known.Select(r => r.Target)),
                string.Join(", ", known.Select(r => r.Target).Distinct().Order(StringComparer.Ordinal))), Page.Caution);
            return false;
        }

        return StoredRepair(repair) is { } check && Mend(check);
    }

    private Check? StoredRepair(Repair repair) => session.FindCheck(Check.Create(
        CheckKind.Repair, CheckSubject.Repair, new Arrangement(CheckCatalog.RestCondition(session.Circuit)),
        new Probe(Instrument.Eye, null, null, repair.Target), repair.Id).Id);

    /// <summary>Carries a repair out and tries whether it helped.</summary>
    private bool Mend(Check check)
    {
        if (session.RepairOf(check) is not { } repair || session.Record("done", check) is not SessionOutcome.Kept)
        {
            Say("talk.not-recorded");
            return false;
        }

        car.Repair(repair);
        _listed = [];
        Tell(
            "practice.mended", terminal.Say(CheckTitle.Repair(session.Circuit, repair.Id)), repair.Price.Middle,
            CheckPage.Minutes(session.MinutesSpent));
        for (var i = 0; i < MostProofs && !session.IsDone
            && session.Next.Check is { Kind: CheckKind.Proof or CheckKind.PutBack } proof; i++)
        {
            Do(proof);
        }

        return car.IsCured;
    }

    private void Tell(string code, params object[] arguments)
    {
        if (asJson)
        {
            JsonOutput.WriteLine(terminal, json =>
            {
                EntryJson.Write(json, session.Entries[^1]);
                json.WriteString("text", terminal.Say(code, arguments));
                json.WriteNumber("minutesSoFar", Math.Round(session.MinutesSpent, 2));
            });
        }
        else
        {
            terminal.Line(terminal.Say(code, arguments), null, 0, 2);
        }
    }

    private void Say(string code, params object[] arguments)
    {
        if (asJson)
        {
            terminal.Error.WriteLine(terminal.Say(code, arguments));
        }
        else
        {
            terminal.Line(terminal.Say(code, arguments), Page.Caution, 0, 2);
        }
    }

    private static bool Same(string left, string right) => string.Equals(left, right, StringComparison.OrdinalIgnoreCase);
}
