using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>The baseline of the external broker: a client that takes QoS 1 in, acknowledges and forgets. Same protocol, session and window as the server's.</summary>
internal sealed class BareClient(int port, string name) : IAsyncDisposable
{
    private readonly MqttClientFactory _factory = new();
    private IMqttClient? _client;

    public Action OnMessage { get; set; } = () => { };

    public async Task ConnectAsync()
    {
        _client = _factory.CreateMqttClient();
        _client.ApplicationMessageReceivedAsync += _ =>
        {
            OnMessage();
            return Task.CompletedTask;
        };
        await _client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithProtocolVersion(MqttProtocolVersion.V500)
            .WithClientId(name).WithCleanStart(false).WithSessionExpiryInterval(uint.MaxValue).WithReceiveMaximum(2000).Build());
    }

    public Task SubscribeAsync(string filter) => _client!.SubscribeAsync(filter, MqttQualityOfServiceLevel.AtLeastOnce);

    public async Task LeaveAsync()
    {
        if (_client is null) return;
        if (_client.IsConnected) await _client.DisconnectAsync();
        _client.Dispose();
        _client = null;
    }

    public async ValueTask DisposeAsync() => await LeaveAsync();
}
