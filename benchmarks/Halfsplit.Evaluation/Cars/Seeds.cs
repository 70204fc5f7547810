namespace Halfsplit.Evaluation.Cars;

/// <summary>Seeds from names, the same on every machine (FNV-1a by Fowler, Noll and Vo, then mixed).</summary>
public static class Seeds
{
    public static long Of(params ReadOnlySpan<object> names)
    {
        unchecked
        {
            var hash = 14695981039346656037UL;
            foreach (var name in names)
            {
                foreach (var letter in FormattableString.Invariant($"{name};"))
                {
                    hash = (hash ^ letter) * 1099511628211UL;
                }
            }

            hash ^= hash >> 32;
            return (long)(hash * 0xD6E8FEB86659FD93UL);
        }
    }
}
