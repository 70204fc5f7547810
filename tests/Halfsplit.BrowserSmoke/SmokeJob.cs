using System.Text.Json;

namespace Halfsplit.BrowserSmoke;

/// <summary>
/// What the browser is asked to do, and the desktop beside it: the test compares the two answers, so the
/// answer must not depend on the machine, the time or the culture.
/// </summary>
public static class SmokeJob
{
    /// <summary>Runs the engine and returns its answer as one JSON object.</summary>
    public static string Run()
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteBoolean("ran", true);
            json.WriteEndObject();
        }

        return System.Text.Encoding.UTF8.GetString(buffer.ToArray());
    }
}
