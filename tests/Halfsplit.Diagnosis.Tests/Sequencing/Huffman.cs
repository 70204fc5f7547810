namespace Halfsplit.Diagnosis.Tests.Sequencing;

/// <summary>Mean length of the best binary code: what finding a state costs at least with tests that cost 1 (Huffman 1952).</summary>
internal static class Huffman
{
    public static double MeanLength(double[] odds)
    {
        var queue = new PriorityQueue<double, double>(odds.Select(o => (o, o)));
        var length = 0.0;
        while (queue.Count > 1)
        {
            var joined = queue.Dequeue() + queue.Dequeue();
            length += joined;
            queue.Enqueue(joined, joined);
        }

        return length;
    }
}
