using Halfsplit.Diagnosis.Readings;

namespace Halfsplit.Evaluation.Players;

/// <summary>The answers that all cars give to one check, sorted once, so that suspects are counted by equal answers in one pass.</summary>
internal sealed class AnswerHeaps
{
    /// <summary>The heap of cars that can't say.</summary>
    private const int Unsure = 0;

    /// <summary>Of each car, its suspect.</summary>
    private readonly int[] _suspects;
    private readonly int _suspectCount;

    /// <summary>Cars that show a number, least first.</summary>
    private readonly (int Car, double Number)[] _numbers;

    /// <summary>The others, each with the heap of its word.</summary>
    private readonly (int Car, int Heap)[] _words;
    private readonly int _wordHeaps = 1;

    /// <param name="answers">Of each car.</param>
    /// <param name="suspects">Number of each car's suspect.</param>
    public AnswerHeaps(ReadingValue[] answers, int[] suspects)
    {
        _suspects = suspects;
        _suspectCount = suspects.Length == 0 ? 0 : suspects.Max() + 1;
        var heaps = new Dictionary<string, int>(StringComparer.Ordinal) { [AnswerWord.NotSure.Id] = Unsure };
        var numbers = new List<(int Car, double Number)>();
        var words = new List<(int Car, int Heap)>();
        for (var car = 0; car < answers.Length; car++)
        {
            if (answers[car] is ReadingParse.Number number)
            {
                numbers.Add((car, number.Value));
                continue;
            }

            var word = answers[car] is ReadingParse.Word { Answer: var said } ? said.Id : "";
            if (!heaps.TryGetValue(word, out var heap))
            {
                heaps[word] = heap = _wordHeaps++;
            }

            words.Add((car, heap));
        }

        _numbers = [.. numbers.OrderBy(n => n.Number)];
        _words = [.. words];
    }

    /// <summary>How many suspects are left on average, every heap of equal answers as likely as it has suspects.</summary>
    /// <param name="blur">By how much a number may be off: those nearer to each other are one heap.</param>
    public double ExpectedLeft(bool[] isAlive, Func<double, double> blur)
    {
        // Who can't say agrees with every answer.
        var counts = CountWords(isAlive);
        var (unsure, total, squares) = (counts[Unsure], 0.0, 0.0);
        void Add(int heap)
        {
            total += heap;
            squares += (double)heap * (heap + unsure);
        }

        foreach (var count in counts.AsSpan(Unsure + 1))
        {
            Add(count);
        }

        // The heap in which a suspect was last met; the first is number 1.
        var met = new int[_suspectCount];
        var (heapNumber, inHeap) = (0, 0);
        var last = double.NegativeInfinity;
        foreach (var (car, number) in _numbers)
        {
            if (!isAlive[car])
            {
                continue;
            }

            if (number - last > blur(number))
            {
                Add(inHeap);
                (heapNumber, inHeap) = (heapNumber + 1, 0);
            }

            last = number;
            ref var seen = ref met[_suspects[car]];
            inHeap += seen == heapNumber ? 0 : 1;
            seen = heapNumber;
        }

        Add(inHeap);
        return total == 0 ? double.PositiveInfinity : squares / total;
    }

    private int[] CountWords(bool[] isAlive)
    {
        var counts = new int[_wordHeaps];
        var isCounted = new bool[_wordHeaps * _suspectCount];
        foreach (var (car, heap) in _words)
        {
            ref var counted = ref isCounted[(heap * _suspectCount) + _suspects[car]];
            if (isAlive[car] && !counted)
            {
                counted = true;
                counts[heap]++;
            }
        }

        return counts;
    }
}
