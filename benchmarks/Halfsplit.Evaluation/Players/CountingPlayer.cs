using System.Collections.Concurrent;
using Halfsplit.Diagnosis.Checks;
using Halfsplit.Diagnosis.Readings;
using Halfsplit.Evaluation.Play;

namespace Halfsplit.Evaluation.Players;

/// <summary>
/// Halving by count: of all checks the one that parts the living suspects most evenly, whatever their odds and whatever it
/// takes; a suspect whose predictions do not hold the reading is out.
/// </summary>
public sealed class CountingPlayer : IPlayer
{
    /// <summary>A check that is to take away less than this share of a suspect is none.</summary>
    private const double LeastGain = 0.5;

    /// <summary>After so many checks in a row that took nobody out, there is no use in more.</summary>
    private const int MostIdle = 3;

    private readonly ConcurrentDictionary<string, Lazy<Predictions>> _tables = new(StringComparer.Ordinal);

    public string Name => "halving-by-count";

    public IEnumerable<Move> Play(Attempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        var place = attempt.Place;
        var table = _tables.GetOrAdd(
            $"{place.Circuit.Title}|{place.Complaint.Name}", _ => new Lazy<Predictions>(() => Predictions.Of(place))).Value;
        yield return new Move.Look(CheckCatalog.Reproduce(place.Circuit, place.Complaint));

        var done = new HashSet<int>();
        for (var round = 0; round < 2; round++)
        {
            // Where every suspect is out a reading has lied; all come back once, what has been read does not.
            var alive = Enumerable.Range(0, table.Cars.Length).Where(c => !IsTried(attempt, table, c)).ToList();
            var idle = 0;
            while (alive.Count > 0 && idle < MostIdle && Best(table, alive, done) is { } best)
            {
                done.Add(best);
                var before = alive.Count;
                yield return new Move.Look(table.Checks[best]);
                if (!attempt.Says(AnswerWord.NotSure))
                {
                    var said = attempt.Answer;
                    var suspects = alive.Where(c => Agrees(table.Answers[best], table, c, alive, said))
                        .Select(c => table.Cars[c].Suspect).ToHashSet(StringComparer.Ordinal);
                    alive = [.. alive.Where(c => suspects.Contains(table.Cars[c].Suspect))];
                }

                idle = alive.Count < before ? 0 : idle + 1;
            }

            foreach (var repair in place.Prior.Select(p => p.Repair).OrderBy(r => r.Price.Middle).ThenBy(r => r.Id, StringComparer.Ordinal)
                .Where(r => alive.Any(c => table.Cars[c].Repair == r.Id) && !attempt.WasTried(r)).ToList())
            {
                yield return new Move.Mend(repair);
            }
        }

        foreach (var move in Openings.BuyTheRest(attempt))
        {
            yield return move;
        }
    }

    private static bool IsTried(Attempt attempt, Predictions table, int car) =>
        attempt.Repairs.Any(r => r.Repair.Id == table.Cars[car].Repair);

    /// <summary>The check that leaves the fewest suspects on average; null where none parts them.</summary>
    private static int? Best(Predictions table, List<int> alive, HashSet<int> done)
    {
        if (alive.Select(c => table.Cars[c].Repair).Distinct().Count() < 2)
        {
            return null;
        }

        int? best = null;
        var isAlive = new bool[table.Cars.Length];
        alive.ForEach(c => isAlive[c] = true);
        var least = alive.Select(c => table.Cars[c].Suspect).Distinct().Count() - LeastGain;
        for (var k = 0; k < table.Checks.Length; k++)
        {
            if (!done.Contains(k) && table.Heaps[k].ExpectedLeft(isAlive, Blur) is var left && left < least - 1e-9)
            {
                least = left;
                best = k;
            }
        }

        return best;
    }

    private static bool Agrees(ReadingValue[] answers, Predictions table, int car, List<int> alive, ReadingValue said)
    {
        if (answers[car] is ReadingParse.Word { Answer: var predicted })
        {
            return predicted == AnswerWord.NotSure
                || (said is ReadingParse.Word { Answer: var word } && word == predicted);
        }

        if (said is not ReadingParse.Number read || answers[car] is not ReadingParse.Number)
        {
            return said.GetType() == answers[car].GetType();
        }

        // Between two degrees of one suspect every reading is possible.
        var low = double.PositiveInfinity;
        var high = double.NegativeInfinity;
        foreach (var other in alive)
        {
            if (table.Cars[other].Suspect == table.Cars[car].Suspect && answers[other] is ReadingParse.Number number)
            {
                low = Math.Min(low, number.Value);
                high = Math.Max(high, number.Value);
            }
        }

        return read.Value >= low - (1.5 * Blur(low)) && read.Value <= high + (1.5 * Blur(high));
    }

    /// <summary>By how much a reading may be off: parts, supply, meter.</summary>
    private static double Blur(double value) => 0.15 + (0.08 * Math.Abs(value));
}
