using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Payloads;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>The embedded broker against mosquitto's own clients.</summary>
public sealed class EmbeddedBrokerTests : IAsyncLifetime
{
    private static readonly TimeSpan AWhile = TimeSpan.FromMilliseconds(400);

    // mosquitto_pub's exit code for a connection that the other side ended.
    private const int ConnectionLost = 7;
    private readonly FakeDoor _door = new();
    private EmbeddedBroker _broker = null!;

    public Task InitializeAsync()
    {
        _broker = NewBroker(_door);
        return _broker.StartAsync(default);
    }

    public async Task DisposeAsync()
    {
        await _broker.StopAsync(default);
        _broker.Dispose();
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_publish_is_acknowledged_after_its_commit_and_not_before()
    {
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21", "-d");
        await MessagesArrive(1);
        Assert.True(await probe.GoesOnAsync(AWhile), probe.Output);
        Assert.DoesNotContain("PUBACK", probe.Output, StringComparison.Ordinal);

        _door.Commit(0);

        Assert.Equal(0, await probe.ExitAsync());
        Assert.Contains("received PUBACK", probe.Output, StringComparison.Ordinal);
        Assert.Equal(("pool/ph", "7.21"), Said(0));
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_client_of_version_5_is_told_success_though_nobody_else_subscribes()
    {
        await using var probe = Publish("-V", "5", "-q", "1", "-t", "pool/ph", "-m", "7.21", "-d");
        await MessagesArrive(1);
        _door.Commit(0);

        Assert.Equal(0, await probe.ExitAsync());
        Assert.Contains("received PUBACK (Mid: 1, RC:0)", probe.Output, StringComparison.Ordinal);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_publish_whose_commit_fails_is_not_acknowledged_and_its_device_is_disconnected()
    {
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21", "-d", "-i", "probe-1");
        await MessagesArrive(1);

        _door.Fail(0, new IOException("disk full"));

        Assert.Equal(ConnectionLost, await probe.ExitAsync());
        Assert.DoesNotContain("PUBACK", probe.Output, StringComparison.Ordinal);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_publish_that_the_door_does_not_take_is_not_acknowledged_either()
    {
        _door.Refuses = new InvalidOperationException("stopping");
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21", "-d", "-i", "probe-1");

        Assert.Equal(ConnectionLost, await probe.ExitAsync());
        Assert.DoesNotContain("PUBACK", probe.Output, StringComparison.Ordinal);

        _door.Refuses = null;
        await using var again = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21", "-i", "probe-1");
        await MessagesArrive(1);
        _door.Commit(0);
        Assert.Equal(0, await again.ExitAsync());
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_bridge_sends_again_what_was_not_acknowledged_with_DUP_and_the_same_packet_identifier()
    {
        await using var bridge = await Mosquitto.StartAsync(extra: $"""
            connection plant
            address 127.0.0.1:{_broker.Port}
            topic # out 1
            cleansession false
            remote_clientid bridge-1
            restart_timeout 1
            try_private false
            notifications false
            """);
        await using (var probe = bridge.Publish("-q", "1", "-t", "pool/ph", "-m", "7.21")) Assert.Equal(0, await probe.ExitAsync());
        await MessagesArrive(1);
        Assert.False(_door.Messages[0].Redelivered);

        _door.Fail(0, new IOException("disk full"));
        await MessagesArrive(2);
        _door.Commit(1);

        var (first, again) = (_door.Messages[0], _door.Messages[1]);
        Assert.True(again.Redelivered);
        Assert.Equal((first.Session, first.PacketId, first.Topic), (again.Session, again.PacketId, again.Topic));
        Assert.Equal("bridge-1", again.Session);
        Assert.Equal(first.Payload.ToArray(), again.Payload.ToArray());
        await Peer.UntilAsync(() => bridge.Log.Any(line => line.Contains("Received PUBACK", StringComparison.Ordinal)), "the bridge got its PUBACK");
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_named_device_at_QoS_1_or_2_is_known_by_its_packets_and_QoS_0_or_a_nameless_one_is_not()
    {
        _door.CommitAll();
        await using var zero = Publish("-q", "0", "-t", "a", "-m", "0", "-i", "probe-1");
        await MessagesArrive(1);
        await using var one = Publish("-q", "1", "-t", "a", "-m", "1", "-i", "probe-1");
        await MessagesArrive(2);
        await using var two = Publish("-q", "2", "-t", "a", "-m", "2", "-i", "probe-2");
        await MessagesArrive(3);
        await using var nameless = Publish("-q", "1", "-t", "a", "-m", "3");
        await MessagesArrive(4);
        _door.CommitAll();
        foreach (var probe in new[] { zero, one, two, nameless }) Assert.Equal(0, await probe.ExitAsync());

        Assert.Equal([0, 1, 1, 0], _door.Messages.Select(message => message.PacketId));
        Assert.Equal(["probe-1", "probe-1", "probe-2"], _door.Messages.Take(3).Select(message => message.Session));
        Assert.All(_door.Messages, message => Assert.False(message.Redelivered));
    }

    [PeerFact("mosquitto_pub", "mosquitto_sub")]
    public async Task A_retained_publish_is_a_new_sample_here_and_a_last_value_to_later_subscribers()
    {
        await using var probe = Publish("-q", "1", "-r", "-t", "pool/ph", "-m", "7.21");
        await MessagesArrive(1);
        _door.Commit(0);
        Assert.Equal(0, await probe.ExitAsync());
        Assert.False(_door.Messages[0].Retained);

        await using var panel = Subscribe("-t", "#", "-C", "1", "-F", "%t %p retained=%r");
        Assert.Equal(0, await panel.ExitAsync());
        Assert.Equal("pool/ph 7.21 retained=1", Assert.Single(panel.Lines));
        Assert.Single(_door.Messages); // handing out the last value is no new sample
    }

    [PeerFact("mosquitto_pub", "mosquitto_sub")]
    public async Task Others_may_subscribe_and_see_a_message_once_it_is_committed()
    {
        await using var panel = Subscribe("-t", "pool/#", "-C", "1", "-q", "1", "-d");
        await Peer.UntilAsync(() => panel.Output.Contains("SUBACK", StringComparison.Ordinal), "subscribed");
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21");
        await MessagesArrive(1);
        Assert.True(await panel.GoesOnAsync(AWhile));

        _door.Commit(0);

        Assert.Equal(0, await panel.ExitAsync());
        Assert.Contains("7.21", panel.Lines);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_payload_of_1_MiB_is_acknowledged_and_handed_over_cut_so_that_it_is_refused_as_too_large()
    {
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-f", await FileOf(new byte[1024 * 1024]));
        await MessagesArrive(1);
        _door.Commit(0);
        Assert.Equal(0, await probe.ExitAsync());

        var payload = _door.Messages[0].Payload;
        Assert.Equal(PayloadText.WorthKeeping, payload.Length);
        Assert.Equal(RefusalReason.TooLarge, PlainNumber.Decode(payload.Span).Refusal);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_packet_above_the_bound_is_not_read_and_the_broker_goes_on()
    {
        await using var huge = Publish("-q", "1", "-t", "pool/ph", "-f", await FileOf(new byte[EmbeddedBroker.MostPacketBytes + 1]), "-d");
        await Peer.UntilAsync(() => huge.HasExited || huge.Output.Split("CONNACK").Length > 2, "disconnected");
        await huge.KillAsync();
        Assert.Empty(_door.Messages);
        Assert.DoesNotContain("PUBACK", huge.Output, StringComparison.Ordinal);

        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21");
        await MessagesArrive(1);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Bytes_that_are_no_UTF8_arrive_as_they_are()
    {
        byte[] bytes = [0xff, 0xfe, 0x00, 0x37, 0xc0];
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-f", await FileOf(bytes));
        await MessagesArrive(1);

        Assert.Equal(bytes, _door.Messages[0].Payload.ToArray());
    }

    [PeerFact("mosquitto_pub")]
    public async Task Two_thousand_messages_of_one_device_come_in_their_order_and_are_all_acknowledged()
    {
        var door = new FakeDoor { CommitsByItself = true };
        using var broker = NewBroker(door);
        await broker.StartAsync(default);
        await using var probe = Peer.Start("mosquitto_pub", "-h", "127.0.0.1", "-p", Text(broker.Port), "-q", "1", "-t", "pool/ph", "-l", "-i", "probe-1");
        for (var i = 0; i < 2000; i++) await probe.Input.WriteLineAsync(Text(i));
        probe.Input.Close();

        Assert.Equal(0, await probe.ExitAsync());
        Assert.Equal(Enumerable.Range(0, 2000).Select(Text), door.Messages.Select(message => Encoding.UTF8.GetString(message.Payload.Span)));
        Assert.Equal(2000, door.Messages.Select(message => message.PacketId).Distinct().Count());
        await broker.StopAsync(default);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_stop_ends_in_time_and_acknowledges_nothing_that_is_not_committed()
    {
        await using var probe = Publish("-q", "1", "-t", "pool/ph", "-m", "7.21", "-d");
        await MessagesArrive(1);

        await _broker.StopAsync(default).WaitAsync(TimeSpan.FromSeconds(10));

        Assert.DoesNotContain("PUBACK", probe.Output, StringComparison.Ordinal);
        Assert.Equal(BrokerWord.Stopped, _broker.State.Word);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_will_is_a_message_like_any_other_without_a_packet()
    {
        await using var pump = Peer.Start(
            "mosquitto_pub", "-h", "127.0.0.1", "-p", Text(_broker.Port), "-i", "pump-1", "-q", "1", "-t", "pump/state", "-l", "--will-topic", "pump/state", "--will-payload", "fault", "--will-qos", "1");
        await pump.Input.WriteLineAsync("running");
        await pump.Input.FlushAsync();
        await MessagesArrive(1);
        _door.Commit(0);

        await pump.KillAsync();

        await MessagesArrive(2);
        Assert.Equal(("pump/state", "fault"), Said(1));
        Assert.Equal(0, _door.Messages[1].PacketId);
    }

    [Fact]
    public async Task A_topic_with_a_wildcard_closes_the_connection_and_reaches_nobody()
    {
        using var client = new TcpClient("127.0.0.1", _broker.Port);
        var stream = client.GetStream();
        // CONNECT of MQTT 3.1.1, client id "x", clean session; then PUBLISH QoS 1 to "a/#", packet 1, payload "7". No stock client sends it.
        await stream.WriteAsync((byte[])[0x10, 13, 0, 4, .. "MQTT"u8, 4, 2, 0, 60, 0, 1, (byte)'x', 0x32, 8, 0, 3, .. "a/#"u8, 0, 1, (byte)'7']);

        var answer = new MemoryStream();
        await stream.CopyToAsync(answer).WaitAsync(TimeSpan.FromSeconds(10)); // ends with the connection

        Assert.Equal((byte[])[0x20, 2, 0, 0], answer.ToArray()); // CONNACK and nothing else
        Assert.Empty(_door.Messages);
    }

    [Fact]
    public async Task A_port_that_is_taken_stops_the_start_with_its_reason()
    {
        using var second = NewBroker(_door, _broker.Port);
        await Assert.ThrowsAnyAsync<SocketException>(() => second.StartAsync(default));
        Assert.Equal(BrokerWord.Stopped, second.State.Word);
    }

    [Fact]
    public void Its_state_says_where_it_listens() =>
        Assert.Equal((BrokerMode.Embedded, BrokerWord.Listening, $"127.0.0.1:{_broker.Port}"), (_broker.State.Kind, _broker.State.Word, _broker.State.Detail));

    private static EmbeddedBroker NewBroker(FakeDoor door, int port = 0) =>
        new(door, Options.Create(new PlantWatchOptions { Broker = { Port = port } }), TimeProvider.System, NullLogger<EmbeddedBroker>.Instance);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static async Task<string> FileOf(byte[] bytes)
    {
        var path = Path.GetTempFileName();
        await File.WriteAllBytesAsync(path, bytes);
        return path;
    }

    private Task MessagesArrive(int count) => Peer.UntilAsync(() => _door.Messages.Count >= count, $"{count} messages at the door");

    private (string Topic, string Text) Said(int index) => (_door.Messages[index].Topic, Encoding.UTF8.GetString(_door.Messages[index].Payload.Span));

    private Peer Publish(params string[] arguments) => Peer.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", Text(_broker.Port), .. arguments]);

    private Peer Subscribe(params string[] arguments) => Peer.Start("mosquitto_sub", ["-h", "127.0.0.1", "-p", Text(_broker.Port), .. arguments]);
}
