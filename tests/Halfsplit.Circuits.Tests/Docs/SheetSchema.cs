using System.Text.Json.Nodes;
using Json.Schema;

namespace Halfsplit.Circuits.Tests.Docs;

/// <summary>The schema for editors.</summary>
internal static class SheetSchema
{
    private static readonly string Text = DocsFile.Read("sheet.schema.json");
    private static readonly JsonSchema Schema = JsonSchema.FromText(Text);

    public static bool Accepts(string yaml)
    {
        using var document = System.Text.Json.JsonDocument.Parse(YamlJson.Parse(yaml)?.ToJsonString() ?? "null");
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    /// <summary>Every key that the schema gives a name.</summary>
    public static IReadOnlySet<string> Keys()
    {
        var keys = new SortedSet<string>(StringComparer.Ordinal);
        Collect(JsonNode.Parse(Text), keys);
        return keys;
    }

    private static void Collect(JsonNode? node, SortedSet<string> keys)
    {
        if (node is JsonArray list)
        {
            foreach (var item in list)
            {
                Collect(item, keys);
            }
        }
        else if (node is JsonObject map)
        {
            foreach (var (name, value) in map)
            {
                if (name == "properties" && value is JsonObject properties)
                {
                    keys.UnionWith(properties.Select(p => p.Key));
                }

                Collect(value, keys);
            }
        }
    }
}
