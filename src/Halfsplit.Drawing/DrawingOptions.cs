using System.Collections.Immutable;
using System.Globalization;
using Halfsplit.Circuits.Messages;
using Halfsplit.Drawing.Layers;

namespace Halfsplit.Drawing;

/// <summary>The colours of a drawing.</summary>
public enum DrawingTheme
{
    Light,
    Dark,

    /// <summary>Black, grey and white only: every difference is also one of shape, dash or word.</summary>
    Print,
}

/// <summary>How a drawing is to look, and what is laid over the circuit.</summary>
public sealed record DrawingOptions
{
    public static DrawingOptions Default { get; } = new();

    public DrawingTheme Theme { get; init; } = DrawingTheme.Light;

    /// <summary>Laid over the circuit in this order; they never move a symbol.</summary>
    public ImmutableArray<DrawingLayer> Layers { get; init; } = [];

    /// <summary>The words, in the person's language; a catalogue that knows <see cref="DrawingTexts.Source"/>.</summary>
    public TextCatalog Texts { get; init; } = DrawingTexts.English;

    /// <summary>How numbers are written in the language of <see cref="Texts"/>.</summary>
    internal CultureInfo Formats => Texts.Language.Formats;

    /// <summary>Begins every id, so that several drawings can stand in one page: letters, digits, hyphens.</summary>
    public string IdPrefix { get; init; } = "";

    /// <summary>
    /// Show no more than this much around the first fault of a <see cref="FaultLayer"/>, in the drawing's own units, of which
    /// letters are about nine high: whole rows, and no name cut through where that can be. Null for the whole, which is also
    /// what is shown where no fault is marked.
    /// </summary>
    public (double Width, double Height)? AroundFault { get; init; }

    /// <summary>
    /// True: colours are CSS variables (<c>--hs-ink</c> …), and a page switches the theme by giving the svg element another
    /// of the classes <c>hs-light</c>, <c>hs-dark</c>, <c>hs-print</c>. False: plain colours of the one theme, for programs
    /// that know no variables.
    /// </summary>
    public bool Switchable { get; init; } = true;
}
