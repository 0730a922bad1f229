using System.Text.Json;
using System.Text.Json.Serialization;

namespace PlantWatch.Core.Dosing.Supervision;

/// <summary>A supervisor as JSON: the pool in figures, and what it remembers as one row of bytes, exact and a third of what figures in words would take.</summary>
internal sealed class PoolSupervisorJson : JsonConverter<PoolSupervisor>
{
    private sealed record Form(PumpedPool? Pool, byte[]? Memory);

    public override PoolSupervisor Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (JsonSerializer.Deserialize<Form>(ref reader, options) is not { Pool: { } pool, Memory: { } memory }) throw new JsonException("a supervisor has a pool and a memory");
        try
        {
            return PoolSupervisor.Remembering(pool, memory);
        }
        catch (FormatException fault)
        {
            throw new JsonException(fault.Message, fault);
        }
    }

    public override void Write(Utf8JsonWriter writer, PoolSupervisor value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, new Form(value.Pool, value.Memory()), options);
}
