using System.Text;
using System.Text.Json;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Sparkplug;

/// <summary>Whether a host application is there, as its STATE topic says it: a JSON object of two keys (tck-id-host-topic-phid-birth-payload, -death-payload).</summary>
/// <param name="IsOnline">Its birth, or its death.</param>
/// <param name="At">The time of the CONNECT whose will says the death, the same in both; the time of leaving for a death that is said on purpose.</param>
public readonly record struct HostState(bool IsOnline, Instant At)
{
    private const int Largest = 1024;

    /// <summary>The payload.</summary>
    public byte[] ToPayload() => Encoding.UTF8.GetBytes($$"""{"online":{{(IsOnline ? "true" : "false")}},"timestamp":{{At.UnixMilliseconds}}}""");

    /// <summary>
    /// What a host says when it hears a state under its own id: itself again, where it is up and the broker still says it is not, as when the will of
    /// its last connection comes late (tck-id-message-flow-hid-sparkplug-state-message-delivered). Null for nothing.
    /// </summary>
    public static HostState? Answer(HostState own, HostState heard) => own.IsOnline && !heard.IsOnline ? own : null;

    /// <summary>Reads a payload; false where it is not such an object. Keys that are not known are passed over.</summary>
    public static bool TryParse(ReadOnlySpan<byte> payload, out HostState state)
    {
        state = default;
        try
        {
            return payload.Length <= Largest && TryRead(payload, out state);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // The second is the reader's word for half of a surrogate pair.
            return false;
        }
    }

    private static bool TryRead(ReadOnlySpan<byte> payload, out HostState state)
    {
        var (online, at) = ((bool?)null, (long?)null);
        var json = new Utf8JsonReader(payload, new() { MaxDepth = 4 });
        state = default;
        if (!json.Read() || json.TokenType != JsonTokenType.StartObject) return false;
        while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
        {
            var (isOnline, isTime) = (json.ValueTextEquals("online"u8), json.ValueTextEquals("timestamp"u8));
            json.Read();
            if (isOnline) online = json.TokenType switch { JsonTokenType.True => true, JsonTokenType.False => false, _ => null };
            if (isTime) at = json.TokenType == JsonTokenType.Number && json.TryGetInt64(out var milliseconds) && milliseconds is >= 0 and <= SparkplugReader.LastMillisecond ? milliseconds : null;
            json.Skip();
        }

        json.Read();
        if (online is not { } said || at is not { } time) return false;
        state = new(said, Instant.FromUnixMilliseconds(time));
        return true;
    }
}
