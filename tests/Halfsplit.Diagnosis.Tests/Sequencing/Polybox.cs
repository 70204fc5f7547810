using System.Numerics;

namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>
/// Three multipliers and two adders: X = A·C, Y = B·D, Z = C·E, F = X + Y, G = Y + Z. A part that is not assumed good says
/// nothing. Source: de Kleer and Williams, "Diagnosing multiple faults", 1987; the structure from memory.
/// </summary>
internal static class Polybox
{
    public static readonly string[] Parts = ["A1", "A2", "M1", "M2", "M3"];

    private static readonly (string Part, char In1, char In2, char Out)[] Wiring =
        [("A1", 'X', 'Y', 'F'), ("A2", 'Y', 'Z', 'G'), ("M1", 'A', 'C', 'X'), ("M2", 'B', 'D', 'Y'), ("M3", 'C', 'E', 'Z')];

    /// <summary>The inputs and the outputs seen.</summary>
    public static Dictionary<char, int> Seen => new()
    {
        ['A'] = 3, ['B'] = 2, ['C'] = 2, ['D'] = 3, ['E'] = 3, ['F'] = 10, ['G'] = 12,
    };

    /// <summary>All values that follow if exactly these parts are assumed good; null if they contradict what was seen.</summary>
    /// <param name="good">One bit for each of <see cref="Parts"/>.</param>
    public static Dictionary<char, int>? Predict(int good, Dictionary<char, int> seen)
    {
        var values = new Dictionary<char, int>(seen);
        for (var before = 0; before != values.Count;)
        {
            before = values.Count;
            foreach (var (part, in1, in2, to) in Wiring)
            {
                if ((good >> Array.IndexOf(Parts, part) & 1) == 0)
                    continue;
                var adds = part[0] == 'A';
                if (values.TryGetValue(in1, out var first) && values.TryGetValue(in2, out var second))
                {
                    var result = adds ? first + second : first * second;
                    if (!values.TryAdd(to, result) && values[to] != result)
                        return null;
                }
                else if (adds && values.TryGetValue(to, out var sum))
                {
                    // An adder whose output and one input are known tells the other.
                    if (values.TryGetValue(in1, out first))
                        values[in2] = sum - first;
                    else if (values.TryGetValue(in2, out second))
                        values[in1] = sum - second;
                }
            }
        }

        return values;
    }

    /// <summary>Those of the sets of parts that hold no other of them, named in alphabetic order.</summary>
    public static IEnumerable<string> Minimal(IEnumerable<int> sets)
    {
        var all = sets.ToList();
        return all.Where(s => !all.Any(other => other != s && (other & s) == other)).Select(Names).Order(StringComparer.Ordinal);
    }

    public static string Names(int parts) => string.Join(' ', Parts.Where((_, i) => (parts >> i & 1) != 0));

    /// <summary>All sets of broken parts that do not contradict what was seen, with their odds.</summary>
    public static List<(int Broken, double Odds, Dictionary<char, int> Values)> Diagnoses(Dictionary<char, int> seen, double failure)
    {
        var found = new List<(int Broken, double Odds, Dictionary<char, int> Values)>();
        for (var broken = 0; broken < 32; broken++)
        {
            var count = BitOperations.PopCount((uint)broken);
            if (Predict(~broken & 31, seen) is { } values)
                found.Add((broken, Math.Pow(failure, count) * Math.Pow(1 - failure, 5 - count), values));
        }

        var sum = found.Sum(f => f.Odds);
        return found.ConvertAll(f => (f.Broken, f.Odds / sum, f.Values));
    }
}
