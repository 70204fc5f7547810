using System.Text.Json;
using System.Text.Json.Serialization;

namespace Halfsplit.App.Desk;

/// <summary>Requests and replies as JSON, without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(DeskRequest))]
[JsonSerializable(typeof(DeskReply))]
[JsonSerializable(typeof(Link.Draft))]
[JsonSerializable(typeof(Link.JobLines[]))]
public sealed partial class DeskJson : JsonSerializerContext
{
    public static string Write(DeskRequest request) => JsonSerializer.Serialize(request, Default.DeskRequest);

    public static string Write(DeskReply reply) => JsonSerializer.Serialize(reply, Default.DeskReply);

    public static DeskRequest ReadRequest(string json) => JsonSerializer.Deserialize(json, Default.DeskRequest)!;

    public static DeskReply ReadReply(string json) => JsonSerializer.Deserialize(json, Default.DeskReply)!;
}
