using System.Security.Cryptography;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Plant;

/// <summary>The one JSON form of states, record entries and the interface: camelCase names, snake_case enums, no derived properties.</summary>
/// <remarks>Properties are written in the order of declaration and doubles in their shortest exact form, so equal states give equal bytes: that is what the state hash is taken over.</remarks>
public static class PlantJson
{
    /// <summary>The options. Read-only.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    /// <summary>For the journal alone, which must carry whatever enters the step and nothing half made: it can write a number that is none, and refuses what lacks a part.</summary>
    internal static JsonSerializerOptions AnyNumber { get; } = Make(any: true);

    /// <summary>Canonical bytes of a state.</summary>
    public static byte[] Write(CircuitState state) => JsonSerializer.SerializeToUtf8Bytes(state, Options);

    /// <summary>A state from its canonical bytes.</summary>
    /// <exception cref="JsonException">The bytes are no state.</exception>
    public static CircuitState ReadState(ReadOnlySpan<byte> bytes) =>
        JsonSerializer.Deserialize<CircuitState>(bytes, Options) ?? throw new JsonException("a state cannot be null");

    /// <summary>SHA-256 over canonical bytes, lower-case hexadecimal.</summary>
    public static string Hash(ReadOnlySpan<byte> canonical) => Convert.ToHexStringLower(SHA256.HashData(canonical));

    /// <summary>The hash of a state: equal whether it was reached live, from a snapshot or from zero.</summary>
    public static string HashOf(CircuitState state) => Hash(Write(state));

    private static JsonSerializerOptions Make(bool any = false)
    {
        var options = new JsonSerializerOptions(JsonSerializerDefaults.Web)
        {
            IgnoreReadOnlyProperties = true,
            DefaultIgnoreCondition = JsonIgnoreCondition.Never,
            Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
            NumberHandling = any ? JsonNumberHandling.AllowNamedFloatingPointLiterals : JsonNumberHandling.Strict,
            RespectNullableAnnotations = any,
            RespectRequiredConstructorParameters = any,
        };
        options.Converters.Add(new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower));
        options.TypeInfoResolver = new System.Text.Json.Serialization.Metadata.DefaultJsonTypeInfoResolver();
        options.MakeReadOnly();
        return options;
    }
}
