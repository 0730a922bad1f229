using System.Net.Sockets;
using Microsoft.Extensions.Options;
using MQTTnet;
using MQTTnet.Exceptions;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Ingest;

/// <summary>Our side of an external MQTT 5 broker: a session that stays there and queues while we are away, acknowledged message by message after the commit, and connected anew for ever.</summary>
internal sealed class ExternalBroker(IDoor door, IOptions<PlantWatchOptions> options, TimeProvider time, ILogger<ExternalBroker> logger) : BackgroundService, IBrokerStatus
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);
    private static readonly TimeSpan Busy = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan DrainTime = TimeSpan.FromSeconds(2);
    private readonly BrokerOptions _options = options.Value.Broker;
    private readonly BrokerSessionFile _file = new(options.Value.Data, logger);
    private readonly ReconnectPolicy _policy = new();
    private readonly PastTroubles _past = new();
    private readonly ConnectionFlaps _flaps = new();
    private BrokerSession? _session;
    private TaskCompletionSource _topicsChanged = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public BrokerState State { get; private set; } = new(BrokerMode.External, BrokerWord.Stopped, Instant.Never, "");

    public IReadOnlyList<BrokerTrouble> Troubles => [.. State.Trouble is { } now ? [now] : (BrokerTrouble[])[], .. _past.At(Now)];

    private string Address => $"{_options.Host}:{_options.Port}";

    private Instant Now => Instant.From(time.GetUtcNow());

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        _session = _file.Load();
        door.TopicsChanged += NoteTopics;
        try
        {
            while (!stoppingToken.IsCancellationRequested) await LiveAndWaitAsync(stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            IngestLog.LeftBroker(logger, _options.Host, _options.Port);
        }
        finally
        {
            door.TopicsChanged -= NoteTopics;
            Set(BrokerWord.Stopped, "");
        }
    }

    private void NoteTopics() =>
        Interlocked.Exchange(ref _topicsChanged, new(TaskCreationOptions.RunContinuationsAsynchronously)).TrySetResult();

    private void Set(BrokerWord word, string detail) => State = new(BrokerMode.External, word, Now, detail);

    // A failure that repeats itself at every attempt stands since its first.
    private void Fail(BrokerWord word, BrokerFailure failure, string detail, IReadOnlyList<string>? topics = null)
    {
        var since = State.Trouble is { } known && known.Failure == failure ? known.Since : Now;
        State = new(BrokerMode.External, word, since, detail) { Trouble = new(failure, since, Address, detail) { Topics = topics ?? [] } };
    }

    private async Task LiveAndWaitAsync(CancellationToken stopping)
    {
        var start = time.GetTimestamp();
        var connected = false;
        try
        {
            // The page keeps saying what is wrong while we try again; "connecting" is the word before the first answer only.
            if (State.Word == BrokerWord.Stopped) Set(BrokerWord.Connecting, Address);
            await using var connection = new BrokerConnection(door, Window, time, logger);
            connected = await ConnectAsync(connection, stopping);
            if (connected) await LiveAsync(connection, stopping);
        }
        catch (Exception e) when (!stopping.IsCancellationRequested)
        {
            if (e is MqttCommunicationException or SocketException or OperationCanceledException or MqttClientNotConnectedException)
                IngestLog.Unreachable(logger, _options.Host, _options.Port, e.GetBaseException().Message);
            else IngestLog.LoopFailed(logger, e);
            Fail(BrokerWord.Unreachable, BrokerFailure.ConnectionLost, e.GetBaseException().Message);
        }
        var delay = _policy.Next(connected ? time.GetElapsedTime(start) : TimeSpan.Zero, Random.Shared.NextDouble());
        IngestLog.NextAttempt(logger, delay);
        await Task.Delay(delay, time, stopping);
    }

    private async Task<bool> ConnectAsync(BrokerConnection connection, CancellationToken stopping)
    {
        if (await AnswerAsync(connection, stopping) is not { } answer) return false;
        var (failure, detail) = FailureOf.Answer(answer);
        if (failure != BrokerFailure.None)
        {
            IngestLog.Refused(logger, _options.Host, _options.Port, detail, answer.ReasonString);
            Fail(BrokerWord.Refused, failure, detail);
            return false;
        }
        return await ResumeAsync(answer.IsSessionPresent, stopping);
    }

    /// <summary>The broker's answer; null when none came, which is told.</summary>
    private async Task<MqttClientConnectResult?> AnswerAsync(BrokerConnection connection, CancellationToken stopping)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stopping);
        patience.CancelAfter(Patience);
        TlsWatch? tls = null;
        try
        {
            var dial = BrokerDial.To(_options, time);
            tls = dial.Tls;
            return await connection.ConnectAsync(ClientOptions(dial.Options), patience.Token);
        }
        catch (Exception e) when (!stopping.IsCancellationRequested)
        {
            var (failure, detail) = FailureOf.Attempt(e, tls, patience.IsCancellationRequested);
            IngestLog.Unreachable(logger, _options.Host, _options.Port, $"{failure}: {detail}");
            Fail(BrokerWord.Unreachable, failure, detail);
            return null;
        }
    }

    private async Task<bool> ResumeAsync(bool present, CancellationToken stopping)
    {
        var before = _session?.Name;
        Keep(BrokerSession.Resume(_session, $"{_options.ClientId}@{Address}", present, Now, NewName()));
        await TellLossAsync(stopping);
        IngestLog.Connected(logger, _options.Host, _options.Port, _options.ClientId, _session!.Name, _session.Name == before ? "resumed" : "new");
        return true;
    }

    /// <summary>The loss is kept with the session until it is told, so that no crash in between hides it.</summary>
    private async Task TellLossAsync(CancellationToken stopping)
    {
        if (_session!.Lost is not { } lost) return;
        IngestLog.SessionLost(logger, lost.Name, lost.Since.ToString());
        _past.Note(new(BrokerFailure.SessionLost, Now, Address, BrokerWords.Moment(lost.Since)));
        await door.SessionLostAsync(lost.Name, lost.Since, stopping);
        Keep(_session with { Lost = null });
    }

    private async Task LiveAsync(BrokerConnection connection, CancellationToken stopping)
    {
        connection.Open(_session!.Name);
        try
        {
            while (!connection.Ended.IsCompleted)
            {
                // Taken before the topics are read, so that a change in between is not missed.
                var changed = Volatile.Read(ref _topicsChanged).Task;
                await SubscribeAsync(connection, stopping);
                await Task.WhenAny(connection.Ended, changed).WaitAsync(stopping);
            }
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // What the door commits now need not be sent again at the next start.
            await connection.DrainAsync(DrainTime);
            throw;
        }
        catch (Exception) when (connection.Ended.IsCompleted)
        {
            // The end of the connection says why better than what it interrupted.
        }
        finally
        {
            Keep(_session with { LastHeard = Instant.Later(_session.LastHeard, connection.LastHeard) });
        }
        var (how, why) = await connection.Ended;
        IngestLog.ConnectionEnded(logger, _options.Host, _options.Port, why);
        if (how == ConnectionEnd.TakenOver) NoteTakenOver();
        else if (how == ConnectionEnd.BrokerGone && _flaps.Lost(Now)) _past.Note(new(BrokerFailure.ConnectionFlapping, Now, Address, _options.ClientId));
        Fail(how == ConnectionEnd.NotCommitted ? BrokerWord.NotCommitting : BrokerWord.Unreachable, how == ConnectionEnd.NotCommitted ? BrokerFailure.NotCommitted : BrokerFailure.ConnectionLost, why);
    }

    // Connected again we take the session back, so what stands at the moment says nothing of it.
    private void NoteTakenOver()
    {
        IngestLog.TakenOver(logger, _options.Host, _options.Port, _options.ClientId);
        _past.Note(new(BrokerFailure.TakenOver, Now, Address, _options.ClientId));
    }

    /// <summary>Brings the subscriptions of the session, which may be older than this process, to what the plant file wants now.</summary>
    private async Task SubscribeAsync(BrokerConnection connection, CancellationToken stopping)
    {
        var wanted = TopicFilters.Fewest(door.Topics, _options.AlsoSubscribe);
        var dropped = _session!.Filters.Except(wanted, StringComparer.Ordinal).ToList();
        Keep(_session with { Filters = [.. wanted, .. dropped] });
        // First what is new, then what is old: in between a message may come twice, the other way round it might not come.
        var refused = await connection.SubscribeAsync(wanted, stopping);
        await connection.UnsubscribeAsync(dropped, stopping);
        Keep(_session with { Filters = wanted });
        IngestLog.Subscribed(logger, wanted.Count, dropped.Count);
        foreach (var (filter, code) in refused) IngestLog.FilterRefused(logger, filter, code);
        if (refused.Count == 0) Set(BrokerWord.Connected, Address);
        else Fail(BrokerWord.PartlySubscribed, BrokerFailure.SubscriptionRefused, string.Join(", ", refused.Select(one => one.Filter)), [.. refused.Select(one => $"{one.Filter}: {one.Code}")]);
    }

    private void Keep(BrokerSession session)
    {
        if (session == _session) return;
        _file.Save(session);
        _session = session;
    }

    /// <summary>How many may be on the way to us unacknowledged; what the memory of packets can tell apart must be more.</summary>
    private int Window => Math.Clamp(_options.ReceiveMaximum, 1, PacketMemory.Capacity / 2);

    private string NewName() => $"{_options.ClientId}#{Guid.NewGuid().ToString("N")[..12]}";

    private MqttClientOptions ClientOptions(MqttClientOptionsBuilder builder) => builder
        .WithClientId(_options.ClientId)
        .WithCleanStart(false)
        .WithSessionExpiryInterval(uint.MaxValue)
        .WithReceiveMaximum((ushort)Window)
        .WithKeepAlivePeriod(TimeSpan.FromSeconds(15))
        // A broker that writes a large queue to disk answers late; to leave it then and be sent everything anew would make it worse.
        .WithTimeout(Busy)
        .Build();
}
