using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>What the schema knows of a place: which keys it has, in the order in which they are usually written.</summary>
internal static class SchemaShape
{
    private static readonly JsonObject Schema = JsonNode.Parse(SchemaCheck.EmbeddedText("plant.schema.json"))!.AsObject();

    /// <summary>Keys of the group at a path; none for a place that the schema does not know.</summary>
    public static IReadOnlyList<string> KeysAt(IReadOnlyList<object> path) =>
        path.Aggregate<object, JsonNode?>(Schema, Below) is { } at && Resolved(at)?["properties"] is JsonObject known ? [.. known.Select(k => k.Key)] : [];

    private static JsonNode? Below(JsonNode? at, object step) => step is string key ? Resolved(at)?["properties"]?[key] : Resolved(at)?["items"];

    private static JsonNode? Resolved(JsonNode? at) => at?["$ref"] is { } name ? Schema["$defs"]![name.GetValue<string>()["#/$defs/".Length..]] : at;
}
