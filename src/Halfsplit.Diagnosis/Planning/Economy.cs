using System.Collections.Frozen;
using Halfsplit.Circuits.Data;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>What minutes, wrong repairs and a workshop cost, in the job's currency: checks and repairs are weighed in it.</summary>
/// <param name="HourValue">What an hour of the person's work is worth; 0 or more.</param>
/// <param name="WrongRepair">What a repair that does not cure costs beside its price and its minutes.</param>
/// <param name="HandOver">What a workshop asks for what is left.</param>
public sealed record Economy(double HourValue, double WrongRepair, double HandOver)
{
    private static readonly FrozenDictionary<string, double> Table =
        DataFile.Numbers(typeof(Economy).Assembly, "economy.csv", "item");

    /// <summary>The assumptions of <c>data/economy.csv</c>.</summary>
    public static Economy Default { get; } = new(Table["hour-of-work"], Table["wrong-repair"], Table["hand-over"]);

    /// <summary>Minutes to see whether a repair cured.</summary>
    public static double ProofMinutes => Table["proof-minutes"];

    /// <summary>What these minutes of work are worth.</summary>
    public double Worth(double minutes) => minutes * HourValue / 60;
}
