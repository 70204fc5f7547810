using System.Text.Json;

namespace Halfsplit.Evaluation.Play;

/// <summary>
/// Results as JSON lines, appended as they come. A line that an interruption has cut short is left out on reading, and its
/// car played again.
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

    /// <summary>Reads what is there; nothing where there is no file.</summary>
    public static IEnumerable<CarResult> Read(string path)
    {
        if (!File.Exists(path))
        {
            yield break;
        }

        foreach (var line in File.ReadLines(path))
        {
            if (Parse(line) is { } result)
            {
                yield return result;
            }
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
