using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>The baseline of the external broker: a client that takes QoS 1 in, acknowledges and forgets. Same protocol, session and window as the server's.</summary>
internal sealed class BareClient(int port, string name) : IAsyncDisposable
{
    private readonly MqttClientFactory factory = new();
    private IMqttClient? client;

    public Action OnMessage { get; set; } = () => { };

    public async Task ConnectAsync()
    {
        client = factory.CreateMqttClient();
        client.ApplicationMessageReceivedAsync += _ =>
        {
            OnMessage();
            return Task.CompletedTask;
        };
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithProtocolVersion(MqttProtocolVersion.V500)
            .WithClientId(name).WithCleanStart(false).WithSessionExpiryInterval(uint.MaxValue).WithReceiveMaximum(2000).Build());
    }

    public Task SubscribeAsync(string filter) => client!.SubscribeAsync(filter, MqttQualityOfServiceLevel.AtLeastOnce);

    public async Task LeaveAsync()
    {
        if (client is null) return;
        if (client.IsConnected) await client.DisconnectAsync();
        client.Dispose();
        client = null;
    }

    public async ValueTask DisposeAsync() => await LeaveAsync();
}
