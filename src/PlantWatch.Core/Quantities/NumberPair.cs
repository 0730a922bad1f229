using System.Text.Json;

namespace PlantWatch.Core.Quantities;

/// <summary>Two numbers as a JSON array: the short form of a range or an estimate.</summary>
internal static class NumberPair
{
    public static (double First, double Second) Read(ref Utf8JsonReader reader)
    {
        if (reader.TokenType != JsonTokenType.StartArray) throw new JsonException("expected [number, number]");
        reader.Read();
        var first = reader.GetDouble();
        reader.Read();
        var second = reader.GetDouble();
        reader.Read();
        return reader.TokenType == JsonTokenType.EndArray ? (first, second) : throw new JsonException("expected [number, number]");
    }

    public static void Write(Utf8JsonWriter writer, double first, double second)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(first);
        writer.WriteNumberValue(second);
        writer.WriteEndArray();
    }
}
