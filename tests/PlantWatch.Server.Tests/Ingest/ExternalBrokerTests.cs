using System.Globalization;
using System.Net;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using MQTTnet.Protocol;
using MQTTnet.Server;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>Our client against a real mosquitto; what was acknowledged, when and in which order, is read from mosquitto's own log.</summary>
public sealed class ExternalBrokerTests : IDisposable
{
    private static readonly TimeSpan AWhile = TimeSpan.FromMilliseconds(400);
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task Messages_are_acknowledged_after_their_commit_in_the_order_of_arrival()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = Door("pool/ph");
        await using var ours = await ConnectAsync(mosquitto, door);
        await PublishLines(mosquitto, "pool/ph", "7.1", "7.2", "7.3");
        await Arrive(door, 3);

        door.Commit(1);
        door.Commit(2);
        await Task.Delay(AWhile); // every chance to acknowledge too early
        Assert.Empty(Acknowledged(mosquitto));

        door.Commit(0);
        await Peer.UntilAsync(() => Acknowledged(mosquitto).Count == 3, "three PUBACKs");
        Assert.Equal(door.Messages.Select(message => message.PacketId), Acknowledged(mosquitto));
        Assert.Equal(["7.1", "7.2", "7.3"], Texts(door));
        Assert.All(door.Messages, message => Assert.True(message.PacketId > 0 && !message.Redelivered && !message.Retained));
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task What_was_not_acknowledged_comes_again_to_the_next_process_with_DUP_and_the_same_packet_in_the_same_session()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var before = Door("pool/ph");
        await using (var ours = await ConnectAsync(mosquitto, before))
        {
            await PublishLines(mosquitto, "pool/ph", "7.1", "7.2", "7.2");
            await Arrive(before, 3);
            before.Commit(0);
            await Peer.UntilAsync(() => Acknowledged(mosquitto).Count == 1, "one PUBACK");
        }

        var after = Door("pool/ph");
        await using var again = await ConnectAsync(mosquitto, after);
        await Arrive(after, 2);

        Assert.Equal(before.Messages.Skip(1).Select(Identity), after.Messages.Select(Identity));
        Assert.All(after.Messages, message => Assert.True(message.Redelivered));
        Assert.Empty(after.LostSessions);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_commit_that_fails_ends_the_connection_and_the_messages_come_again()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = Door("pool/ph");
        await using var ours = await ConnectAsync(mosquitto, door);
        await PublishLines(mosquitto, "pool/ph", "7.1", "7.2");
        await Arrive(door, 2);

        door.Fail(0, new IOException("disk full"));
        door.Commit(1); // behind a failed one it is not acknowledged either
        await Arrive(door, 4);

        Assert.Empty(Acknowledged(mosquitto));
        Assert.Equal(door.Messages.Take(2).Select(Identity), door.Messages.Skip(2).Select(Identity));
        Assert.All(door.Messages.Skip(2), message => Assert.True(message.Redelivered));
        door.CommitAll();
        await Peer.UntilAsync(() => Acknowledged(mosquitto).Count == 2, "both are acknowledged in the end");
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_door_that_refuses_is_tried_again_until_it_takes()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = Door("pool/ph");
        door.Refuses = new InvalidOperationException("not ready");
        await using var ours = await ConnectAsync(mosquitto, door);
        await PublishLines(mosquitto, "pool/ph", "7.1");
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.NotCommitting, "the state says that nothing is committed");

        door.Refuses = null;
        await Arrive(door, 1);
        Assert.True(door.Messages[0].Redelivered);
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected again");
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task What_is_published_while_we_are_away_is_queued_and_comes_in_order()
    {
        await using var mosquitto = await Mosquitto.StartAsync(persistent: false);
        await using (await ConnectAsync(mosquitto, Door("pool/ph")))
        {
        }
        var sent = Enumerable.Range(0, 3000).Select(i => i.ToString(CultureInfo.InvariantCulture)).ToArray();
        await PublishLines(mosquitto, "pool/ph", sent);

        var door = Door("pool/ph", commits: true);
        await using var ours = await ConnectAsync(mosquitto, door);
        await Arrive(door, sent.Length);

        Assert.Equal(sent, Texts(door));
        Assert.All(door.Messages, message => Assert.False(message.Redelivered));
        await Peer.UntilAsync(() => Acknowledged(mosquitto).Count == sent.Length, "all are acknowledged");
        Assert.Equal(door.Messages.Select(message => message.PacketId), Acknowledged(mosquitto));
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task No_more_than_the_receive_maximum_is_on_its_way_unacknowledged()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = Door("pool/ph");
        await using var ours = await ConnectAsync(mosquitto, door, options => options.ReceiveMaximum = 5);
        await PublishLines(mosquitto, "pool/ph", [.. Enumerable.Range(0, 12).Select(i => $"{i}")]);
        await Arrive(door, 5);
        await Task.Delay(AWhile); // every chance to send more
        Assert.Equal(5, door.Messages.Count);

        door.Commit(0);
        await Arrive(door, 6);
        Assert.Equal("5", Texts(door)[5]);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_broker_that_is_killed_and_comes_back_heals_by_itself_and_keeps_our_session()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = Door("pool/ph", commits: true);
        await using var ours = await ConnectAsync(mosquitto, door);
        await PublishLines(mosquitto, "pool/ph", "7.1");
        await Arrive(door, 1);

        await mosquitto.KillAsync();
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Unreachable, "the state says unreachable");
        await mosquitto.StartAsync();
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected again");
        await PublishLines(mosquitto, "pool/ph", "7.2");
        await Arrive(door, 2);

        Assert.Equal(["7.1", "7.2"], Texts(door));
        Assert.Empty(door.LostSessions);
        Assert.Equal(door.Messages[0].Session, door.Messages[1].Session);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_session_that_the_broker_forgot_is_told_once_and_its_successor_has_another_name()
    {
        await using var mosquitto = await Mosquitto.StartAsync(persistent: false);
        var door = Door("pool/ph", commits: true);
        await using var ours = await ConnectAsync(mosquitto, door);
        Assert.Empty(door.LostSessions); // the first connection has nothing to lose
        await PublishLines(mosquitto, "pool/ph", "7.1");
        await Arrive(door, 1);

        await mosquitto.KillAsync();
        await mosquitto.StartAsync();
        await Peer.UntilAsync(() => door.LostSessions.Count == 1, "the loss is told");
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected again");
        await PublishLines(mosquitto, "pool/ph", "7.2");
        await Arrive(door, 2);

        Assert.Equal(door.Messages[0].Session, door.LostSessions[0].Session);
        Assert.NotEqual(door.Messages[0].Session, door.Messages[1].Session);
        // The same packet identifier again: only the session's name tells the two apart.
        Assert.Equal(door.Messages[0].PacketId, door.Messages[1].PacketId);
        Assert.True(door.LostSessions[0].Since.IsSet);
        Assert.Single(door.LostSessions);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_retained_last_value_is_marked_and_a_new_value_that_is_to_be_retained_is_not()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using (var earlier = mosquitto.Publish("-q", "1", "-r", "-t", "pool/ph", "-m", "7.1")) Assert.Equal(0, await earlier.ExitAsync());
        var door = Door("pool/ph", commits: true);
        await using var ours = await ConnectAsync(mosquitto, door);
        await Arrive(door, 1);
        await using (var live = mosquitto.Publish("-q", "1", "-r", "-t", "pool/ph", "-m", "7.2")) Assert.Equal(0, await live.ExitAsync());
        await Arrive(door, 2);

        Assert.Equal([("7.1", true), ("7.2", false)], door.Messages.Select(message => (Encoding.UTF8.GetString(message.Payload.Span), message.Retained)));
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task QoS_0_has_no_packet_identifier_and_a_broad_filter_brings_strays_and_nothing_twice()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = Door("pool/ph", commits: true);
        await using var ours = await ConnectAsync(mosquitto, door, options => options.AlsoSubscribe = ["pool/+", "#"]);
        await using (var zero = mosquitto.Publish("-q", "0", "-t", "pool/ph", "-m", "0")) Assert.Equal(0, await zero.ExitAsync());
        await Arrive(door, 1);
        await PublishLines(mosquitto, "pool/ph", "1");
        await PublishLines(mosquitto, "stray", "2");
        await Arrive(door, 3);

        Assert.Equal(["0", "1", "2"], Texts(door));
        Assert.Equal(0, door.Messages[0].PacketId);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_new_plant_file_changes_the_subscriptions_even_those_that_an_earlier_process_made()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using (await ConnectAsync(mosquitto, Door("old/ph", "pool/ph")))
        {
        }
        var door = Door("pool/ph", commits: true);
        await using var ours = await ConnectAsync(mosquitto, door);
        await PublishLines(mosquitto, "old/ph", "1");
        await PublishLines(mosquitto, "pool/ph", "2");
        await Arrive(door, 1);
        Assert.Equal(["2"], Texts(door));

        door.SetTopics("new/ph");
        await Peer.UntilAsync(() => mosquitto.Log.Any(line => line.Contains("Received UNSUBSCRIBE", StringComparison.Ordinal)) && Count(mosquitto, "Sending UNSUBACK to plantwatch") >= 2, "both changes are made");
        await PublishLines(mosquitto, "pool/ph", "3");
        await PublishLines(mosquitto, "new/ph", "4");
        await Arrive(door, 2);
        Assert.Equal(["2", "4"], Texts(door));
    }

    [PeerFact("mosquitto")]
    public async Task A_broker_that_refuses_us_is_named_as_such_and_asked_again()
    {
        await using var mosquitto = await Mosquitto.StartAsync(extra: "allow_anonymous false");
        await using var ours = Start(mosquitto.Port, Door("pool/ph"));

        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Refused, "the state says refused");
        Assert.Contains("NotAuthorized", ours.Broker.State.Detail, StringComparison.Ordinal);
        await Peer.UntilAsync(() => Count(mosquitto, "not authorised") >= 2, "asked again");
    }

    [Fact]
    public async Task A_topic_that_the_broker_refuses_is_named_and_the_others_work()
    {
        var options = new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointBoundIPAddress(IPAddress.Loopback)
            .WithDefaultEndpointBoundIPV6Address(IPAddress.None).WithDefaultEndpointPort(Peer.FreePort()).Build();
        using var server = new MqttServerFactory().CreateMqttServer(options);
        server.InterceptingSubscriptionAsync += e =>
        {
            if (e.TopicFilter.Topic == "secret") e.Response.ReasonCode = MqttSubscribeReasonCode.NotAuthorized;
            return Task.CompletedTask;
        };
        await server.StartAsync();
        await using var ours = Start(options.DefaultEndpointOptions.Port, Door("pool/ph", "secret"));

        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.PartlySubscribed, "partly subscribed");
        Assert.Equal("secret", ours.Broker.State.Detail);
        await ours.Broker.StopAsync(default);
        await server.StopAsync(new MqttServerStopOptions());
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task No_more_than_the_window_is_taken_in_unproven_even_when_the_broker_sends_more()
    {
        // mosquitto 2.0.11 forgets our Receive Maximum when the window was full at the reconnect and then moves.
        await using var mosquitto = await Mosquitto.StartAsync();
        var before = Door("pool/ph");
        await using (var ours = await ConnectAsync(mosquitto, before, o => o.ReceiveMaximum = 100))
        {
            await PublishLines(mosquitto, "pool/ph", [.. Enumerable.Range(0, 1000).Select(i => $"{i}")]);
            await Arrive(before, 100);
        }

        var after = Door("pool/ph");
        await using var again = await ConnectAsync(mosquitto, after, o => o.ReceiveMaximum = 100);
        await Arrive(after, 100);
        for (var i = 0; i < 50; i++) after.Commit(i);
        await Peer.UntilAsync(() => Acknowledged(mosquitto).Count == 50, "50 PUBACKs");
        await Task.Delay(AWhile); // every chance to take in too many
        Assert.InRange(after.Messages.Count, 100, 150);

        after.CommitsByItself = true;
        after.CommitAll();
        await Arrive(after, 1000);
        Assert.Equal(Enumerable.Range(0, 1000).Select(i => $"{i}"), Texts(after));
    }

    [Fact]
    public async Task Without_a_broker_it_says_so_and_a_stop_does_not_wait_for_one()
    {
        await using var ours = Start(Peer.FreePort(), Door("pool/ph"));
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Unreachable, "the state says unreachable");

        await ours.Broker.StopAsync(default).WaitAsync(TimeSpan.FromSeconds(5));
        Assert.Equal(BrokerWord.Stopped, ours.Broker.State.Word);
    }

    private static FakeDoor Door(string topic, bool commits) => NewDoor(commits, topic);

    private static FakeDoor Door(params string[] topics) => NewDoor(false, topics);

    private static FakeDoor NewDoor(bool commits, params string[] topics)
    {
        var door = new FakeDoor { CommitsByItself = commits };
        door.SetTopics(topics);
        return door;
    }

    private static async Task PublishLines(Mosquitto mosquitto, string topic, params string[] lines)
    {
        await using var probe = mosquitto.Publish("-q", "1", "-t", topic, "-l");
        foreach (var line in lines) await probe.Input.WriteLineAsync(line);
        probe.Input.Close();
        Assert.Equal(0, await probe.ExitAsync());
    }

    private static Task Arrive(FakeDoor door, int count) => Peer.UntilAsync(() => door.Messages.Count >= count, $"{count} messages at the door");

    private static List<string> Texts(FakeDoor door) => [.. door.Messages.Select(message => Encoding.UTF8.GetString(message.Payload.Span))];

    private static (string, int, string) Identity(Server.Loop.IncomingMessage message) => (message.Session, message.PacketId, Encoding.UTF8.GetString(message.Payload.Span));

    /// <summary>Packet identifiers of the PUBACKs that mosquitto received from us, in its order.</summary>
    private static List<int> Acknowledged(Mosquitto mosquitto)
    {
        const string mark = "Received PUBACK from plantwatch (Mid: ";
        return [.. mosquitto.Log.Where(line => line.Contains(mark, StringComparison.Ordinal)).Select(line =>
        {
            var from = line.IndexOf(mark, StringComparison.Ordinal) + mark.Length;
            return int.Parse(line.AsSpan(from, line.IndexOf(',', from) - from), CultureInfo.InvariantCulture);
        })];
    }

    private static int Count(Mosquitto mosquitto, string text) => mosquitto.Log.Count(line => line.Contains(text, StringComparison.Ordinal));

    private async Task<Ours> ConnectAsync(Mosquitto mosquitto, FakeDoor door, Action<BrokerOptions>? also = null)
    {
        var ours = Start(mosquitto.Port, door, also);
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected");
        return ours;
    }

    private Ours Start(int port, FakeDoor door, Action<BrokerOptions>? also = null)
    {
        var options = new PlantWatchOptions { Data = _folder, Broker = { Mode = BrokerMode.External, Port = port } };
        also?.Invoke(options.Broker);
        var broker = new ExternalBroker(door, Options.Create(options), TimeProvider.System, NullLogger<ExternalBroker>.Instance);
        _ = broker.StartAsync(default);
        return new(broker);
    }

    private sealed record Ours(ExternalBroker Broker) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await Broker.StopAsync(default);
            Broker.Dispose();
        }
    }
}
