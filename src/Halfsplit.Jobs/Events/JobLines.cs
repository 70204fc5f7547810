using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Halfsplit.Circuits.Messages;

namespace Halfsplit.Jobs.Events;

/// <summary>What was read from JSON lines.</summary>
/// <param name="Document">All events that could be read.</param>
/// <param name="Damaged">The lines that could not, in order.</param>
/// <param name="HasHead">Whether the head line was there; without it and without events, this is no job.</param>
/// <param name="EndsInsideLine">Whether the last line lacks its end, as when the writer was killed.</param>
public sealed record JobReading(
    JobDocument Document, ImmutableArray<DamagedLine> Damaged, bool HasHead, bool EndsInsideLine)
{
    /// <summary>Whether this is a job at all.</summary>
    public bool IsJob => HasHead || !Document.Events.IsEmpty;
}

/// <summary>A line that holds no event. It stays in the file as it is.</summary>
/// <param name="Number">Counted from 1.</param>
/// <param name="CutShort">Whether it is the beginning of a JSON text: a write that did not end.</param>
/// <param name="Text">The line, with U+FFFD for what is no UTF-8.</param>
public sealed record DamagedLine(int Number, bool CutShort, string Text)
{
    public Message Message => new(CutShort ? "job.line-cut-short" : "job.line-damaged", Number);
}

/// <summary>Parts bytes into lines, and tells the head, events and damaged lines apart.</summary>
internal static class JobLines
{
    private const string Format = "halfsplit-job";

    private static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    /// <summary>The first line of every job file.</summary>
    public static string Head(int version) =>
        $$"""{"format":"{{Format}}","version":{{version.ToString(CultureInfo.InvariantCulture)}}}""" + "\n";

    public static JobReading Read(ReadOnlySpan<byte> utf8)
    {
        var version = 0;
        var events = new List<StoredEvent>();
        var damaged = ImmutableArray.CreateBuilder<DamagedLine>();
        var endsInsideLine = utf8.Length > 0 && utf8[^1] != (byte)'\n';
        // Some editors put a byte order mark in front.
        if (utf8.StartsWith("\uFEFF"u8)) utf8 = utf8[3..];
        for (var number = 1; utf8.Length > 0; number++)
        {
            var end = utf8.IndexOf((byte)'\n');
            var line = (end < 0 ? utf8 : utf8[..end]).Trim(" \t\r"u8);
            utf8 = end < 0 ? [] : utf8[(end + 1)..];
            if (line.IsEmpty) continue;

            var text = Decode(line);
            if (text is not null && ReadHead(text) is { } found) version = Math.Max(version, found);
            else if (text is not null && StoredEvent.Read(text) is { } stored) events.Add(stored);
            else damaged.Add(new DamagedLine(number, IsCutShort(line), text ?? Encoding.UTF8.GetString(line)));
        }

        var document = JobDocument.Of(events, version == 0 ? JobDocument.CurrentVersion : version);
        return new JobReading(document, damaged.DrainToImmutable(), version > 0, endsInsideLine);
    }

    private static string? Decode(ReadOnlySpan<byte> line)
    {
        try
        {
            return Strict.GetString(line);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    /// <summary>The version, if this is a head line. Two files put one behind the other have two.</summary>
    private static int? ReadHead(string line)
    {
        if (!line.Contains(Format, StringComparison.Ordinal)) return null;
        try
        {
            using var json = JsonDocument.Parse(line);
            var fields = new EventFields(json.RootElement, new EventFields.Trouble());
            if (fields.OptionalText("format") != Format || fields.OptionalText("id") is not null) return null;
            return fields.OptionalNumber("version") is { } version && version is >= 1 and <= int.MaxValue
                ? (int)version
                : null;
        }
        catch (Exception trouble) when (trouble is JsonException or InvalidOperationException)
        {
            return null;
        }
    }

    private static bool IsCutShort(ReadOnlySpan<byte> line)
    {
        if (line[0] != (byte)'{') return false;
        var reader = new Utf8JsonReader(line, isFinalBlock: false, state: default);
        try
        {
            while (reader.Read())
            {
            }

            return reader.TokenType != JsonTokenType.EndObject || reader.CurrentDepth > 0;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
