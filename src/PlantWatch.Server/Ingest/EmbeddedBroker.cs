using System.Collections;
using System.Net;
using System.Net.Sockets;
using Microsoft.Extensions.Options;
using MQTTnet;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest.Devices;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Telling;

namespace PlantWatch.Server.Ingest;

/// <summary>The broker inside this process. A device's PUBACK leaves after its message is committed: acknowledged means on disk.</summary>
/// <remarks>
/// The ingester is the publish interceptor and not a subscriber: the interceptor is awaited before the PUBACK, whereas a subscriber's
/// queue would drop the oldest and its acknowledgements would reach nobody. Why: docs/decisions/0004-brokers.md.
/// </remarks>
internal sealed class EmbeddedBroker(IDoor door, IOptions<PlantWatchOptions> options, TimeProvider time, ILogger<EmbeddedBroker> logger)
    : IHostedService, IBrokerStatus, IAlarmTopic, IDisposable
{
    /// <summary>Largest packet that is read at all. A payload of 1 MiB still becomes a kept refusal; beyond this the connection is closed.</summary>
    public const int MostPacketBytes = 2 * 1024 * 1024;

    /// <summary>Longest client id, in characters. The library takes 65535, and each is remembered.</summary>
    public const int LongestClientId = 256;

    /// <summary>Largest payload that is handed on to subscribers or kept as a last value: no reading is larger, and what is kept lies in memory.</summary>
    public const int MostPassedOnBytes = 64 * 1024;

    /// <summary>Most topics of which a last value is kept.</summary>
    public const int MostRetained = 2000;

    /// <summary>Most messages that wait for a subscriber that does not read.</summary>
    private const int MostPending = 250;

    private static readonly object Own = new();

    /// <summary>Most connections at once.</summary>
    public const int MostConnections = 1000;

    private readonly CancellationTokenSource _stopping = new();
    private readonly List<DeviceListener> _listeners = [];
    private readonly HashSet<string> _retained = new(StringComparer.Ordinal);
    private MqttServer? _server;
    private DeviceGate? _gate;

    /// <summary>The port that devices connect to; chosen by the system where the options say 0. Valid once started.</summary>
    public int Port => _listeners.Count > 0 ? _listeners[0].Port : options.Value.Broker.Port;

    /// <summary>The port with TLS; null where there is none.</summary>
    public int? TlsPort => _listeners.Count > 1 ? _listeners[1].Port : null;

    public BrokerState State { get; private set; } = new(BrokerMode.Embedded, BrokerWord.Stopped, Instant.Never, "");

    public IReadOnlyList<BrokerTrouble> Troubles => _gate?.Troubles() ?? [];

    public async Task StartAsync(CancellationToken cancellationToken)
    {
        var broker = options.Value.Broker;
        var accounts = string.IsNullOrEmpty(broker.Devices) ? null : new DeviceAccounts(broker.Devices, time, logger);
        var gate = _gate = new DeviceGate(accounts, time, logger);
        _listeners.AddRange(EmbeddedPlaces.Of(broker, accounts).Select(at => new DeviceListener(at, MostConnections, MostPacketBytes, logger)));
        _server = new MqttServerFactory().CreateMqttServer(
            // Sessions outlive a connection, so that a device which reconnects keeps what it has in flight and sends it again.
            new MqttServerOptionsBuilder().WithPersistentSessions().WithMaxPendingMessagesPerClient(MostPending).WithDefaultCommunicationTimeout(TimeSpan.FromSeconds(15)).Build(),
            [.. _listeners]);
        _server.ValidatingConnectionAsync += e => Say(() => Admit(e, gate));
        _server.InterceptingSubscriptionAsync += e => Say(() => Allow(e, gate));
        _server.InterceptingInboundPacketAsync += PacketOfPublish.NoteAsync;
        _server.InterceptingOutboundPacketAsync += SpeakPlainly;
        _server.InterceptingPublishAsync += CommitAsync;
        _server.ClientConnectedAsync += e => Say(() => gate.Enter(e));
        _server.ClientDisconnectedAsync += e => Say(() => gate.Leave(e));
        try
        {
            await _server.StartAsync();
        }
        catch (SocketException e)
        {
            IngestLog.EmbeddedCannotListen(logger, options.Value.Broker.Port, e.Message);
            throw;
        }
        IngestLog.EmbeddedListening(logger, IPAddress.Loopback, Port);
        if (TlsPort is { } tls) IngestLog.EmbeddedListeningTls(logger, broker.Listen, tls, accounts!.Count);
        Set(BrokerWord.Listening, $"{IPAddress.Loopback}:{Port}{(TlsPort is { } also ? $", TLS {broker.Listen}:{also}" : "")}");
    }

    public async Task StopAsync(CancellationToken cancellationToken)
    {
        if (_server is null) return;
        // What is committed by now is acknowledged; the rest is not, and its devices send it again.
        await _stopping.CancelAsync();
        await _server.StopAsync(new MqttServerStopOptions());
        Set(BrokerWord.Stopped, "");
        IngestLog.EmbeddedStopped(logger);
    }

    public void Dispose()
    {
        _server?.Dispose();
        foreach (var listener in _listeners) listener.Dispose();
        _stopping.Dispose();
    }

    private void Set(BrokerWord word, string detail) => State = new(BrokerMode.Embedded, word, Instant.From(time.GetUtcNow()), detail);

    private static void Admit(ValidatingConnectionEventArgs e, DeviceGate gate)
    {
        e.ReasonCode = gate.Admit(e);
        if (e.ReasonCode == MqttConnectReasonCode.Success && string.IsNullOrEmpty(e.ClientId)) e.AssignedClientIdentifier = DeviceAdapter.NewName();
    }

    private static void Allow(InterceptingSubscriptionEventArgs e, DeviceGate gate)
    {
        if (gate.May(e.UserName, e.TopicFilter.Topic)) return;
        // 3.1.1 knows one code for a failure (MQTT-3.9.3-2).
        e.Response.ReasonCode = gate.Speaks5(e.ClientId) ? MqttSubscribeReasonCode.NotAuthorized : MqttSubscribeReasonCode.UnspecifiedError;
        e.ProcessSubscription = false;
    }

    /// <summary>Nobody else need subscribe for a message to have arrived; and a client of MQTT 5 is told beforehand how much is taken.</summary>
    private static Task SpeakPlainly(InterceptingPacketEventArgs e)
    {
        if (e.Packet is MqttPubAckPacket { ReasonCode: MqttPubAckReasonCode.NoMatchingSubscribers } ack) ack.ReasonCode = MqttPubAckReasonCode.Success;
        else if (e.Packet is MqttPubRecPacket { ReasonCode: MqttPubRecReasonCode.NoMatchingSubscribers } rec) rec.ReasonCode = MqttPubRecReasonCode.Success;
        else if (e.Packet is MqttConnAckPacket connAck) connAck.MaximumPacketSize = MostPacketBytes;
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public async Task PublishAsync(string topic, ReadOnlyMemory<byte> payload, string contentType, bool retain, CancellationToken cancellation)
    {
        if (_server is not { IsStarted: true } server) throw new InvalidOperationException("the broker has not started");
        var message = new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(payload.ToArray()).WithContentType(contentType).WithRetainFlag(retain)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build();
        await server.InjectApplicationMessage(new InjectedMqttApplicationMessage(message) { SenderClientId = "plantwatch", CustomSessionItems = new Hashtable { [Own] = Own } }, cancellation);
    }

    private async Task CommitAsync(InterceptingPublishEventArgs e)
    {
        // What the plant says of itself passes here too; only we hold this mark. It is handed on and is no reading.
        if (e.SessionItems[Own] == Own) return;
        var message = PacketOfPublish.MessageOf(e);
        if (_gate is { } gate && !gate.May(e.UserName, message.Topic))
        {
            RefuseOutside(e, gate, message.Topic);
            return;
        }
        if (door.IsOwn(message.Topic))
        {
            // Nobody else says which alarms stand. It is acknowledged all the same: a device that is cut off would send it for ever.
            IngestLog.OwnTopicRefused(logger, e.ClientId, message.Topic);
            e.ProcessPublish = false;
            return;
        }
        if (!IsTopicName(message.Topic))
        {
            // Not even a client of 3.1.1, which can be told nothing else, must take silence for success.
            IngestLog.TopicRefused(logger, e.ClientId, message.Topic);
            (e.ProcessPublish, e.CloseConnection) = (false, true);
            return;
        }
        try
        {
            using var ending = CancellationTokenSource.CreateLinkedTokenSource(_stopping.Token, e.CancellationToken);
            var committed = await door.MessageAsync(message, ending.Token);
            await committed.WaitAsync(ending.Token);
            PassOn(e, message.Payload.Length);
        }
        catch (Exception exception)
        {
            if (!_stopping.IsCancellationRequested) IngestLog.NotCommitted(logger, exception is OperationCanceledException ? null : exception, e.ClientId, message.Topic);
            (e.ProcessPublish, e.CloseConnection) = (false, true);
        }
    }

    // A client of 3.1.1 can be told nothing but the end of the connection, and must not take silence for success.
    private static void RefuseOutside(InterceptingPublishEventArgs e, DeviceGate gate, string topic)
    {
        gate.Outside(e.ClientId, e.UserName, topic);
        e.Response.ReasonCode = MqttPubAckReasonCode.NotAuthorized;
        (e.ProcessPublish, e.CloseConnection) = (false, !gate.Speaks5(e.ClientId));
    }

    // Subscribers are guests here: what they may cost is bounded, what is committed is not touched by it.
    private void PassOn(InterceptingPublishEventArgs e, int payloadBytes)
    {
        e.ProcessPublish = payloadBytes <= MostPassedOnBytes;
        if (!e.ProcessPublish || !e.ApplicationMessage.Retain) return;
        lock (_retained)
            if (!_retained.Contains(e.ApplicationMessage.Topic) && (_retained.Count >= MostRetained || !_retained.Add(e.ApplicationMessage.Topic)))
                e.ApplicationMessage.Retain = false;
    }

    /// <summary>A name and not a filter (MQTT 5.0 section 4.7): MQTT-3.3.2-2 forbids wildcards in a PUBLISH, MQTT-4.7.3-1 and -2 an empty name and NUL.</summary>
    private static bool IsTopicName(string topic) => topic.Length > 0 && topic.AsSpan().IndexOfAny("#+\0") < 0;

    private static Task Say(Action say)
    {
        say();
        return Task.CompletedTask;
    }
}
