using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

namespace Halfsplit.Bench.Motors;

/// <summary>What a motor of a job draws at work by the job's sheet.</summary>
/// <param name="Motor">The motor's name in the sheet.</param>
/// <param name="Amps">Its amps at work.</param>
public sealed record SheetRating(string Motor, double Amps)
{
    /// <summary>Of the motor that is named, in any case of letters, or else of the only one; null where neither says which.</summary>
    public static SheetRating? Of(Circuit circuit, string? part = null)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        var motors = circuit.Parts.OfType<Motor>().Where(m => part is null || string.Equals(m.Id, part, StringComparison.OrdinalIgnoreCase)).ToList();
        return motors is [var motor] ? new SheetRating(motor.Id, motor.RunAmps) : null;
    }

    /// <summary>The answer with a note on where its rated amps are from, or what the sheet has beside them.</summary>
    /// <param name="used">The rated amps that the answer is by.</param>
    public Answer Beside(Answer answer, double used)
    {
        ArgumentNullException.ThrowIfNull(answer);
        var note = used == Amps
            ? new Message("bench-motor.rated-by-sheet", Say(Amps), Motor)
            : new Message("bench-motor.rated-differs", Say(Amps), Motor, Say(used));
        return answer with { Notes = [.. answer.Notes, note] };
    }

    private static Message Say(double amps) => new Measure(amps, Unit.Amp).Say();
}
