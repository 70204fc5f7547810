using System.Collections.Immutable;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Simulation.Arrangements;
using Halfsplit.Simulation.Instruments;

namespace Halfsplit.Diagnosis.Checks;

/// <summary>The sort of thing the person does.</summary>
public enum CheckKind { Reading, Look, Listen, Bench, Swap, Repair, Proof, PutBack }

/// <summary>What the answer speaks of; decides how the simulation predicts it.</summary>
public enum CheckSubject
{
    /// <summary>A number on the meter.</summary>
    Number,

    /// <summary>The continuity buzzer.</summary>
    Buzzer,

    /// <summary>A test lamp or substitute load: its glow, or the volts across it.</summary>
    LampGlow,

    /// <summary>Does a load do its work.</summary>
    LoadWork,

    /// <summary>Does a relay click when the condition begins.</summary>
    RelayClick,

    FuseLook,
    PinFit,
    JointHeat,

    /// <summary>Does the reading move while the harness is moved.</summary>
    Wiggle,

    /// <summary>What a scan tool shows as the module's command.</summary>
    ScanCommand,

    /// <summary>Whether the module has stored a code for this output (SAE J2012: open or shorted control circuit).</summary>
    ScanCode,

    /// <summary>A relay on the bench: coil, click, contacts.</summary>
    BenchRelay,

    /// <summary>A known good relay in place of the present one: is the complaint gone.</summary>
    SwapRelay,

    /// <summary>A repair is carried out.</summary>
    Repair,

    /// <summary>Does a load still do its work after some minutes.</summary>
    WorkHot,

    /// <summary>Does a load do its work each time it is switched on.</summary>
    WorkAgain,

    /// <summary>Everything is put back in place.</summary>
    PutBack,
}

/// <summary>Something that can be done and observed.</summary>
/// <param name="Id">Names it for good: same check, same id, on every machine.</param>
/// <param name="Arrangement">How the car has to be.</param>
/// <param name="Probe">Instrument and leads; <see cref="Probe.About"/> names the part looked at, listened to or repaired.</param>
/// <param name="Answers">Words accepted, grouped: words of one group mean the same to the engine.</param>
/// <param name="RepairId">For a repair, which one; else null.</param>
public sealed record Check(
    string Id,
    CheckKind Kind,
    CheckSubject Subject,
    Arrangement Arrangement,
    Probe Probe,
    ImmutableArray<ImmutableArray<AnswerWord>> Answers,
    string? RepairId = null)
{
    /// <summary>Builds a check and its id.</summary>
    public static Check Create(
        CheckKind kind, CheckSubject subject, Arrangement arrangement, Probe probe, string? repairId = null)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(probe);
        var points = (probe.Red, probe.Black) switch
        {
            ({ } red, { } black) => $" {red} {black}",
            ({ } red, null) => $" {red}",
            _ => "",
        };
        var about = probe.About is null ? "" : $" of {probe.About}";
        var lamp = probe.LampWatts is { } watts ? FormattableString.Invariant($" {watts:0.#} W") : "";
        var name = subject == CheckSubject.Number ? probe.Instrument.Name() : SubjectName(subject);
        var prefix = kind == CheckKind.Proof ? "proof " : "";
        var id = $"{prefix}{name}{lamp}{points}{about}{(repairId is null ? "" : $" {repairId}")} | {arrangement.Key}";
        return new Check(id, kind, subject, arrangement, probe, AnswerGroups.Of(subject, probe.Instrument), repairId);
    }

    public bool TakesNumber => Subject is CheckSubject.Number or CheckSubject.LampGlow;

    public bool Equals(Check? other) => other is not null && Id == other.Id;

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);

    /// <summary>The subject's name in ids and in resource keys.</summary>
    internal static string SubjectName(CheckSubject subject) => subject switch
    {
        CheckSubject.Buzzer => "continuity",
        CheckSubject.LampGlow => "lamp",
        CheckSubject.LoadWork => "work",
        CheckSubject.RelayClick => "click",
        CheckSubject.FuseLook => "fuse",
        CheckSubject.PinFit => "fit",
        CheckSubject.JointHeat => "heat",
        CheckSubject.Wiggle => "wiggle",
        CheckSubject.ScanCommand => "command",
        CheckSubject.ScanCode => "code",
        CheckSubject.BenchRelay => "bench",
        CheckSubject.SwapRelay => "swap",
        CheckSubject.WorkHot => "work-hot",
        CheckSubject.WorkAgain => "work-again",
        CheckSubject.PutBack => "put-back",
        _ => "repair",
    };
}

/// <summary>Sorts of subjects.</summary>
public static class CheckSubjects
{
    /// <summary>What a load does, seen or heard from where one stands.</summary>
    public static bool IsOfALoad(this CheckSubject subject) =>
        subject is CheckSubject.LoadWork or CheckSubject.WorkHot or CheckSubject.WorkAgain;

    /// <summary>What an instrument shows, by a number, its glow or its beep.</summary>
    public static bool IsOfAnInstrument(this CheckSubject subject) =>
        subject is CheckSubject.Number or CheckSubject.LampGlow or CheckSubject.Buzzer;
}
