using System.Buffers;
using Halfsplit.Diagnosis.Evidence;
using Halfsplit.Diagnosis.Checks;

namespace Halfsplit.Diagnosis.Planning;

/// <summary>How many bits about the class of the fault an answer to a check is expected to bring.</summary>
internal static class Information
{
    /// <summary>Most bins a number is cut into, between the predicted clusters.</summary>
    private const int MostBins = 12;

    /// <summary>Chance that the answer is a slip and says nothing.</summary>
    public const double Slip = 0.03;

    private const int OnStack = 512;

    /// <summary>Expected bits; never negative.</summary>
    public static double Bits(Partition partition, Check check, ReadOnlySpan<Outlook> outlooks)
    {
        var outcomes = Outcomes(check, outlooks, out var count);
        if (count < 2)
        {
            return 0;
        }

        var classes = partition.ClassCount;
        var size = count * classes;
        var rented = size <= OnStack ? null : ArrayPool<double>.Shared.Rent(size);
        Span<double> joint = rented is null ? stackalloc double[OnStack] : rented;
        joint = joint[..size];
        joint.Clear();
        for (var car = 0; car < outlooks.Length; car++)
        {
            var at = partition.Classes[car];
            var weight = partition.Weights[car];
            for (var outcome = 0; outcome < count; outcome++, at += classes)
            {
                joint[at] += weight * (((1 - Slip) * outcomes[(car * count) + outcome]) + (Slip / count));
            }
        }

        var left = 0.0;
        for (var outcome = 0; outcome < count; outcome++)
        {
            var row = joint.Slice(outcome * classes, classes);
            var total = 0.0;
            foreach (var odds in row)
            {
                total += odds;
            }

            left += total * Partition.EntropyOf(row);
        }

        if (rented is not null)
        {
            ArrayPool<double>.Shared.Return(rented);
        }

        return Math.Max(0, partition.Entropy - left);
    }

    /// <summary>Probability of each outcome for each car, row by row.</summary>
    public static double[] Outcomes(Check check, ReadOnlySpan<Outlook> outlooks, out int count)
    {
        if (check.Answers.Length > 0)
        {
            return Words(check.Answers.Length, outlooks, out count);
        }

        var cuts = Cuts(outlooks);
        var ohms = check.Probe.Instrument == Simulation.Instruments.Instrument.Ohms;
        count = cuts.Length + 1 + (ohms ? 1 : 0);
        var odds = new double[outlooks.Length * count];
        for (var car = 0; car < outlooks.Length; car++)
        {
            var row = odds.AsSpan(car * count, count);
            ref readonly var forecast = ref outlooks[car];
            if (forecast.IsBroad)
            {
                row.Fill(1.0 / count);
                continue;
            }

            var spread = Math.Max(1e-9, forecast.Spread);
            var below = 0.0;
            for (var i = 0; i < cuts.Length; i++)
            {
                var next = Normal.Below((cuts[i] - forecast.Mean) / spread);
                if (forecast.Quiet > 0)
                {
                    next += forecast.QuietShare * (Normal.Below(cuts[i] / forecast.Quiet) - next);
                }

                row[i] = (1 - forecast.OverLimit) * Math.Max(0, next - below);
                below = next;
            }

            row[cuts.Length] = (1 - forecast.OverLimit) * (1 - below);
            if (ohms)
            {
                row[^1] = forecast.OverLimit;
            }
        }

        return odds;
    }

    private static double[] Words(int groups, ReadOnlySpan<Outlook> outlooks, out int count)
    {
        count = groups;
        var odds = new double[outlooks.Length * groups];
        for (var car = 0; car < outlooks.Length; car++)
        {
            for (var i = 0; i < groups; i++)
            {
                odds[(car * groups) + i] = outlooks[car].IsBroad || outlooks[car].Groups.IsDefault || outlooks[car].Groups.Length != groups
                    ? 1.0 / groups
                    : outlooks[car].Groups[i];
            }
        }

        return odds;
    }

    /// <summary>Cuts in the widest gaps between predicted means, measured in their spreads.</summary>
    public static double[] Cuts(ReadOnlySpan<Outlook> outlooks)
    {
        Span<double> means = outlooks.Length <= OnStack ? stackalloc double[outlooks.Length] : new double[outlooks.Length];
        Span<double> spreads = outlooks.Length <= OnStack ? stackalloc double[outlooks.Length] : new double[outlooks.Length];
        var definite = 0;
        foreach (ref readonly var forecast in outlooks)
        {
            if (!forecast.IsBroad && forecast.OverLimit < 0.5)
            {
                means[definite] = forecast.Mean;
                spreads[definite++] = Math.Max(1e-9, forecast.Spread);
            }
        }

        means[..definite].Sort(spreads[..definite]);
        SortTies(means[..definite], spreads[..definite]);
        Span<double> cuts = stackalloc double[MostBins];
        Span<double> sizes = stackalloc double[MostBins];
        var kept = 0;
        for (var i = 1; i < definite; i++)
        {
            var spread = spreads[i] + spreads[i - 1];
            var gap = (means[i] - means[i - 1]) / spread;
            if (gap <= 0.2 || (kept == MostBins - 1 && gap <= sizes[kept - 1]))
            {
                continue;
            }

            var at = kept;
            for (; at > 0 && gap > sizes[at - 1]; at--)
            {
                (sizes[at], cuts[at]) = (sizes[at - 1], cuts[at - 1]);
            }

            // Between two clusters, nearer to the sharper one.
            (sizes[at], cuts[at]) = (gap, ((means[i] * spreads[i - 1]) + (means[i - 1] * spreads[i])) / spread);
            kept = Math.Min(kept + 1, MostBins - 1);
        }

        cuts[..kept].Sort();
        return cuts[..kept].ToArray();
    }

    /// <summary>Equal means stand in the order of their spreads, whatever order the cars came in.</summary>
    private static void SortTies(Span<double> means, Span<double> spreads)
    {
        var from = 0;
        for (var i = 1; i <= means.Length; i++)
        {
            if (i < means.Length && means[i] == means[from])
            {
                continue;
            }

            spreads[from..i].Sort();
            from = i;
        }
    }
}
