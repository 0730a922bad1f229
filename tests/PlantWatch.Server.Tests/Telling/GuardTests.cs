using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Server.Telling;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.PlantFile;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Telling;

/// <summary>A fault on our own side, with one channel or one circuit, stays with it: it silences no other, and is not repeated every second.</summary>
public sealed class GuardTests : IDisposable
{
    private static readonly EventId SendFailed = 6014;
    private static readonly PartitionKey Hall = new("hall");

    private readonly HandClock _clock = new();
    private readonly InMemoryStore _store = new(TimeZoneInfo.Utc);
    private readonly SpoiltOutbox _outbox;
    private readonly OutboxBook _book;
    private readonly CountingTopic _topic = new();
    private readonly KeptLog _log = new();
    private readonly Channels _channels;
    private readonly Sender _sender;

    public GuardTests()
    {
        _outbox = new(_store);
        _book = new(_outbox, _clock);
        _channels = new(new ChannelSecrets(new()), _topic, new(), _clock);
        _sender = new(_book, _channels, new NoPictures(), new NoEnclosure(), _clock, LoggerFactory.Create(log => log.AddProvider(_log)).CreateLogger<Sender>());
    }

    private Instant Now => Instant.From(_clock.GetUtcNow());

    [Fact]
    public async Task What_was_sent_and_cannot_be_noted_rests_for_a_minute_instead_of_being_sent_every_second()
    {
        var (plan, worker) = (Plant("desk"), Worker());
        var notice = await QueueAsync("desk");
        _outbox.NotesFail = _ => true;
        for (var second = 0; second < 59; second++)
        {
            await GoAsync(plan, worker);
            _clock.Advance(TimeSpan.FromSeconds(1));
        }

        Assert.Equal((1, 1), (_topic.Told.Count, _log.Count(SendFailed)));
        _outbox.NotesFail = _ => false;
        _clock.Advance(TimeSpan.FromSeconds(1));
        await GoAsync(plan, worker);
        Assert.Equal(2, _topic.Told.Count);
        Assert.Equal(Fate.Sent, Assert.Single(_book.Of(Hall), item => item.Notice.Id == notice).Fate);
        await GoAsync(plan, worker);
        Assert.Equal(2, _topic.Told.Count);
    }

    [Fact]
    public async Task A_channel_that_rests_holds_up_no_other()
    {
        var (plan, worker) = (Plant("desk", "hall"), Worker());
        var spoilt = await QueueAsync("desk");
        _outbox.NotesFail = id => id == spoilt;
        await GoAsync(plan, worker);
        for (var i = 0; i < 3; i++)
        {
            _clock.Advance(TimeSpan.FromSeconds(1));
            await QueueAsync("hall");
            await GoAsync(plan, worker);
        }

        Assert.Equal((1, 3), (_topic.Told.Count(t => t.StartsWith("desk/", StringComparison.Ordinal)), _topic.Told.Count(t => t.StartsWith("hall/", StringComparison.Ordinal))));
    }

    [Fact]
    public async Task A_circuit_whose_messages_cannot_be_read_silences_no_other_and_is_told_once_they_can()
    {
        await using var committer = new Committer(_store, TimeProvider.System, NullLogger<Committer>.Instance);
        committer.Start();
        await using var host = new PlantHost(_store, committer, new Snapshots(_store, TimeProvider.System, NullLogger<Snapshots>.Instance), _clock, NullLogger<PlantHost>.Instance);
        await host.LoadAsync(Plant("desk") with { Circuits = [Circuit("spa"), Circuit("hall")] }, CancellationToken.None);
        foreach (var circuit in (string[])["spa", "hall"]) Assert.IsType<Outcome.Done>(await host.SendAsync(circuit, at => new IncidentDeclared(at, new Incident
        {
            Id = TimeOrderedId.Derive(at, circuit), PoolId = circuit + "-pool", Kind = IncidentKind.FormedStool, Authority = IncidentAuthority.UsCdc, DeclaredBy = "R. Example", HappenedAt = at,
        }), CancellationToken.None));
        _outbox.ReadsFail = partition => partition.Value == "spa";

        using var loop = new TellingLoop(host, _book, _sender, new StandingTopics(_topic, _clock), new ChannelWatch(host, _book, _clock), _clock, LoggerFactory.Create(log => log.AddProvider(_log)).CreateLogger<TellingLoop>());
        await loop.StartAsync(CancellationToken.None);
        await BeatUntilAsync(() => _topic.Told.Contains("desk/hall/notices"), "the other circuit is told");
        Assert.DoesNotContain("desk/spa/notices", _topic.Told);
        _outbox.ReadsFail = _ => false;
        await BeatUntilAsync(() => _topic.Told.Contains("desk/spa/notices"), "this one too, once its messages can be read");
        await loop.StopAsync(CancellationToken.None);
    }

    public void Dispose()
    {
        _channels.Dispose();
        _book.Dispose();
    }

    // The loop works on threads of its own: the clock is moved a beat at a time until it has come round.
    private Task BeatUntilAsync(Func<bool> holds, string sentence) => Peer.UntilAsync(() =>
    {
        _clock.Advance(TimeSpan.FromSeconds(1));
        return holds();
    }, sentence);

    private async Task GoAsync(PlantPlan plan, CircuitWorker worker)
    {
        _sender.Go(plan, [worker], CancellationToken.None);
        await _sender.StopAsync();
    }

    private async Task<Guid> QueueAsync(string channel)
    {
        var (id, alarm) = (TimeOrderedId.Derive(Now, channel), TimeOrderedId.Derive(Now, "alarm"));
        var notice = new Notice { Alarm = alarm, Key = "R-030/pump", Kind = NoticeKind.Raised, Priority = Priority.High, AnnunciatedAt = Now, Step = 0, Channel = channel, Person = null, Consequences = [] };
        var message = new Message(id, NoticeKind.Raised, Priority.High, 0, alarm, "R-030", "pump", "Baths", "hall", "Hall", "main", "Main pool", "A dosing pump reports a fault", "fault", Now, "pH rises.", "Have it mended.", "at once", null, null, []);
        await _book.QueueAsync(Hall, [new(notice, message.Write())], CancellationToken.None);
        return notice.Id;
    }

    private static PlantPlan Plant(params string[] topics) => PlantFileReader.Read($$"""
        site: { name: Baths, time_zone: Europe/London }
        telling:
          channels:
        {{string.Join('\n', topics.Select(t => $"    - {{ id: {t}, name: {t}, kind: mqtt, topic: {t} }}"))}}
        circuits:
          - { id: main, name: Main, pools: [{ id: pool, name: Pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 400 }] }
        """).Plan!;

    private static CircuitPlan Circuit(string id) => new()
    {
        Id = id, Name = id, TimeZone = "UTC",
        Pools = [new() { Id = id + "-pool", Name = id, Kind = PoolKind.Swimming, Setting = Setting.Indoor, Disinfectant = Disinfectant.Chlorine, VolumeCubicMetres = 100 }],
    };

    private CircuitWorker Worker()
    {
        var committer = new Committer(_store, TimeProvider.System, NullLogger<Committer>.Instance);
        return new(new RestoredCircuit(Hall, CircuitState.Of(Circuit("hall")), 0, Now, default, 0), committer, new Snapshots(_store, TimeProvider.System, NullLogger<Snapshots>.Instance), TimeProvider.System, NullLogger.Instance);
    }
}
