using System.Text;
using Halfsplit.Bench.Answers;

namespace Halfsplit.Bench.Motors;

/// <summary>A current from the bytes of a recording: WAV by its first letters, a table of text otherwise.</summary>
public static class TraceBytes
{
    /// <param name="samplesPerSecond">For a table of one column.</param>
    /// <param name="ampsAtFull">For a WAV.</param>
    public static Outcome<CurrentTrace> Parse(ReadOnlySpan<byte> bytes, double? samplesPerSecond, double ampsAtFull) => bytes.StartsWith("RIFF"u8)
        ? TraceSound.Parse(bytes, ampsAtFull)
        : TraceText.Parse(Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF'), samplesPerSecond);
}
