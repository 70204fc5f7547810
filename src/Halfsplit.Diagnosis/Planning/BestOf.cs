namespace Halfsplit.Diagnosis.Planning;

/// <summary>Keeps the few items with the highest scores, highest first; of equals the one offered first stays ahead.</summary>
internal sealed class BestOf<T>(int most)
{
    private readonly List<(T Item, double Score)> _kept = new(most + 1);

    public bool IsFull => _kept.Count == most;

    /// <summary>The lowest score kept.</summary>
    public double Least => _kept[^1].Score;

    public IEnumerable<T> Items => _kept.Select(k => k.Item);

    public void Offer(T item, double score)
    {
        // Equal but for the last digits is equal: those differ from machine to machine.
        score = Math.Round(score, 9);
        if (IsFull && score <= Least)
        {
            return;
        }

        var at = _kept.FindIndex(k => score > k.Score);
        _kept.Insert(at < 0 ? _kept.Count : at, (item, score));
        if (_kept.Count > most)
        {
            _kept.RemoveAt(most);
        }
    }
}
