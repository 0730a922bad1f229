using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Server.Api;

/// <summary>Enums in requests: one of the words and nothing else. A number, or two words joined by a comma, would otherwise pass for a value that nobody defined.</summary>
internal sealed class WordEnums : JsonConverterFactory
{
    public override bool CanConvert(Type typeToConvert) => typeToConvert.IsEnum;

    public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options) =>
        (JsonConverter)Activator.CreateInstance(typeof(Words<>).MakeGenericType(typeToConvert))!;

    /// <summary>The words of an enum, in their order.</summary>
    public static IEnumerable<string> Of(Type type) => Enum.GetNames(type).Select(JsonNamingPolicy.SnakeCaseLower.ConvertName);

    private sealed class Words<T> : JsonConverter<T> where T : struct, Enum
    {
        private static readonly Dictionary<string, T> Known = Of(typeof(T)).Zip(Enum.GetNames<T>().Select(Enum.Parse<T>)).ToDictionary(StringComparer.Ordinal);

        public override T Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && Known.TryGetValue(reader.GetString()!, out var value)
                ? value
                : throw new JsonException($"expected one of: {string.Join(", ", Known.Keys)}");

        public override void Write(Utf8JsonWriter writer, T value, JsonSerializerOptions options) =>
            writer.WriteStringValue(JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString()));
    }
}
