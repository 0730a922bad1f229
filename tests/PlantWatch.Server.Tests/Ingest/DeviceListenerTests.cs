using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Logging.Abstractions;
using MQTTnet.Diagnostics.Logger;
using MQTTnet.Server;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Ingest;

public class DeviceListenerTests
{
    [Fact]
    public async Task Connections_beyond_the_bound_are_closed_and_a_place_that_becomes_free_is_given_away()
    {
        var leave = new TaskCompletionSource();
        using var listener = new DeviceListener(new(null, 0, null), 2, 1000, NullLogger.Instance) { ClientHandler = _ => leave.Task };
        await listener.StartAsync(new MqttServerOptions(), MqttNetNullLogger.Instance);
        using var first = new TcpClient("127.0.0.1", listener.Port);
        using var second = new TcpClient("127.0.0.1", listener.Port);
        await Peer.UntilAsync(() => listener.Open == 2, "two are in");

        using var third = new TcpClient("127.0.0.1", listener.Port);
        Assert.True(await IsClosed(third));

        leave.SetResult();
        await Peer.UntilAsync(() => listener.Open == 0, "all have left");
        listener.ClientHandler = _ => Task.Delay(Timeout.Infinite);
        using var fourth = new TcpClient("127.0.0.1", listener.Port);
        await Peer.UntilAsync(() => listener.Open == 1, "a fourth is in");
    }

    [Fact]
    public async Task Other_machines_cannot_reach_it()
    {
        using var listener = new DeviceListener(new(null, 0, null), 2, 1000, NullLogger.Instance);
        await listener.StartAsync(new MqttServerOptions(), MqttNetNullLogger.Instance);
        var bound = System.Net.NetworkInformation.IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(end => end.Port == listener.Port).ToList();

        Assert.NotEmpty(bound);
        Assert.All(bound, end => Assert.True(IPAddress.IsLoopback(end.Address)));
    }

    private static async Task<bool> IsClosed(TcpClient client)
    {
        try
        {
            return await client.GetStream().ReadAsync(new byte[1]).AsTask().WaitAsync(TimeSpan.FromSeconds(10)) == 0;
        }
        catch (IOException)
        {
            return true;
        }
    }
}
