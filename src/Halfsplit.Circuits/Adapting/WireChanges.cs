using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Circuits.Sheets;
using Halfsplit.Circuits.Sheets.Quantities;

namespace Halfsplit.Circuits.Adapting;

/// <summary>A wire's colour, gauge and length. What is not known stays as in the parent and is marked as a guess.</summary>
internal static class WireChanges
{
    public static Message? Colour(AdaptingDraft draft, ColourWire change)
    {
        var colour = change.Colour is { } said ? WireColours.Spelled(said) : null;
        if (change.Colour is not null && colour is null)
        {
            return new Message("adapt.bad-colour", change.Colour, string.Join(", ", WireColours.Codes));
        }

        return Change(draft, change.Wire, wire =>
        {
            if (colour is null)
            {
                draft.Assume("adapt.assumed-colour", wire.Id);
            }

            return wire.Spec with { Colour = colour };
        });
    }

    public static Message? Gauge(AdaptingDraft draft, GaugeWire change) => Change(draft, change.Wire, wire =>
    {
        var spec = wire.Spec with { Gauge = change.Gauge ?? wire.Spec.Gauge, GaugeGuessed = change.Guessed || change.Gauge is null };
        if (change.Gauge is null)
        {
            Guessed(draft, "adapt.assumed-gauge", "guessed.wire-gauge", wire.Id, WireText.Gauge(spec with { GaugeGuessed = false }));
        }

        return spec;
    });

    public static Message? Length(AdaptingDraft draft, LengthWire change)
    {
        var (metres, written) = (0.0, change.Length?.Replace(" ", "", StringComparison.Ordinal).Replace(',', '.'));
        if (written is not null && !Quantity.TryParse(written, Unit.Metre, Limits.Metres, out metres, out var problem))
        {
            return problem;
        }

        return Change(draft, change.Wire, wire =>
        {
            if (written is null)
            {
                Guessed(draft, "adapt.assumed-length", "guessed.wire-length", wire.Id, wire.Spec.LengthWritten);
                return wire.Spec with { LengthGuessed = true };
            }

            return wire.Spec with { Length = metres, LengthWritten = written, LengthGuessed = change.Guessed };
        });
    }

    /// <summary>What is assumed of a wire, and between what it may lie.</summary>
    private static void Guessed(AdaptingDraft draft, string code, string row, string wire, string value)
    {
        var range = draft.Defaults[row].Range;
        draft.Assume(code, wire, value, range.Low, range.High);
    }

    private static Message? Change(AdaptingDraft draft, string name, Func<Wire, PathWire> change)
    {
        if (NameSearch.Wire(draft.Parent, name, out var problem) is not { } wire)
        {
            return problem;
        }

        draft.Wiring.Replace(wire.Spec, change(wire));
        return null;
    }
}
