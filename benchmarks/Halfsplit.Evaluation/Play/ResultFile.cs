using System.IO.Compression;
using System.Text.Json;

namespace Halfsplit.Evaluation.Play;

/// <summary>
/// Results as JSON lines, appended as they come. A line that an interruption has cut short is left out on reading, and its
/// car played again. What is finished can be packed: the same lines in order, compressed, beside the file.
/// </summary>
public sealed class ResultFile : IDisposable
{
    private readonly Lock _lock = new();
    private readonly StreamWriter _writer;

    private ResultFile(StreamWriter writer) => _writer = writer;

    /// <summary>Opens for appending.</summary>
    public static ResultFile Append(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var cut = EndsInsideLine(path);
        var writer = new StreamWriter(path, append: true);
        if (cut)
        {
            writer.WriteLine();
        }

        return new ResultFile(writer);
    }

    /// <summary>Reads what is there, packed and not; nothing where there is no file.</summary>
    public static IEnumerable<CarResult> Read(string path) =>
        Packed(path).Concat(File.Exists(path) ? File.ReadLines(path) : []).Select(Parse).OfType<CarResult>().DistinctBy(r => r.Key);

    /// <summary>Puts all lines of a file into its packed neighbour, in the order of cars and players, and takes the file away.</summary>
    public static void Pack(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (!File.Exists(path))
        {
            return;
        }

        var results = Read(path).OrderBy(r => r.Car).ThenBy(r => r.Player, StringComparer.Ordinal).ToList();
        using (var writer = new StreamWriter(new GZipStream(File.Create(PackedPath(path) + ".new"), CompressionLevel.SmallestSize)))
        {
            results.ForEach(r => writer.WriteLine(JsonSerializer.Serialize(r)));
        }

        File.Move(PackedPath(path) + ".new", PackedPath(path), overwrite: true);
        File.Delete(path);
    }

    private static string PackedPath(string path) => path + ".gz";

    private static IEnumerable<string> Packed(string path)
    {
        if (!File.Exists(PackedPath(path)))
        {
            yield break;
        }

        using var reader = new StreamReader(new GZipStream(File.OpenRead(PackedPath(path)), CompressionMode.Decompress));
        while (reader.ReadLine() is { } line)
        {
            yield return line;
        }
    }

    public void Write(CarResult result)
    {
        lock (_lock)
        {
            _writer.WriteLine(JsonSerializer.Serialize(result));
            _writer.Flush();
        }
    }

    public void Dispose() => _writer.Dispose();

    private static CarResult? Parse(string line)
    {
        try
        {
            return line.Length == 0 ? null : JsonSerializer.Deserialize<CarResult>(line);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static bool EndsInsideLine(string path)
    {
        if (!File.Exists(path))
        {
            return false;
        }

        using var file = File.OpenRead(path);
        if (file.Length == 0)
        {
            return false;
        }

        file.Seek(-1, SeekOrigin.End);
        return file.ReadByte() != '\n';
    }
}
