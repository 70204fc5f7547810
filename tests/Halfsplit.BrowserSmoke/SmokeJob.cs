using System.Globalization;
using System.Text;
using System.Text.Json;
using Halfsplit.Circuits;
using Halfsplit.Circuits.Messages;
using Halfsplit.Circuits.Model;

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
        var terminal = TerminalName.Parse("K1.87");
        var texts = new TextCatalog(CultureInfo.InvariantCulture, CircuitTexts.Source);

        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            json.WriteString("terminal", terminal.ToString());
            // Words come from an embedded resource, which trimming must leave in.
            json.WriteString("message", texts.Say(new Message("wiring.unknown-part", terminal.Part)));
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray());
    }
}
