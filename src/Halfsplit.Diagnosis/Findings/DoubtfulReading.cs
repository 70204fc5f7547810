using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Evidence;

namespace Halfsplit.Diagnosis.Findings;

/// <summary>A reading that fits badly with the others.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Odds">Probability that it was a slip: a wrong pin, no contact, a wrong unit, a word said in error.</param>
/// <param name="Matters">The odds of the suspects depend on it.</param>
public sealed record DoubtfulReading(Observation Reading, double Odds, bool Matters)
{
    /// <summary>Its name in the job.</summary>
    public string Id => Reading.Id;

    public Check Check => Reading.Check;
}
