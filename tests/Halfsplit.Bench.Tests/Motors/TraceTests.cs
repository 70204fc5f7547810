using Halfsplit.Bench.Motors;
using Xunit;

namespace Halfsplit.Bench.Tests.Motors;

public sealed class TraceTests
{
    [Theory]
    [InlineData("amps\n1.5\n2.5\n3\n")]
    [InlineData("1.5\r\n2.5\r\n3")]
    public void One_column_needs_its_rate(string text)
    {
        Assert.Equal([1.5, 2.5, 3], Said.Good(TraceText.Parse(text, 100)).Amps);
        Said.Refused(TraceText.Parse(text, null), "--rate", "10000000");
    }

    [Theory]
    [InlineData("s,A\n0,1\n0.001,2\n0.002,3")]
    [InlineData("s;A\n0;1\n0,001;2\n0,002;3")]
    [InlineData("0\t1\n0.001\t2\n0.002\t3")]
    public void Two_columns_tell_their_rate(string text)
    {
        var trace = Said.Good(TraceText.Parse(text, null));

        Assert.Equal(1000, trace.SamplesPerSecond, 1e-6);
        Assert.Equal([1, 2, 3], trace.Amps);
    }

    [Fact]
    public void What_is_no_table_is_told_with_its_line()
    {
        Said.Refused(TraceText.Parse("0,1\n0.001,oops", null), "Line 2", "oops");
        Said.Refused(TraceText.Parse("nothing here", 100), "one column", "two");
        Said.Refused(TraceText.Parse("0,1\n0.001,2\n0.0005,3", null), "even", "steps");
    }

    [Theory]
    [InlineData(8, 1)]
    [InlineData(16, 1)]
    [InlineData(24, 2)]
    [InlineData(32, 1)]
    public void A_recording_of_whole_numbers_comes_back_to_its_last_bit(int bits, int channels)
    {
        double[] amps = [0, 2.5, -5, 7.5];
        var trace = Said.Good(TraceSound.Parse(Recording(amps, bits, channels, 44_100), 10));

        Assert.Equal(44_100, trace.SamplesPerSecond);
        Assert.All(amps.Zip(trace.Amps), pair => Assert.Equal(pair.First, pair.Second, 20.0 / Math.Pow(2, bits - 1)));
    }

    // IEEE 754 numbers as a recorder writes them, full scale 1; the bytes of 0.25 and -0.5 by hand.
    [Fact]
    public void A_recording_of_floating_point_comes_back_exactly()
    {
        byte[] samples = [0, 0, 0x80, 0x3E, 0, 0, 0, 0xBF, 0, 0, 0, 0];
        var trace = Said.Good(TraceSound.Parse(Wave(3, 32, 1, 8000, samples), 20));

        Assert.Equal([5, -10, 0], trace.Amps);
        Assert.Equal(8000, trace.SamplesPerSecond);
    }

    [Fact]
    public void What_is_no_number_in_a_recording_is_nothing()
    {
        var samples = new[] { float.NaN, float.PositiveInfinity, 0.5f }.SelectMany(BitConverter.GetBytes).ToArray();

        Assert.Equal([0, 0, 5], Said.Good(TraceSound.Parse(Wave(3, 32, 1, 8000, samples), 10)).Amps);
    }

    [Fact]
    public void What_is_no_recording_is_refused()
    {
        Said.Refused(TraceSound.Parse("no sound at all"u8, 10), "WAV", "recording");
        Said.Refused(TraceSound.Parse(Recording([1], 16, 1, 8000).AsSpan(0, 30), 10), "WAV", "recording");
        Said.Refused(TraceSound.Parse(Recording([1], 12, 1, 8000), 10), "12", "32");
    }

    private static byte[] Recording(double[] amps, int bits, int channels, int rate)
    {
        var samples = new List<byte>();
        foreach (var value in amps)
        {
            for (var c = 0; c < channels; c++)
            {
                // The second channel holds something else.
                var whole = (long)((c == 0 ? value / 10 : 0.1) * Math.Pow(2, bits - 1)) + (bits == 8 ? 128 : 0);
                samples.AddRange(BitConverter.GetBytes(whole).Take(bits / 8));
            }
        }

        return Wave(1, bits, channels, rate, [.. samples]);
    }

    private static byte[] Wave(short kind, int bits, int channels, int rate, byte[] samples)
    {
        using var stream = new MemoryStream();
        using var writer = new BinaryWriter(stream);
        var frame = channels * bits / 8;
        writer.Write("RIFF"u8);
        writer.Write(36 + samples.Length);
        writer.Write("WAVEfmt "u8);
        writer.Write(16);
        writer.Write(kind);
        writer.Write((short)channels);
        writer.Write(rate);
        writer.Write(rate * frame);
        writer.Write((short)frame);
        writer.Write((short)bits);
        writer.Write("data"u8);
        writer.Write(samples.Length);
        writer.Write(samples);
        return stream.ToArray();
    }
}
