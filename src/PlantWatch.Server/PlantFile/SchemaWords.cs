using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile;

/// <summary>Puts a schema into words: what is expected at a place, which keys are known there, which are missing and why they are needed.</summary>
internal sealed class SchemaWords(JsonObject root)
{
    public static bool IsAboutTheValue(string keyword) => keyword is "type" or "enum" or "const" or "pattern" or "minimum" or "maximum"
        or "exclusiveMinimum" or "exclusiveMaximum" or "minLength" or "maxLength" or "minItems" or "maxItems";

    /// <summary>"expected a number above 0 (m3), found 'big'".</summary>
    public string Expected(string[] evaluation, PlantNode found)
    {
        var schema = At(evaluation);
        var text = $"expected {Describe(schema)}, found {found.Describe()}{Hint(schema, found)}";
        return found is PlantScalar { Value: string word } && schema["enum"] is JsonArray options
            ? text + Spelling.DidYouMean(word, Strings(options))
            : text;
    }

    /// <summary>One complaint for each required key that is not there.</summary>
    public void Missing(string[] evaluation, Place place, Complaints complaints)
    {
        var schema = At(evaluation);
        foreach (var key in Strings(schema["required"] as JsonArray))
        {
            if (place[key].Exists || place.Node is not PlantMapping) continue;
            complaints.Add(place.Line, Place.Join(place.Path, key), $"the key '{key}' is missing: {Need(schema, key)}");
        }
    }

    private string Need(JsonObject schema, string key) => schema["properties"]?[key] is JsonObject property
        ? "expected " + Describe(Merged(property))
        : schema["description"]?.GetValue<string>() ?? "it is required here";

    public IReadOnlyList<string> KnownKeys(string[] evaluation) =>
        At(evaluation)["properties"] is JsonObject properties ? [.. properties.Select(property => property.Key)] : [];

    public static string UnknownKey(string key, IReadOnlyList<string> known, PlantMapping? beside)
    {
        var free = known.Where(name => beside?.Find(name) is null).ToList();
        var hint = Spelling.DidYouMean(key, free);
        return $"unknown key '{Text.Short(key)}'" + (hint.Length > 0 ? hint : $"; known keys here: {string.Join(", ", known)}");
    }

    private static string Describe(JsonObject schema)
    {
        if (schema["x-expected"] is JsonValue words) return words.GetValue<string>();
        if (schema["enum"] is JsonArray options) return "one of " + string.Join(", ", Strings(options));
        var unit = schema["x-unit"] is JsonValue name ? $" ({name})" : "";
        return schema["type"]?.GetValue<string>() switch
        {
            "number" => "a number" + Bounds(schema) + unit,
            "integer" => "a whole number" + Bounds(schema) + unit,
            "string" => "text" + Length(schema),
            "boolean" => "true or false",
            "array" => "a list" + Count(schema),
            "object" => "the keys " + string.Join(", ", Strings(schema["required"] as JsonArray)),
            _ => "something else",
        };
    }

    private static string Bounds(JsonObject schema) => (Number(schema, "exclusiveMinimum"), Number(schema, "minimum"), Number(schema, "maximum")) switch
    {
        ({ } above, _, { } most) => $" above {above} and up to {most}",
        ({ } above, _, _) => $" above {above}",
        (_, { } least, { } most) => $" from {least} to {most}",
        (_, { } least, _) => $" of {least} or more",
        (_, _, { } most) => $" up to {most}",
        _ => "",
    };

    private static string Length(JsonObject schema) => Number(schema, "maxLength") is { } most ? $" of at most {most} characters" : "";

    private static string Count(JsonObject schema) => (Number(schema, "minItems"), Number(schema, "maxItems")) switch
    {
        ({ } least, { } most) => $" of {least} to {most} items",
        ({ } least, _) => $" of at least {least}",
        (_, { } most) => $" of at most {most} items",
        _ => "",
    };

    // Two slips that YAML turns into something else without a word.
    private static string Hint(JsonObject schema, PlantNode found) => (schema["type"]?.GetValue<string>(), found) switch
    {
        ("object", PlantScalar { Value: string text }) when text.Contains(':', StringComparison.Ordinal) => " (a colon needs a space after it)",
        ("string", PlantScalar { Value: double or bool }) => " (put it in quotes)",
        _ => "",
    };

    private static string? Number(JsonObject schema, string key) => schema[key] is JsonValue value ? Text.Number(value.GetValue<double>()) : null;

    private static IEnumerable<string> Strings(JsonArray? array) => array?.Select(item => item!.GetValue<string>()) ?? [];

    private JsonObject At(string[] evaluation)
    {
        JsonNode at = root;
        foreach (var step in evaluation)
            at = step == "$ref" ? Target(at) : at is JsonArray list ? list[int.Parse(step)]! : at[step]!;
        return at.AsObject();
    }

    private JsonObject Merged(JsonObject property) => property["$ref"] is null ? property : Target(property).AsObject();

    private JsonNode Target(JsonNode from) =>
        from["$ref"]!.GetValue<string>()["#/".Length..].Split('/').Aggregate((JsonNode)root, (node, step) => node[step]!);
}
