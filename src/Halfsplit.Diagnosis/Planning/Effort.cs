using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Safety;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>The minutes a check takes from where the car stands now, and the steps of the way there.</summary>
/// <param name="Minutes">All of it: access, changes, the reading itself.</param>
/// <param name="Steps">In the order in which they are done.</param>
public sealed record Effort(double Minutes, ImmutableArray<Message> Steps)
{
    private static readonly FrozenDictionary<string, double> Table =
        DataFile.Numbers(typeof(Effort).Assembly, "minutes.csv", "action", "minutes");

    /// <summary>The effort of one check.</summary>
    public static Effort Of(Circuit circuit, DiagnosisOptions options, Position from, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(check);
        var tally = new Tally(circuit, []);
        Count(options, from, check, tally);
        return new Effort(Math.Round(tally.Minutes, 2), [.. tally.Steps!]);
    }

    /// <summary>The minutes alone, without the words.</summary>
    public static double MinutesOf(Circuit circuit, DiagnosisOptions options, Position from, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(check);
        var tally = new Tally(circuit, null);
        Count(options, from, check, tally);
        return Math.Round(tally.Minutes, 2);
    }

    /// <summary>The minutes with what its risks are worth: what checks are chosen by.</summary>
    public static double WeighedMinutesOf(Circuit circuit, DiagnosisOptions options, Position from, Check check) =>
        MinutesOf(circuit, options, from, check) + Risk.MinutesOf(circuit, check);

    private static void Count(DiagnosisOptions options, Position from, Check check, Tally tally)
    {
        Open(from, check, tally);
        Arrange(options, from, check, () => SetUp(from, check, tally), tally);
    }

    /// <summary>Everything between the places and the meter: the same for all checks in one arrangement, those in which the meter takes part apart.</summary>
    internal static double MinutesOfArranging(Circuit circuit, DiagnosisOptions options, Position from, Check check)
    {
        var tally = new Tally(circuit, null);
        Arrange(options, from, check, () => { }, tally);
        return tally.Minutes;
    }

    /// <summary>The reading itself, from wherever: the same for a check at all times.</summary>
    internal static double MinutesOfReading(Circuit circuit, Check check) =>
        Table[ActionOf(check)] + (NeedsLongLead(circuit, check) ? Table["long-lead"] : 0);

    /// <summary>Setting the meter and moving its black lead.</summary>
    internal static double MinutesOfSetting(Position from, Check check) =>
        (ChangesSetting(from, check) ? Table["meter-setting"] : 0) + (MovesBlack(from, check) ? Table["move-black"] : 0);

    private static void Arrange(DiagnosisOptions options, Position from, Check check, Action setUp, Tally tally)
    {
        var condition = Rearrange(from, check, tally);
        if (InstrumentReader.TakesPart(check.Probe.Instrument))
        {
            // What carries current is connected dead and switched on after: no spark at the clips.
            condition = SwitchOff(condition, tally);
            setUp();
            EnterCondition(options, from, condition, check.Arrangement.Condition, tally);
        }
        else
        {
            EnterCondition(options, from, condition, check.Arrangement.Condition, tally);
            setUp();
        }
    }

    /// <summary>Minutes of one kind of action.</summary>
    public static double Minute(string action) => Table[action];

    private static void Open(Position from, Check check, Tally tally)
    {
        foreach (var name in Access.PlacesOf(tally.Circuit, check).Except(from.Arrangement.Opened))
        {
            var place = tally.Circuit.FindPlace(name)!;
            tally.Add(place.OpenMinutes, () => new Message("step.open", name, place.Tools.Length == 0
                ? new Message("step.no-tools")
                : new Message("step.tools", string.Join(", ", place.Tools))));
        }
    }

    /// <summary>Plugs, pulls and jumpers; returns the condition the car is left in.</summary>
    private static string Rearrange(Position from, Check check, Tally tally)
    {
        var now = from.Arrangement;
        var then = check.Arrangement;
        var changes = !now.Unplugged.SetEquals(then.Unplugged) || !now.Removed.SetEquals(then.Removed)
            || !now.Jumpers.SequenceEqual(then.Jumpers);
        var condition = changes ? SwitchOff(now.Condition, tally) : now.Condition;

        foreach (var jumper in now.Jumpers.Except(then.Jumpers))
        {
            tally.Add(Table["jumper"] / 2, () => new Message("step.jumper-off", jumper.From, jumper.To));
        }

        foreach (var part in now.Removed.Except(then.Removed))
        {
            tally.Add(Table["refit"], () => new Message("step.refit", Describe.Seated(tally.Circuit, part)));
        }

        foreach (var part in now.Unplugged.Except(then.Unplugged))
        {
            tally.Add(Table["plug"], () => new Message("step.plug", Describe.Part(tally.Circuit, part)));
        }

        foreach (var part in then.Unplugged.Except(now.Unplugged))
        {
            tally.Add(Table["unplug"], () => new Message("step.unplug", Describe.Part(tally.Circuit, part)));
        }

        foreach (var part in then.Removed.Except(now.Removed))
        {
            tally.Add(Table["pull"], () => new Message("step.remove", Describe.Seated(tally.Circuit, part)));
        }

        foreach (var jumper in then.Jumpers.Except(now.Jumpers))
        {
            tally.Add(Table["jumper"], () => new Message("step.jumper", jumper.From, jumper.To));
        }

        return condition;
    }

    private static string SwitchOff(string condition, Tally tally)
    {
        var rest = CheckCatalog.RestCondition(tally.Circuit);
        if (condition != rest)
        {
            tally.Add(Table["turn-key"], () => new Message("step.condition", rest));
        }

        return rest;
    }

    private static void EnterCondition(
        DiagnosisOptions options, Position from, string now, string then, Tally tally)
    {
        var condition = tally.Circuit.FindCondition(then)!;
        var slow = from.ToWaitFor(tally.Circuit, then).ToList();
        foreach (var before in slow.Where(c => c != condition))
        {
            Wait(before, tally);
        }

        if (condition.NeedsHelper)
        {
            // It ends by itself, so every reading needs it anew: someone else's hand, a button beside the meter, or a meter that holds its maximum.
            Anew(options, condition, tally);
        }
        else if (now != then)
        {
            tally.Add(Table["turn-key"], () => new Message("step.condition", then));
        }

        if (slow.Contains(condition))
        {
            Wait(condition, tally);
        }
    }

    private static void Anew(DiagnosisOptions options, Condition condition, Tally tally)
    {
        if (RemoteStarter.IsUsed(tally.Circuit, options, condition))
        {
            tally.Add(Table["timed-condition"] + Table["remote-starter"], () => new Message(
                "step.condition-remote", condition.After!, condition.Name));
        }
        else
        {
            tally.Add(Table["timed-condition"] + (options.Helper ? 0 : Table["timed-alone"]), () => new Message(
                options.Helper ? "step.condition-helper" : "step.condition-alone", condition.Name));
        }
    }

    private static void Wait(Condition condition, Tally tally) =>
        tally.Add(condition.TakesMinutes, () => new Message("step.wait-for", condition.Name, condition.TakesMinutes));

    private static void SetUp(Position from, Check check, Tally tally)
    {
        var probe = check.Probe;
        if (ChangesSetting(from, check))
        {
            tally.Add(Table["meter-setting"], () => new Message("step.setting", new Message($"instrument.{probe.Instrument.Name()}")));
        }

        if (MovesBlack(from, check))
        {
            tally.Add(Table["move-black"], null);
        }

        if (NeedsLongLead(tally.Circuit, check))
        {
            tally.Add(Table["long-lead"], null);
        }

        tally.Add(Table[ActionOf(check)], () => Action(tally.Circuit, check));
    }

    private static bool ChangesSetting(Position from, Check check) =>
        check.Probe.Instrument is not (Instrument.Eye or Instrument.Ear) && from.Instrument != check.Probe.Instrument;

    private static bool MovesBlack(Position from, Check check) => check.Probe.Black is { } black && from.Black != black;

    private static bool NeedsLongLead(Circuit circuit, Check check)
    {
        if (check.Probe is not { Red: { } red, Black: { } black } || black.Part == Metal.Body)
        {
            return false;
        }

        double Reach(string part) => circuit.FindPlace(circuit.Find(part)?.Notes.Place)?.Reach ?? 0;
        return Math.Abs(Reach(red.Part) - Reach(black.Part)) > 1.5;
    }

    private static string ActionOf(Check check) => check.Subject switch
    {
        CheckSubject.LampGlow => check.Probe.LampWatts is null ? "test-lamp" : "substitute-load",
        CheckSubject.Number when check.Probe.Instrument == Instrument.AmpsClamp => "clamp",
        CheckSubject.Number when check.Probe.Instrument == Instrument.AmpsInline => "inline",
        CheckSubject.Number or CheckSubject.Buzzer => "read",
        CheckSubject.LoadWork or CheckSubject.RelayClick => "listen",
        CheckSubject.Wiggle => "wiggle",
        CheckSubject.WorkHot => "run-hot",
        CheckSubject.WorkAgain => "repeat-cycles",
        CheckSubject.ScanCommand or CheckSubject.ScanCode => "scan-tool",
        CheckSubject.BenchRelay => "bench-relay",
        CheckSubject.SwapRelay => "swap-relay",
        _ => "look",
    };

    private static Message Action(Circuit circuit, Check check)
    {
        var probe = check.Probe;
        return probe switch
        {
            { Red: { } red, Black: { } black } when check.Subject == CheckSubject.LampGlow => new Message(
                "action.lamp", Describe.Terminal(circuit, red, check.Arrangement), Describe.Terminal(circuit, black, check.Arrangement),
                probe.LampWatts is { } watts ? new Message("lamp.watts", watts) : new Message("lamp.test")),
            { Red: { } red, Black: { } black } => new Message(
                "action.leads", Describe.Terminal(circuit, red, check.Arrangement), Describe.Terminal(circuit, black, check.Arrangement)),
            { Instrument: Instrument.AmpsClamp, About: { } wire } => new Message("action.clamp", Describe.Target(circuit, wire)),
            { About: { } about } when check.Subject != CheckSubject.Repair =>
                new Message(
                    $"action.{Check.SubjectName(check.Subject)}",
                    circuit.Find(about) is null ? Describe.Target(circuit, about) : Describe.Seated(circuit, about)),
            _ => new Message("action.none"),
        };
    }

    /// <param name="steps">Where the words go; null when only minutes are wanted.</param>
    private sealed class Tally(Circuit circuit, List<Message>? steps)
    {
        public Circuit Circuit => circuit;
        public double Minutes { get; private set; }
        public List<Message>? Steps => steps;

        public void Add(double minutes, Func<Message>? step)
        {
            Minutes += minutes;
            if (steps is not null && step is not null)
            {
                steps.Add(step());
            }
        }
    }
}
