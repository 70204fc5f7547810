using System.Buffers;
using System.Text;
using System.Text.Json;

namespace Halfsplit.Jobs.Events;

/// <summary>
/// An event together with its line. The line is what is kept, copied and merged, so that fields and kinds this
/// version does not know are never lost.
/// </summary>
public sealed record StoredEvent
{
    private StoredEvent(JobEvent happened, string line)
    {
        Event = happened;
        Line = line;
    }

    public EventId Id => Event.Id;

    /// <summary>What the line means to this version.</summary>
    public JobEvent Event { get; }

    /// <summary>One JSON object, without a line break.</summary>
    public string Line { get; }

    /// <summary>An event that is written now.</summary>
    /// <exception cref="ArgumentException">An <see cref="UnknownEvent"/> has no content to write.</exception>
    public static StoredEvent Of(JobEvent happened)
    {
        ArgumentNullException.ThrowIfNull(happened);
        return new StoredEvent(happened, JobEventWriter.Write(happened));
    }

    /// <summary>Reads a line; null if it is no JSON object with an event's id.</summary>
    public static StoredEvent? Read(string line)
    {
        ArgumentNullException.ThrowIfNull(line);
        // Our own writer never breaks a line, but pasted JSON may. Inside a text JSON allows no raw line break.
        line = line.Replace('\n', ' ').Replace('\r', ' ');
        try
        {
            using var json = JsonDocument.Parse(line);
            return JobEventReader.Read(json.RootElement) is { } happened ? new StoredEvent(happened, line.Trim()) : null;
        }
        catch (Exception trouble) when (trouble is JsonException or InvalidOperationException)
        {
            // The second: a field whose very name is no text (half a surrogate pair).
            return null;
        }
    }

    public bool Equals(StoredEvent? other) => other is not null && Id == other.Id && Line == other.Line;

    public override int GetHashCode() => HashCode.Combine(Id, Line.GetHashCode(StringComparison.Ordinal));

    /// <summary>The content without what JSON leaves free: blanks, the order of fields, ways to escape.</summary>
    internal string Content()
    {
        try
        {
            using var json = JsonDocument.Parse(Line);
            var buffer = new ArrayBufferWriter<byte>();
            using (var writer = new Utf8JsonWriter(buffer)) WriteSorted(writer, json.RootElement);
            return Encoding.UTF8.GetString(buffer.WrittenSpan);
        }
        catch (InvalidOperationException)
        {
            // A text that is no text (half a surrogate pair) has no other form than its own.
            return Line;
        }
    }

    private static void WriteSorted(Utf8JsonWriter writer, JsonElement element)
    {
        switch (element.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                foreach (var field in element.EnumerateObject().OrderBy(field => field.Name, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(field.Name);
                    WriteSorted(writer, field.Value);
                }

                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach (var item in element.EnumerateArray()) WriteSorted(writer, item);
                writer.WriteEndArray();
                break;
            default:
                element.WriteTo(writer);
                break;
        }
    }
}
