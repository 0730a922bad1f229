using System.Diagnostics;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>So many devices on one broker, each with one reading at a time on the way: the next leaves when the PUBACK has come.</summary>
internal sealed class PubackLoad : IAsyncDisposable
{
    private readonly List<IMqttClient> _clients = [];

    public static async Task<PubackLoad> ConnectAsync(int port, int devices)
    {
        var load = new PubackLoad();
        for (var i = 0; i < devices; i++)
        {
            var client = new MqttClientFactory().CreateMqttClient();
            await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", port).WithProtocolVersion(MqttProtocolVersion.V311)
                .WithClientId($"device-{i}").WithKeepAlivePeriod(TimeSpan.FromSeconds(60)).WithTimeout(TimeSpan.FromSeconds(60)).Build());
            load._clients.Add(client);
        }

        return load;
    }

    /// <summary>Acknowledged publishes over a while, and how many seconds it took.</summary>
    public async Task<(long Count, double Seconds)> CountAsync(TimeSpan during)
    {
        long acknowledged = 0;
        var start = Stopwatch.GetTimestamp();
        await Task.WhenAll(_clients.Select((client, i) => Task.Run(async () =>
        {
            for (var turn = 0L; Stopwatch.GetElapsedTime(start) < during; turn++)
            {
                await client.PublishAsync(Message(i, turn));
                Interlocked.Increment(ref acknowledged);
            }
        })));
        return (acknowledged, Stopwatch.GetElapsedTime(start).TotalSeconds);
    }

    /// <summary>One publish of one device, until its PUBACK.</summary>
    public Task PublishAsync(int device, string topic, string value) => _clients[device].PublishAsync(
        new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(value).WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build());

    public async ValueTask DisposeAsync()
    {
        foreach (var client in _clients)
        {
            if (client.IsConnected) await client.DisconnectAsync();
            client.Dispose();
        }
    }

    private static MqttApplicationMessage Message(int device, long turn) => new MqttApplicationMessageBuilder()
        .WithTopic(Plants.Topic(device)).WithPayload(Plants.Value(device, turn)).WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build();
}
