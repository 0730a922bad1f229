using System.Threading.Channels;
using MQTTnet;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Ingest;

/// <summary>Why a connection ended. The default is <see cref="Stopped"/>.</summary>
internal enum ConnectionEnd
{
    /// <summary>We left.</summary>
    Stopped = 0,
    /// <summary>The broker or the network did.</summary>
    BrokerGone,
    /// <summary>A message could not be committed. It holds its place unacknowledged until a new connection, and so do all behind it.</summary>
    NotCommitted,
    /// <summary>Somebody else connected with our client id, and the broker gave him our session.</summary>
    TakenOver,
}

/// <summary>One connection to an external broker, from CONNECT to its end, and never again after it.</summary>
/// <remarks>
/// Each connection has a client of its own. The library would send an acknowledgement on whatever connection is current, where its
/// packet identifier belongs to another message; on a client that is gone it goes nowhere, and the broker sends the message again.
/// </remarks>
internal sealed class BrokerConnection : IAsyncDisposable
{
    private readonly IDoor _door;
    private readonly TimeProvider _time;
    private readonly ILogger _logger;
    private readonly IMqttClient _client = new MqttClientFactory().CreateMqttClient();
    private readonly CancellationTokenSource _ending = new();
    private readonly TaskCompletionSource<string> _session = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource<(ConnectionEnd, string)> _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Channel<Receipt> _receipts = Channel.CreateUnbounded<Receipt>(new() { SingleReader = true, SingleWriter = true });
    private readonly ReceiveWindow _window;
    private Task _acknowledging = Task.CompletedTask;
    private long _lastHeard;
    private volatile bool _leaving;

    public BrokerConnection(IDoor door, int window, TimeProvider time, ILogger logger)
    {
        (_door, _time, _logger) = (door, time, logger);
        _window = new(window, () => _client.PingAsync(_ending.Token), e => End(ConnectionEnd.BrokerGone, e.GetBaseException().Message));
        _client.ApplicationMessageReceivedAsync += TakeAsync;
        _client.DisconnectedAsync += e =>
        {
            End(e.Reason == MqttClientDisconnectReason.SessionTakenOver ? ConnectionEnd.TakenOver : ConnectionEnd.BrokerGone, e.ReasonString ?? e.Exception?.GetBaseException().Message ?? e.Reason.ToString());
            return Task.CompletedTask;
        };
    }

    /// <summary>A message that was handed over, and the commit its acknowledgement waits for.</summary>
    private readonly record struct Receipt(MqttApplicationMessageReceivedEventArgs Message, Task Committed);

    /// <summary>Ends when the connection does, with the reason.</summary>
    public Task<(ConnectionEnd How, string Why)> Ended => _ended.Task;

    /// <summary>When the newest message came; never before the first.</summary>
    public Instant LastHeard => Instant.FromUnixMicroseconds(Volatile.Read(ref _lastHeard));

    /// <summary>Connects. A refusal is in the result; only a broker that cannot be reached throws.</summary>
    public Task<MqttClientConnectResult> ConnectAsync(MqttClientOptions options, CancellationToken cancellation) => _client.ConnectAsync(options, cancellation);

    /// <summary>Lets messages in. They may come before the name of their session is known, and wait for it.</summary>
    public void Open(string session)
    {
        _session.TrySetResult(session);
        _acknowledging = AcknowledgeAsync();
    }

    /// <summary>Subscribes at QoS 1; gives the filters that the broker refused, with its code.</summary>
    /// <remarks>A retained last value is asked for once, when the subscription is new: it is shown and refused as what it is.</remarks>
    public async Task<IReadOnlyList<(string Filter, string Code)>> SubscribeAsync(IEnumerable<string> filters, CancellationToken cancellation)
    {
        var refused = new List<(string, string)>();
        foreach (var some in filters.Chunk(100))
        {
            var options = new MqttClientSubscribeOptions();
            options.TopicFilters.AddRange(some.Select(filter => new MqttTopicFilter
            {
                Topic = filter,
                QualityOfServiceLevel = MqttQualityOfServiceLevel.AtLeastOnce,
                RetainHandling = MqttRetainHandling.SendAtSubscribeIfNewSubscriptionOnly,
            }));
            var result = await _client.SubscribeAsync(options, cancellation);
            refused.AddRange(result.Items.Where(item => item.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2).Select(item => (item.TopicFilter.Topic, $"0x{(int)item.ResultCode:X2} {item.ResultCode}")));
        }
        return refused;
    }

    /// <summary>Ends subscriptions.</summary>
    public async Task UnsubscribeAsync(IEnumerable<string> filters, CancellationToken cancellation)
    {
        foreach (var some in filters.Chunk(100))
        {
            var options = new MqttClientUnsubscribeOptions();
            options.TopicFilters.AddRange(some);
            await _client.UnsubscribeAsync(options, cancellation);
        }
    }

    /// <summary>Takes nothing more in, and waits a while until what was taken in is committed and acknowledged.</summary>
    public async Task DrainAsync(TimeSpan most)
    {
        _leaving = true;
        _receipts.Writer.TryComplete();
        await Task.WhenAny(_acknowledging, Task.Delay(most, _time));
    }

    /// <summary>Leaves. The session stays at the broker and queues: its expiry was set when connecting, and a DISCONNECT without one leaves it so.</summary>
    public async ValueTask DisposeAsync()
    {
        End(ConnectionEnd.Stopped, "");
        try
        {
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(2));
            if (_client.IsConnected) await _client.DisconnectAsync(new MqttClientDisconnectOptions(), patience.Token);
        }
        catch (Exception)
        {
            // Gone already, which is what was wanted.
        }
        _client.Dispose();
        _receipts.Writer.TryComplete();
        await _acknowledging;
        _window.Dispose();
    }

    private void End(ConnectionEnd how, string why)
    {
        _ended.TrySetResult((how, why));
        _session.TrySetCanceled();
        _ending.Cancel();
    }

    /// <summary>Hands a message over, in the order of arrival: the library calls one at a time. Waiting for a place in the inbox here is what fills the broker's window and makes it wait.</summary>
    private async Task TakeAsync(MqttApplicationMessageReceivedEventArgs e)
    {
        e.AutoAcknowledge = false;
        if (_leaving || _ending.IsCancellationRequested) return;
        try
        {
            var session = await _session.Task;
            await _window.EnterAsync(_ending.Token);
            var message = new IncomingMessage(
                e.ApplicationMessage.Topic, IncomingPayload.Copy(e.ApplicationMessage.Payload), e.ApplicationMessage.Retain,
                session, e.PacketIdentifier, e.ApplicationMessage.Dup);
            Volatile.Write(ref _lastHeard, Instant.From(_time.GetUtcNow()).UnixMicroseconds);
            _receipts.Writer.TryWrite(new(e, await _door.MessageAsync(message, _ending.Token)));
        }
        catch (Exception exception)
        {
            Fail(exception, e.ApplicationMessage.Topic);
        }
    }

    /// <summary>Acknowledges in the order of arrival (MQTT-4.6.0-2), each once it is committed. The first that is not ends the connection.</summary>
    private async Task AcknowledgeAsync()
    {
        await foreach (var (message, committed) in _receipts.Reader.ReadAllAsync())
        {
            try
            {
                await committed.WaitAsync(_ending.Token);
            }
            catch (Exception exception)
            {
                Fail(exception, message.ApplicationMessage.Topic);
                return;
            }
            if (message.ApplicationMessage.QualityOfServiceLevel == MqttQualityOfServiceLevel.AtMostOnce)
            {
                _window.Leave();
                continue;
            }
            try
            {
                await message.AcknowledgeAsync(_ending.Token);
                _window.Acknowledged();
            }
            catch (Exception exception)
            {
                End(ConnectionEnd.BrokerGone, exception.GetBaseException().Message);
                return;
            }
        }
    }

    private void Fail(Exception exception, string topic)
    {
        if (_ending.IsCancellationRequested) return;
        IngestLog.ExternalNotCommitted(_logger, exception is OperationCanceledException ? null : exception, topic);
        End(ConnectionEnd.NotCommitted, exception.GetBaseException().Message);
    }
}
