using System.Collections.Immutable;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Cli.Terminals;
using Halfsplit.Cli.Verbs;

namespace Halfsplit.Cli.Bench;

/// <summary>What a motor draws at work, by what was typed or else by the sheet of the job.</summary>
/// <param name="Amps">Null where neither says.</param>
/// <param name="Notes">Where it is from, and what the sheet has beside it.</param>
internal sealed record SheetRating(double? Amps, ImmutableArray<Message> Notes)
{
    /// <summary>The rating for an answer about a motor of a job; a job that can't be opened is told later, when the answer is attached.</summary>
    public static SheetRating Of(Terminal terminal, MotorSettings settings)
    {
        if (settings.Job is null || JobDesk.Open(terminal, settings.Job, asksNext: false) is not { IsOpen: true } opened)
        {
            return new SheetRating(settings.RatedAmps, []);
        }

        var motors = opened.Session.Circuit.Parts.OfType<Motor>().ToList();
        var motor = settings.Part is { } part
            ? motors.Find(m => string.Equals(m.Id, part, StringComparison.OrdinalIgnoreCase))
            : motors.Count == 1 ? motors[0] : null;
        return motor is null ? new SheetRating(settings.RatedAmps, [])
            : settings.RatedAmps is not { } typed ? new SheetRating(motor.RunAmps, [new Message("bench-motor.rated-by-sheet", Say(motor.RunAmps), motor.Id)])
            : typed == motor.RunAmps ? new SheetRating(typed, [])
            : new SheetRating(typed, [new Message("bench-motor.rated-differs", Say(motor.RunAmps), motor.Id, Say(typed))]);
    }

    /// <summary>The answer with these notes.</summary>
    public Answer Beside(Answer answer) => answer with { Notes = [.. answer.Notes, .. Notes] };

    private static Message Say(double amps) => new Measure(amps, Unit.Amp).Say();
}
