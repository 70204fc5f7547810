namespace Halfsplit.Drawing.Svg;

/// <summary>How thick a wire is drawn for its amps: a step for each half decade from 10 mA on, so that thin and thick can be told apart.</summary>
internal static class CurrentWidth
{
    /// <summary>Amps below which a wire counts as carrying nothing: leaks and meters.</summary>
    public const double LeastAmps = 0.01;

    public const int Steps = 8;

    /// <summary>0 for none, else 1 to <see cref="Steps"/>.</summary>
    public static int Step(double amps)
    {
        var size = Math.Abs(amps);
        return size < LeastAmps ? 0 : Math.Clamp(1 + (int)Math.Floor(2 * Math.Log10(size / LeastAmps)), 1, Steps);
    }

    /// <summary>Pixels.</summary>
    public static double Width(int step) => 1.4 + (0.75 * step);

    public static string Class(double? amps) => amps is not { } known ? "hs-wire"
        : Step(known) is var step and > 0 ? FormattableString.Invariant($"hs-wire hs-flow hs-flow{step}") : "hs-wire hs-still";
}
