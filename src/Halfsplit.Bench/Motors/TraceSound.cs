using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Text;
using Halfsplit.Bench.Answers;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Bench.Motors;

/// <summary>Reads a current from the bytes of a WAV recording: integers of 8 to 32 bits, or 32-bit floating point; the first channel.</summary>
public static class TraceSound
{
    private const int Integers = 1, Floats = 3, Extensible = 0xFFFE;

    /// <param name="ampsAtFull">Amps at full scale, by the clamp and the recorder's gain.</param>
    public static Outcome<CurrentTrace> Parse(ReadOnlySpan<byte> bytes, double ampsAtFull)
    {
        var limits = new InputLimits().Within("full-scale", ampsAtFull, "full-scale", Unit.Amp);
        if (!limits.AreKept)
        {
            return Outcome.Wrong<CurrentTrace>(limits.Problems);
        }

        if (bytes.Length < 12 || !Is(bytes, 0, "RIFF") || !Is(bytes, 8, "WAVE"))
        {
            return Outcome.Wrong<CurrentTrace>(new Message("bench-limit.no-wave"));
        }

        ReadOnlySpan<byte> format = [], data = [];
        for (var at = 12; at + 8 <= bytes.Length;)
        {
            var size = (int)Math.Min(BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]), (uint)(bytes.Length - at - 8));
            if (Is(bytes, at, "fmt "))
            {
                format = bytes.Slice(at + 8, size);
            }
            else if (Is(bytes, at, "data"))
            {
                data = bytes.Slice(at + 8, size);
            }

            // Chunks begin at even places.
            at += 8 + size + (size % 2);
        }

        return format.Length < 16 || data.Length == 0 ? Outcome.Wrong<CurrentTrace>(new Message("bench-limit.no-wave")) : Read(format, data, ampsAtFull);
    }

    private static Outcome<CurrentTrace> Read(ReadOnlySpan<byte> format, ReadOnlySpan<byte> data, double ampsAtFull)
    {
        var kind = BinaryPrimitives.ReadUInt16LittleEndian(format);
        kind = kind == Extensible && format.Length >= 26 ? BinaryPrimitives.ReadUInt16LittleEndian(format[24..]) : kind;
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(format[4..]);
        var frame = BinaryPrimitives.ReadUInt16LittleEndian(format[12..]);
        var bits = BinaryPrimitives.ReadUInt16LittleEndian(format[14..]);
        if (rate == 0 || frame < bits / 8 || !((kind == Integers && bits is 8 or 16 or 24 or 32) || (kind == Floats && bits == 32)))
        {
            return Outcome.Wrong<CurrentTrace>(new Message("bench-limit.wave-kind", kind, bits));
        }

        var amps = ImmutableArray.CreateBuilder<double>(data.Length / frame);
        for (var at = 0; at + frame <= data.Length; at += frame)
        {
            var sample = Sample(data.Slice(at, bits / 8), kind, bits);
            amps.Add((double.IsFinite(sample) ? sample : 0) * ampsAtFull);
        }

        return Outcome.Of(new CurrentTrace(amps.ToImmutable(), rate));
    }

    /// <summary>From −1 to 1.</summary>
    private static double Sample(ReadOnlySpan<byte> bytes, int kind, int bits) => (kind, bits) switch
    {
        (Floats, _) => BinaryPrimitives.ReadSingleLittleEndian(bytes),
        // Eight bits have no sign; all others do.
        (_, 8) => (bytes[0] - 128) / 128.0,
        (_, 16) => BinaryPrimitives.ReadInt16LittleEndian(bytes) / 32768.0,
        (_, 24) => ((bytes[0] << 8 | bytes[1] << 16 | bytes[2] << 24) >> 8) / 8388608.0,
        _ => BinaryPrimitives.ReadInt32LittleEndian(bytes) / 2147483648.0,
    };

    private static bool Is(ReadOnlySpan<byte> bytes, int at, string name) => bytes.Slice(at, 4).SequenceEqual(Encoding.ASCII.GetBytes(name));
}
