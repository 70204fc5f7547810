using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Halfsplit.Cli.Terminals;

namespace Halfsplit.Cli.Output;

/// <summary>One JSON object on the output.</summary>
public static class JsonOutput
{
    // For people and scripts, not for a web page: Ω and > stay as they are.
    private static readonly JsonWriterOptions Options =
        new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Highest odds written: nothing is certain.</summary>
    private const double MostOdds = 0.999999;

    /// <summary>One object over several lines.</summary>
    public static void Write(Terminal terminal, Action<Utf8JsonWriter> body) => Write(terminal, body, Options);

    /// <summary>One object in one line, for conversations.</summary>
    public static void WriteLine(Terminal terminal, Action<Utf8JsonWriter> body) =>
        Write(terminal, body, Options with { Indented = false });

    private static void Write(Terminal terminal, Action<Utf8JsonWriter> body, JsonWriterOptions options)
    {
        ArgumentNullException.ThrowIfNull(terminal);
        ArgumentNullException.ThrowIfNull(body);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, options))
        {
            json.WriteStartObject();
            body(json);
            json.WriteEndObject();
        }

        terminal.Out.Write(Encoding.UTF8.GetString(stream.ToArray()));
        terminal.Out.Write('\n');
    }

    public static void Texts(this Utf8JsonWriter json, string name, IEnumerable<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
        {
            json.WriteStringValue(text);
        }

        json.WriteEndArray();
    }

    /// <summary>A number, or null where there is none.</summary>
    public static void Number(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            // A minus before zero says nothing.
            json.WriteNumber(name, number + 0.0);
        }
        else
        {
            json.WriteNull(name);
        }
    }

    public static void Odds(this Utf8JsonWriter json, string name, double odds) =>
        json.WriteNumber(name, Math.Clamp(odds, 0, MostOdds));

    public static void Object(this Utf8JsonWriter json, string name, Action body)
    {
        json.WriteStartObject(name);
        body();
        json.WriteEndObject();
    }

    public static void Array<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> body)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            body(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
