namespace Halfsplit.Diagnosis.Evidence;

/// <summary>
/// Odds that the degree of a fault lies in the lower, the middle and the upper part of its cell of severity, as far as readings
/// tell.
/// </summary>
internal readonly record struct PartsOfCell(double Low, double Middle, double High)
{
    /// <summary>The middle part ends here, in standard deviations of the cell.</summary>
    private const double MiddleEnds = 0.6;

    /// <summary>Where numbers put the degree.</summary>
    /// <param name="mean">In standard deviations of its cell.</param>
    /// <param name="variance">How much of the cell's variance they left.</param>
    public static PartsOfCell OfNumbers(double mean, double variance)
    {
        // Never quite sure of a part: a cell's edges are soft, and neighbouring cells meet.
        const double Least = 0.02;
        var spread = Math.Sqrt(Math.Max(variance, 0.01));
        var low = Math.Max(Least, Normal.Below((-MiddleEnds - mean) / spread));
        var high = Math.Max(Least, Normal.Below((mean - MiddleEnds) / spread));
        var middle = Math.Max(Least, 1 - low - high);
        var sum = low + middle + high;
        return new PartsOfCell(low / sum, middle / sum, high / sum);
    }

    /// <summary>The same with words that hang on the degree weighed in.</summary>
    public PartsOfCell With(LogWords words)
    {
        var log = LogOf(words);
        return new PartsOfCell(
            Low * Math.Exp(words.Low - log), Middle * Math.Exp(words.Middle - log), High * Math.Exp(words.High - log));
    }

    /// <summary>Logarithm of the probability of all these words at once.</summary>
    public double LogOf(LogWords words) => JointLikelihood.LogAdd(
        JointLikelihood.LogAdd(Math.Log(Low) + words.Low, Math.Log(Middle) + words.Middle), Math.Log(High) + words.High);
}

/// <summary>Log likelihood of words that hang on the degree of a fault, in each part of its cell.</summary>
internal readonly record struct LogWords(double Low, double Middle, double High)
{
    public static LogWords operator +(LogWords a, LogWords b) => new(a.Low + b.Low, a.Middle + b.Middle, a.High + b.High);
}
