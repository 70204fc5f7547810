using System.Collections.Immutable;

namespace Halfsplit.Diagnosis.Pins;

/// <summary>What a hypothesis lets a measurement show.</summary>
public abstract record PinExpectation
{
    /// <summary>Nothing conducts: OL.</summary>
    public static PinExpectation Open { get; } = new OpenEnds();

    /// <summary>The hypothesis has no opinion, or the reading means nothing there.</summary>
    public static PinExpectation Anything { get; } = new NoOpinion();

    public static PinExpectation Volts(double mean, double spread) => new Near(mean, spread, false);

    /// <param name="mean">Ohms.</param>
    /// <param name="decades">Spread in powers of ten.</param>
    public static PinExpectation Ohms(double mean, double decades) => new Near(Math.Log10(mean), decades, true);

    /// <summary>One word, seldom another.</summary>
    /// <param name="share">How often it is this word.</param>
    public static PinExpectation Says(PinWord word, double share, PinWord otherwise) => new OneOf(word, share, otherwise);

    /// <summary>A number about a mean, on a line of volts or of decades of ohms.</summary>
    public sealed record Near(double Mean, double Spread, bool InDecades) : PinExpectation;

    public sealed record OneOf(PinWord Word, double Share, PinWord Otherwise) : PinExpectation;

    private sealed record OpenEnds : PinExpectation;

    private sealed record NoOpinion : PinExpectation;

    /// <summary>The place of a number on its line.</summary>
    public static double Place(double number, bool inDecades) => inDecades ? Math.Log10(Math.Max(number, LeastOhms)) : number;

    /// <summary>What meters show as zero.</summary>
    private static readonly double LeastOhms = PinDefaults.Of("pin.least-ohms");
}
