using Halfsplit.Diagnosis.Planning;
using Xunit;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>
/// Conflicts and diagnoses: de Kleer and Williams 1987 (structure from memory, reproduced). Entropies and odds: computed
/// from it with a failure odds of 0.01 for each part, what is consistent weighted by its prior odds.
/// </summary>
public sealed class PolyboxTests
{
    private const double Failure = 0.01;

    [Fact]
    public void Minimal_conflicts() => Assert.Equal(
        ["A1 A2 M1 M3", "A1 M1 M2"],
        Polybox.Minimal(Enumerable.Range(0, 32).Where(good => Polybox.Predict(good, Polybox.Seen) is null)));

    [Fact]
    public void Minimal_diagnoses() => Assert.Equal(
        ["A1", "A2 M2", "M1", "M2 M3"],
        Polybox.Minimal(Polybox.Diagnoses(Polybox.Seen, Failure).Select(d => d.Broken)));

    [Fact]
    public void The_second_multiplier_alone_explains_nothing() =>
        Assert.DoesNotContain("M2", Polybox.Diagnoses(Polybox.Seen, Failure).Select(d => Polybox.Names(d.Broken)));

    [Fact]
    public void Entropy_before_a_probe() =>
        Assert.Equal(1.359, Partition.EntropyOf([.. Polybox.Diagnoses(Polybox.Seen, Failure).Select(d => d.Odds)]), 3);

    [Theory]
    [InlineData('X', 0.319)]
    [InlineData('Y', 1.278)]
    [InlineData('Z', 1.312)]
    public void Expected_entropy_after_a_probe(char probe, double bits) => Assert.Equal(bits, After(probe), 3);

    [Fact]
    public void The_best_probe_is_X() => Assert.Equal('X', "XYZ".MinBy(After));

    [Theory]
    [InlineData(4, "M1", 0.961)]
    [InlineData(6, "A1", 0.942)]
    public void The_odds_after_probing_X(int value, string likeliest, double odds)
    {
        var seen = Polybox.Seen;
        seen['X'] = value;
        var best = Polybox.Diagnoses(seen, Failure).MaxBy(d => d.Odds);

        Assert.Equal(likeliest, Polybox.Names(best.Broken));
        Assert.Equal(odds, best.Odds, 3);
    }

    /// <summary>Values that a diagnosis does not predict are spread over so many that they meet no predicted one.</summary>
    private static double After(char probe)
    {
        var expected = 0.0;
        foreach (var group in Polybox.Diagnoses(Polybox.Seen, Failure).GroupBy(d => d.Values.TryGetValue(probe, out var v) ? v : int.MinValue))
            expected += group.Sum(d => d.Odds) * Partition.EntropyOf([.. group.Select(d => d.Odds)]);
        return expected;
    }
}
