using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Drawing.Symbols;

namespace Halfsplit.Drawing.Svg;

/// <summary>A drawing in words, for screen readers and for the pointer that rests on a part.</summary>
internal static class Description
{
    public static string Of(Circuit circuit, DrawingOptions options)
    {
        var parts = circuit.Parts.Count(p => p is not (Splice or Metal));
        var words = new List<string>
        {
            options.Texts.Say(new Message("drawing.description", parts, circuit.Wires.Length)),
        };
        words.AddRange(DrawingKey.Lines(circuit, options).Select(l => l.Text));
        return string.Join(' ', words);
    }

    /// <summary>A part: its identity, name, kind, place, and what the layers say of it.</summary>
    public static string Of(PartBox box, DrawingOptions options, Shown shown)
    {
        var words = new List<string> { box.Identity };
        if (box.Part.Notes.Name is { } name)
        {
            words.Add(name);
        }

        if (box.Place is { } place)
        {
            words.Add(place);
        }

        if (shown.StateOf(box.Part) is { } state)
        {
            words.Add(state);
        }

        if (shown.IsBlown(box.Part.Id))
        {
            words.Add(options.Texts.Say("drawing.blown"));
        }

        if (shown.OddsOf(box.Identity) is { } odds)
        {
            words.Add(options.Texts.Say(new Message("drawing.odds", OddsText.Of(odds))));
        }

        return string.Join(", ", words);
    }
}
