using System.Buffers;
using System.Text.Json.Nodes;
using MQTTnet;

namespace PlantWatch.Demo;

/// <summary>Listens at the alarm topic as another program would, and prints what people are told.</summary>
internal sealed class AlarmEcho(Action<string> print) : IAsyncDisposable
{
    /// <summary>Where the demo's plant file has alarms published.</summary>
    public const string Topic = "lantern-bay/alarms/+/notices";

    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();

    /// <summary>Begins to listen.</summary>
    public async Task ListenAsync(int broker, CancellationToken cancellation)
    {
        _client.ApplicationMessageReceivedAsync += e =>
        {
            if (Words(e.ApplicationMessage.Payload.ToArray()) is { } words) print(words);
            return Task.CompletedTask;
        };
        await _client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", broker).WithClientId("demo-desk").Build(), cancellation);
        await _client.SubscribeAsync(Topic, cancellationToken: cancellation);
    }

    public async ValueTask DisposeAsync()
    {
        if (_client.IsConnected) await _client.DisconnectAsync();
        _client.Dispose();
    }

    private static string? Words(byte[] payload)
    {
        var said = JsonNode.Parse(payload);
        if (said?["data"] is not { } data) return null;
        return $"told at {Topic.Replace("+", $"{data["circuit"]}", StringComparison.Ordinal)}: {data["kind"]}, {data["priority"]}: {data["poolName"] ?? data["circuitName"]}: {data["title"]}. {data["cause"]}";
    }
}
