using System.Text.Json;
using System.Text.Json.Nodes;

namespace PlantWatch.Server.PlantFile.Editing;

/// <summary>What an edit means, apart from any text: a tree in, a tree out. The text that an edit makes must read as this.</summary>
internal static class JsonEdits
{
    /// <summary>The tree after an edit; null where there is nothing to do it on.</summary>
    public static JsonNode? Apply(JsonNode root, YamlEdit edit)
    {
        if (YamlPath.Steps(edit.Path) is not { } steps) return null;
        var next = root.DeepClone();
        var holder = steps.SkipLast(1).Aggregate((JsonNode?)next, Child);
        return edit.Do switch
        {
            YamlDo.Set => Set(holder, steps[^1], edit.Value?.DeepClone()) ? next : null,
            YamlDo.Add => Add(holder, steps[^1], edit.Value?.DeepClone()) ? next : null,
            YamlDo.Remove => Remove(holder, steps[^1]) ? next : null,
            _ => null,
        };
    }

    /// <summary>The same tree made of the kinds that reading YAML gives, so that both can be compared; null for what YAML cannot hold here.</summary>
    public static JsonNode? Plain(JsonNode? node) => node switch
    {
        JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, Plain(p.Value)))),
        JsonArray a => new JsonArray([.. a.Select(Plain)]),
        JsonValue v => v.GetValueKind() switch
        {
            JsonValueKind.String => JsonValue.Create(v.GetValue<string>()),
            JsonValueKind.Number => JsonValue.Create(NumberOf(v)),
            JsonValueKind.True => JsonValue.Create(true),
            JsonValueKind.False => JsonValue.Create(false),
            _ => null,
        },
        _ => null,
    };

    private static double NumberOf(JsonValue value) => value.TryGetValue<double>(out var number) ? number : double.Parse(value.ToJsonString(), System.Globalization.CultureInfo.InvariantCulture);

    private static JsonNode? Child(JsonNode? node, object step) => (node, step) switch
    {
        (JsonObject o, string key) => o[key],
        (JsonArray a, int index) when index < a.Count => a[index],
        _ => null,
    };

    private static bool Set(JsonNode? holder, object step, JsonNode? value)
    {
        if (holder is JsonObject o && step is string key) o[key] = value;
        else if (holder is JsonArray a && step is int index && index < a.Count) a[index] = value;
        else return false;
        return true;
    }

    private static bool Add(JsonNode? holder, object step, JsonNode? item)
    {
        var list = Child(holder, step);
        if (list is not JsonArray known) return list is null && Set(holder, step, new JsonArray(item));
        known.Add(item);
        return true;
    }

    private static bool Remove(JsonNode? holder, object step)
    {
        if (holder is JsonObject o && step is string key) return o.Remove(key);
        if (holder is not JsonArray a || step is not int index || index >= a.Count) return false;
        a.RemoveAt(index);
        return true;
    }
}
