using System.Net.Sockets;
using System.Text;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Adversary;

/// <summary>What a stranger on the wire may cost, in bytes of MQTT 3.1.1 as he would send them.</summary>
public sealed class BrokerBoundsTests
{
    [Fact]
    public async Task A_client_id_as_long_as_the_protocol_allows_is_turned_away_and_one_of_usual_length_is_not()
    {
        await using var server = await WholeServer.StartAsync();
        Assert.Equal(2, (await ConnectAsync(server, new string('x', 60_000))).Code);
        Assert.Equal(0, (await ConnectAsync(server, new string('x', EmbeddedBroker.LongestClientId))).Code);
    }

    [Fact]
    public async Task A_payload_too_large_for_any_probe_is_acknowledged_and_refused_but_kept_as_nobodys_last_value()
    {
        await using var server = await WholeServer.StartAsync();
        await using var device = (await ConnectAsync(server, "device")).Stream;
        await device.WriteAsync(Publish("hall/ph", new byte[EmbeddedBroker.MostPassedOnBytes + 1]));
        await device.ReadExactlyAsync(new byte[4]);
        await device.WriteAsync(Publish("hall/panel", "7.2"u8.ToArray()));
        await device.ReadExactlyAsync(new byte[4]);

        await using var panel = (await ConnectAsync(server, "panel")).Stream;
        await panel.WriteAsync(Packet(0x82, [0, 1, .. Text("#"), 0]));
        // SUBACK and the last value of the other topic, in whichever order: so many bytes and nothing of the large one.
        var answer = new byte[5 + (2 + 2 + "hall/panel".Length + 3)];
        await panel.ReadExactlyAsync(answer).AsTask().WaitAsync(TimeSpan.FromSeconds(20));
        Assert.Contains("hall/panel7.2", Encoding.ASCII.GetString(answer), StringComparison.Ordinal);
        var sums = await server.SumsAsync();
        Assert.Equal((2, 1, 1), (sums.Received, sums.Stored, sums.Refused));
    }

    private static async Task<(NetworkStream Stream, int Code)> ConnectAsync(WholeServer server, string clientId)
    {
        var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", server.MqttPort);
        var stream = client.GetStream();
        await stream.WriteAsync(Packet(0x10, [.. Text("MQTT"), 4, 2, 0, 60, .. Text(clientId)]));
        var answer = new byte[4];
        await stream.ReadExactlyAsync(answer).AsTask().WaitAsync(TimeSpan.FromSeconds(20));
        return (stream, answer[3]);
    }

    private static byte[] Publish(string topic, byte[] payload) => Packet(0x33, [.. Text(topic), 0, 7, .. payload]);

    private static byte[] Packet(byte first, byte[] body)
    {
        List<byte> packet = [first];
        for (var left = body.Length; ;)
        {
            var digit = left % 128;
            left /= 128;
            packet.Add((byte)(left > 0 ? digit | 128 : digit));
            if (left == 0) break;
        }

        return [.. packet, .. body];
    }

    private static byte[] Text(string text) => [(byte)(text.Length >> 8), (byte)text.Length, .. Encoding.UTF8.GetBytes(text)];
}
