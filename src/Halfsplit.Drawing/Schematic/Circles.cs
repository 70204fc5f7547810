namespace Halfsplit.Drawing.Schematic;

/// <summary>Finds the links that have to run upwards so that all others can run down.</summary>
internal static class Circles
{
    /// <summary>Positions of the backward ones among the links; only plain links can close a circle.</summary>
    public static HashSet<int> BackwardOf(IReadOnlyList<Box> boxes, List<(Box Upper, Box Lower, bool IsPlain)> links)
    {
        var downward = new List<int>[boxes.Count];
        var entered = new bool[boxes.Count];
        for (var i = 0; i < downward.Length; i++)
        {
            downward[i] = [];
        }

        for (var i = 0; i < links.Count; i++)
        {
            if (links[i].IsPlain)
            {
                downward[links[i].Upper.Order].Add(i);
                entered[links[i].Lower.Order] |= links[i].Lower != links[i].Upper;
            }
        }

        var backward = new HashSet<int>();
        var state = new int[boxes.Count];
        foreach (var start in boxes.OrderBy(b => entered[b.Order]).ThenBy(b => b.Order))
        {
            Walk(start.Order, downward, links, state, backward);
        }

        return backward;
    }

    /// <summary>Depth first, on a stack of its own: circuits can be long. State: 0 not seen, 1 on the way down, 2 done.</summary>
    private static void Walk(
        int start, List<int>[] downward, List<(Box Upper, Box Lower, bool IsPlain)> links, int[] state, HashSet<int> backward)
    {
        if (state[start] != 0)
        {
            return;
        }

        var stack = new Stack<(int Box, int Next)>();
        stack.Push((start, 0));
        state[start] = 1;
        while (stack.TryPop(out var at))
        {
            if (at.Next == downward[at.Box].Count)
            {
                state[at.Box] = 2;
                continue;
            }

            stack.Push((at.Box, at.Next + 1));
            var link = downward[at.Box][at.Next];
            var below = links[link].Lower.Order;
            if (state[below] == 1)
            {
                backward.Add(link);
            }
            else if (state[below] == 0)
            {
                state[below] = 1;
                stack.Push((below, 0));
            }
        }
    }
}
