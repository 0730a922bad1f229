using MQTTnet;
using MQTTnet.Protocol;
using PlantWatch.Simulator.Plant;

namespace PlantWatch.Simulator.Wire;

/// <summary>One connection to the broker. Messages leave one after another at QoS 1 and each waits for its acknowledgement: what was acknowledged is the plant's no more.</summary>
internal sealed class Gateway(string name, string host, int port) : IAsyncDisposable
{
    private static readonly TimeSpan RetryAfter = TimeSpan.FromMilliseconds(500);

    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly MqttClientOptions _options = new MqttClientOptionsBuilder()
        .WithTcpServer(host, port).WithClientId("gateway-" + name).WithProtocolVersion(MQTTnet.Formatter.MqttProtocolVersion.V500)
        .WithTimeout(TimeSpan.FromSeconds(20)).Build();

    /// <summary>Messages acknowledged.</summary>
    public long Acknowledged { get; private set; }

    /// <summary>Times a message had to be sent again.</summary>
    public long Retries { get; private set; }

    /// <summary>Sends messages in order; returns when all are acknowledged.</summary>
    public async Task SendAsync(IEnumerable<Outgoing> messages, CancellationToken cancellation)
    {
        foreach (var message in messages) await SendAsync(message, cancellation).ConfigureAwait(false);
    }

    // A broken connection is the world's fault: the same message is sent again until it is acknowledged.
    private async Task SendAsync(Outgoing message, CancellationToken cancellation)
    {
        var packet = new MqttApplicationMessageBuilder().WithTopic(message.Topic).WithPayload(message.Payload)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build();
        while (true)
        {
            try
            {
                if (!_client.IsConnected) await _client.ConnectAsync(_options, cancellation).ConfigureAwait(false);
                var result = await _client.PublishAsync(packet, cancellation).ConfigureAwait(false);
                if (!result.IsSuccess) throw new InvalidOperationException($"broker answered {result.ReasonCode} to {message.Topic}");
                Acknowledged++;
                return;
            }
            catch (Exception e) when (e is MQTTnet.Exceptions.MqttCommunicationException or MQTTnet.Exceptions.MqttProtocolViolationException
                or OperationCanceledException or InvalidOperationException or MQTTnet.Exceptions.MqttClientNotConnectedException)
            {
                // The client reports a cancelled wait as a timeout.
                cancellation.ThrowIfCancellationRequested();
                Retries++;
                await Task.Delay(RetryAfter, cancellation).ConfigureAwait(false);
            }
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        try
        {
            if (_client.IsConnected) await _client.DisconnectAsync().ConfigureAwait(false);
        }
        catch (MQTTnet.Exceptions.MqttCommunicationException)
        {
            // The broker went first.
        }
        _client.Dispose();
    }
}
