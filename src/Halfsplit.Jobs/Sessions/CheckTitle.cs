using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Jobs.Sessions;

/// <summary>A check in one short line, for lists and logs.</summary>
public static class CheckTitle
{
    /// <summary>What is done, and how the car is set up for it.</summary>
    public static Message Of(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var what = What(circuit, check);
        var title = check.Kind is CheckKind.Repair or CheckKind.PutBack ? what : new Message("title.set-up", what, SetUp(check.Arrangement));
        return check.Kind is CheckKind.Proof ? new Message("title.proof", title) : title;
    }

    /// <summary>What is done alone.</summary>
    public static Message What(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(check);
        var probe = check.Probe;
        return check.Subject switch
        {
            CheckSubject.LampGlow when probe.LampWatts is { } watts =>
                new Message("title.lamp", watts, probe.Red!, probe.Black!),
            CheckSubject.Number when probe.Instrument == Instrument.AmpsClamp =>
                new Message("title.clamp", Describe.Target(circuit, probe.About!)),
            CheckSubject.Number or CheckSubject.Buzzer or CheckSubject.LampGlow => new Message(
                "title.leads", new Message($"instrument.{probe.Instrument.Name()}"), probe.Red!, probe.Black!),
            CheckSubject.LoadWork => new Message("title.work", About(circuit, check)),
            CheckSubject.WorkHot => new Message("title.work-hot", About(circuit, check)),
            CheckSubject.WorkAgain => new Message("title.work-again", About(circuit, check)),
            CheckSubject.PutBack => new Message("title.put-back"),
            CheckSubject.RelayClick => new Message("title.click", About(circuit, check)),
            CheckSubject.FuseLook => new Message("title.fuse", About(circuit, check)),
            CheckSubject.PinFit => new Message("title.fit", About(circuit, check)),
            CheckSubject.JointHeat => new Message("title.heat", About(circuit, check)),
            CheckSubject.Wiggle => new Message("title.wiggle", About(circuit, check)),
            CheckSubject.ScanCommand => new Message("title.command", About(circuit, check)),
            CheckSubject.ScanCode => new Message("title.code", About(circuit, check)),
            CheckSubject.BenchRelay => new Message("title.bench", About(circuit, check)),
            CheckSubject.SwapRelay => new Message("title.swap", About(circuit, check)),
            _ => Repair(circuit, check),
        };
    }

    /// <summary>"replace M1", by the action's text.</summary>
    public static Message Repair(Circuit circuit, string repair)
    {
        ArgumentNullException.ThrowIfNull(repair);
        var space = repair.IndexOf(' ', StringComparison.Ordinal);
        return space < 0
            ? new Message("part.bare", repair)
            : new Message($"repair.{repair[..space]}", Describe.Target(circuit, repair[(space + 1)..]));
    }

    /// <summary>The condition, and what is unplugged, pulled and bridged.</summary>
    public static Message SetUp(Arrangement arrangement)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        var text = new Message("title.condition", arrangement.Condition);
        foreach (var part in arrangement.Unplugged)
        {
            text = new Message("title.and", text, new Message("title.unplugged", part));
        }

        foreach (var part in arrangement.Removed)
        {
            text = new Message("title.and", text, new Message("title.pulled", part));
        }

        foreach (var jumper in arrangement.Jumpers)
        {
            text = new Message("title.and", text, new Message("title.bridged", jumper.From, jumper.To));
        }

        return text;
    }

    private static Message Repair(Circuit circuit, Check check) => Repair(circuit, check.RepairId ?? "");

    private static Message About(Circuit circuit, Check check) => Describe.Target(circuit, check.Probe.About!);
}
