using System.Collections.Frozen;
using System.Collections.Immutable;
using Halfsplit.Circuits.Data;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Safety;

/// <summary>
/// A risk that a step takes, and what sparing it is worth. It is a price, no work: it makes a check or a repair dearer than another that
/// tells or cures as much, and counts in no minutes shown. What must not be done at all is never priced: see <see cref="SafetyScreen"/>.
/// </summary>
/// <param name="Name">As shown.</param>
/// <param name="Minutes">Minutes one would rather spend than take one such step; <c>data/risks.csv</c>, assumptions.</param>
public sealed record Risk(Message Name, double Minutes)
{
    private const string Other = "other", Cranking = "cranking", EngineRunning = "engine-running";

    private static readonly FrozenDictionary<string, double> Table =
        DataFile.Numbers(typeof(Risk).Assembly, "risks.csv", "risk", "minutes");

    /// <summary>The risks of one step, those of its places and parts first.</summary>
    public static ImmutableArray<Risk> Of(Circuit circuit, Check check)
    {
        ArgumentNullException.ThrowIfNull(circuit);
        ArgumentNullException.ThrowIfNull(check);
        var risks = Cautions.NamesAt(circuit, WithoutClip(circuit, check)).Select(Named).ToList();
        if (circuit.FindCondition(check.Arrangement.Condition) is { } condition)
        {
            if (Cautions.Cranks(circuit, condition))
            {
                risks.Add(Known(Cranking));
            }

            if (Cautions.EngineRuns(condition))
            {
                risks.Add(Known(EngineRunning));
            }
        }

        return [.. risks];
    }

    /// <summary>What sparing one step is worth, in minutes of work.</summary>
    public static double MinutesOf(Circuit circuit, Check check)
    {
        var sum = 0.0;
        foreach (var risk in Of(circuit, check))
        {
            sum += risk.Minutes;
        }

        return sum;
    }

    /// <summary>A black lead on the battery's post is clipped there once and stays; each reading reaches for the red one only.</summary>
    private static Check WithoutClip(Circuit circuit, Check check) =>
        check.Probe is { Red: not null, Black: { } black } && black.Part == circuit.Battery.Id
            ? check with { Probe = check.Probe with { Black = null } }
            : check;

    private static Risk Named(string caution) => Table.ContainsKey(Cautions.Key(caution))
        ? Known(Cautions.Key(caution))
        : new Risk(new Message("risk.other", caution), Table[Other]);

    private static Risk Known(string key) => new(new Message("risk." + key), Table[key]);
}
