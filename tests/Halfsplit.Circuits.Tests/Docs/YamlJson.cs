using System.Globalization;
using System.Text.Json.Nodes;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Halfsplit.Circuits.Tests.Docs;

/// <summary>YAML as an editor sees it: plain scalars typed by the core schema of YAML 1.2.</summary>
internal static class YamlJson
{
    public static JsonNode? Parse(string yaml)
    {
        var parser = new Parser(new StringReader(yaml));
        parser.Consume<StreamStart>();
        return parser.TryConsume<DocumentStart>(out _) ? Node(parser) : null;
    }

    private static JsonNode? Node(Parser parser)
    {
        if (parser.TryConsume<Scalar>(out var scalar))
        {
            return scalar.Style == ScalarStyle.Plain ? Plain(scalar.Value) : JsonValue.Create(scalar.Value);
        }

        if (parser.TryConsume<SequenceStart>(out _))
        {
            var list = new JsonArray();
            while (!parser.TryConsume<SequenceEnd>(out _))
            {
                list.Add(Node(parser));
            }

            return list;
        }

        parser.Consume<MappingStart>();
        var map = new JsonObject();
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var key = parser.Consume<Scalar>().Value;
            map.Add(key, Node(parser));
        }

        return map;
    }

    private static JsonValue? Plain(string text) => text switch
    {
        "" or "null" or "~" => null,
        "true" => JsonValue.Create(true),
        "false" => JsonValue.Create(false),
        _ when long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) => JsonValue.Create(whole),
        _ when double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && char.IsAsciiDigit(text[0]) =>
            JsonValue.Create(number),
        _ => JsonValue.Create(text),
    };
}
