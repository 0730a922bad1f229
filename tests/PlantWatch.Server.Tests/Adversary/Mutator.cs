using System.Text;
using System.Text.Json.Nodes;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>Spoils requests in a repeatable way: the same seed gives the same requests.</summary>
internal sealed class Mutator(int seed)
{
    private readonly Random _random = new(seed);

    private static readonly string[] Values =
    [
        "null", "true", "-0.0", "0", "1e308", "-1e308", "1e400", "\"NaN\"", "\"Infinity\"", "99999999999999999999", "-1", "3", "\"\"", "\" \"", "\"photometer, comparator\"", "[]", "{}", "[null]",
        "[[[[[[[[[[]]]]]]]]]]", "\"\\u0000\"", "\"\\ud800\"", "\"<script>alert(1)</script>\"", "\"0001-01-01T00:00:00Z\"", "\"9999-12-31T23:59:59.9999999Z\"", "\"1970-01-01T00:00:00Z\"",
        "\"2026-03-29T01:30:00\"", "\"2026-10-25T01:30:00+01:00\"", "\"00000000-0000-0000-0000-000000000000\"", "\"../../etc/passwd\"", "{\"a\":{\"b\":[1,{\"c\":null}]}}",
    ];

    private static readonly string[] Texts =
    [
        "", "%00", "abc", "-1", "0", "1e9", "2147483647", "99999999999999999999", "NaN", "null", "0001-01-01T00:00:00Z", "9999-12-31T23:59:59Z", "2026-03-29T01:30:00Z", "2026-03-29", "ph", "water", "main",
        "hall", "..%2f..%2fetc%2fpasswd", "%F0%28%8C%28", "%E2%80%AE", "ph&probe=water", "%3Cscript%3E", "main.png", "main.svg",
    ];

    public T One<T>(IReadOnlyList<T> of) => of[_random.Next(of.Count)];

    public bool Chance(double share) => _random.NextDouble() < share;

    public string Text() => Chance(0.02) ? new string('x', 6000) : One(Texts);

    /// <summary>A body near a good one.</summary>
    public byte[] Body(string good)
    {
        if (Chance(0.1)) return Bytes(good);
        var json = JsonNode.Parse(good)!;
        for (var times = _random.Next(1, 4); times > 0; times--) Spoil(json);
        return Encoding.UTF8.GetBytes(json.ToJsonString());
    }

    private byte[] Bytes(string good)
    {
        var bytes = Encoding.UTF8.GetBytes(good);
        switch (_random.Next(5))
        {
            case 0: return bytes[.._random.Next(bytes.Length)];
            case 1: return Encoding.UTF8.GetBytes(new string('[', 5000));
            case 2: return Encoding.UTF8.GetBytes(new string(' ', 300_000) + good);
            case 3: return [];
            default:
                for (var i = 0; i < 3; i++) bytes[_random.Next(bytes.Length)] = (byte)_random.Next(256);
                return bytes;
        }
    }

    private void Spoil(JsonNode node)
    {
        while (true)
        {
            var children = node is JsonObject o ? o.Select(p => p.Value).ToList() : node is JsonArray a ? [.. a] : [];
            if (children.Count > 0 && Chance(0.4) && One(children) is JsonObject or JsonArray && children.OfType<JsonNode>().FirstOrDefault(c => c is JsonObject or JsonArray) is { } deeper)
            {
                node = deeper;
                continue;
            }

            if (node is JsonObject fields) SpoilField(fields);
            else if (node is JsonArray items) SpoilItem(items);
            return;
        }
    }

    private void SpoilField(JsonObject fields)
    {
        if (fields.Count == 0 || Chance(0.1)) fields["additional"] = Value();
        else if (Chance(0.2)) fields.Remove(One(fields.Select(p => p.Key).ToList()));
        else fields[One(fields.Select(p => p.Key).ToList())] = Value();
    }

    private void SpoilItem(JsonArray items)
    {
        if (items.Count == 0 || Chance(0.3)) items.Add(Value());
        else if (Chance(0.3)) for (var copies = _random.Next(1000); copies > 0; copies--) items.Add(items[0]?.DeepClone());
        else items[_random.Next(items.Count)] = Value();
    }

    private JsonNode? Value()
    {
        if (Chance(0.03)) return JsonValue.Create(new string('x', 100_000));
        var text = One(Values);
        return text == "\"\\ud800\"" ? JsonValue.Create("\uFFFD") : JsonNode.Parse(text);
    }
}
