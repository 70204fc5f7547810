namespace Halfsplit.Simulation.Networks;

/// <summary>
/// Finds, for every pair of neighbours that an elimination joins, the value that their new coupling is added to.
/// </summary>
internal static class FillTargets
{
    /// <summary>Shorter lists gain nothing from being added side by side.</summary>
    private const int ShortestInRuns = 8;

    public static (int[] Segment, int[] Target, int[] Run) Find(int[] columnStart, int[] row, int[] stepOf)
    {
        var segment = new int[row.Length];
        var target = new List<int>();
        var run = new List<int>();
        var found = new List<int>();
        for (var step = 0; step < columnStart.Length - 1; step++)
        {
            var end = columnStart[step + 1];
            for (var entry = columnStart[step]; entry < end; entry++)
            {
                // The later neighbours of this entry's node contain all later rows of this column: walk both in step.
                found.Clear();
                var place = columnStart[stepOf[row[entry]]];
                for (var other = entry + 1; other < end; other++)
                {
                    while (row[place] != row[other])
                        place++;
                    found.Add(place);
                }

                segment[entry] = Lay(found, target, run);
            }
        }

        return (segment, [.. target], [.. run]);
    }

    private static int Lay(List<int> found, List<int> target, List<int> run)
    {
        var runs = 0;
        for (var index = 0; index < found.Count; index++)
        {
            if (index == 0 || found[index] != found[index - 1] + 1)
                runs++;
        }

        if (found.Count < ShortestInRuns || found.Count < 4 * runs)
        {
            target.AddRange(found);
            return target.Count - found.Count;
        }

        var start = run.Count;
        run.Add(runs);
        for (int index = 0, from = 0; index < found.Count; index++)
        {
            if (index + 1 < found.Count && found[index + 1] == found[index] + 1)
                continue;
            run.Add(found[from]);
            run.Add(index + 1 - from);
            from = index + 1;
        }

        return ~start;
    }
}
