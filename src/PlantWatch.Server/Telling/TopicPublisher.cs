using MQTTnet;
using MQTTnet.Protocol;
using PlantWatch.Server.Ingest.Links;

namespace PlantWatch.Server.Telling;

/// <summary>Our mouth at an external broker: a client of its own, so that what is told neither waits for what is read nor holds it up. Connected when there is something to say.</summary>
internal sealed class TopicPublisher(PlantWatchOptions options, TimeProvider time) : IAlarmTopic, IAsyncDisposable
{
    private readonly BrokerOptions _broker = options.Broker;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private IMqttClient? _client;

    public async Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, string contentType, bool retain, CancellationToken cancellation)
    {
        await _turn.WaitAsync(cancellation);
        try
        {
            var client = await ConnectedAsync(cancellation);
            var message = new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(payload.ToArray()).WithContentType(contentType).WithRetainFlag(retain)
                .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build();
            var answer = await client.PublishAsync(message, cancellation);
            // That nobody listens at the moment is no failure: whoever comes later finds the state.
            if (!answer.IsSuccess && answer.ReasonCode != MqttClientPublishReasonCode.NoMatchingSubscribers)
                throw new IOException($"the broker refuses to publish at {topic}: {answer.ReasonCode} {answer.ReasonString}".TrimEnd());
        }
        catch
        {
            await ForgetAsync();
            throw;
        }
        finally
        {
            _turn.Release();
        }
    }

    public async ValueTask DisposeAsync()
    {
        await ForgetAsync();
        _turn.Dispose();
    }

    private async Task<IMqttClient> ConnectedAsync(CancellationToken cancellation)
    {
        if (_client is { IsConnected: true } standing) return standing;
        await ForgetAsync();
        var client = _client = new MqttClientFactory().CreateMqttClient();
        var answer = await client.ConnectAsync(Options(), cancellation);
        if (answer.ResultCode != MqttClientConnectResultCode.Success) throw new IOException($"the broker refuses the connection: {answer.ResultCode} {answer.ReasonString}".TrimEnd());
        return client;
    }

    private MqttClientOptions Options() => BrokerDial.To(_broker, time).Options
        .WithClientId($"{_broker.ClientId}-alarms").WithCleanStart(true).WithKeepAlivePeriod(TimeSpan.FromSeconds(15)).Build();

    private async Task ForgetAsync()
    {
        if (Interlocked.Exchange(ref _client, null) is not { } client) return;
        try
        {
            if (client.IsConnected) await client.DisconnectAsync().WaitAsync(TimeSpan.FromSeconds(1));
        }
        catch (Exception)
        {
            // Gone already, which is what was wanted.
        }

        client.Dispose();
    }
}
