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
    private static readonly EventId SendFailed = 6014, GivenUp = 6011, SheetDropped = 6015, NotPrinted = 6016;
    private static readonly PartitionKey Hall = new("hall");

    private readonly HandClock _clock = new();
    private readonly InMemoryStore _store = new(TimeZoneInfo.Utc);
    private readonly SpoiltOutbox _outbox;
    private readonly OutboxBook _book;
    private readonly CountingTopic _topic = new();
    private readonly KeptLog _log = new();
    private readonly HandPress _enclosures = new();
    private readonly ILoggerFactory _logs;
    private readonly Channels _channels;
    private readonly Sender _sender;

    public GuardTests()
    {
        _outbox = new(_store);
        _book = new(_outbox, _clock);
        _channels = new(new ChannelSecrets(new()), _topic, new(), _clock);
        _logs = LoggerFactory.Create(log => log.AddProvider(_log));
        _sender = new(_book, _channels, new NoPictures(), new SheetPress(_enclosures, _clock, _logs.CreateLogger<SheetPress>()), _clock, _logs.CreateLogger<Sender>());
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

    [Fact]
    public async Task A_sheet_that_is_slow_to_print_holds_up_no_alarm_and_goes_once_it_is_printed()
    {
        var (plan, worker, printed) = (Plant("desk"), Worker(), new TaskCompletionSource<Enclosed?>());
        _enclosures.Prints = () => printed.Task;
        var sheet = await QueueSheetAsync("desk");
        _sender.Go(plan, [worker], CancellationToken.None);
        await Peer.UntilAsync(() => _enclosures.Begun == 1, "the sheet is being printed");
        _clock.Advance(TimeSpan.FromSeconds(1));
        var alarm = await QueueAsync("desk");
        await GoUntilAsync(plan, worker, () => FateOf(alarm) == Fate.Sent, "the alarm is sent meanwhile");
        Assert.Equal((Fate.Waiting, 1), (FateOf(sheet), _enclosures.Begun));
        printed.SetResult(new("sheet.pdf", "application/pdf", [1]));
        await GoUntilAsync(plan, worker, () => FateOf(sheet) == Fate.Sent, "the sheet follows");
        Assert.Equal((2, 1), (_topic.Told.Count, _enclosures.Begun));
    }

    [Fact]
    public async Task A_sheet_whose_pool_is_gone_is_dropped_with_a_line_in_the_log_and_the_channel_is_well()
    {
        var (plan, worker) = (Plant("desk"), Worker());
        _enclosures.Prints = () => Task.FromResult<Enclosed?>(null);
        var sheet = await QueueSheetAsync("desk");
        await GoUntilAsync(plan, worker, () => FateOf(sheet) == Fate.GivenUp && _log.Count(SheetDropped) > 0, "it is dropped and told");
        Assert.Equal((1, 0), (_log.Count(SheetDropped), _log.Count(GivenUp)));
        _clock.Advance(TimeSpan.FromHours(1));
        var health = ChannelHealth.Of(_book.Of(Hall), "desk");
        Assert.Equal((false, ""), (health.Fails(Now), health.Trouble));
        Assert.Empty(_topic.Told);
    }

    [Fact]
    public async Task A_sheet_that_cannot_be_printed_is_tried_again_after_a_rest_for_a_day_and_the_channel_is_well()
    {
        var (plan, worker) = (Plant("desk"), Worker());
        _enclosures.Prints = () => throw new InvalidOperationException("spoilt");
        var sheet = await QueueSheetAsync("desk");
        await GoUntilAsync(plan, worker, () => _log.Count(NotPrinted) == 1, "the fault is told");
        _clock.Advance(TimeSpan.FromMinutes(9));
        await GoAsync(plan, worker);
        Assert.Equal(1, _enclosures.Begun);
        _clock.Advance(TimeSpan.FromMinutes(2));
        await GoUntilAsync(plan, worker, () => _log.Count(NotPrinted) == 2, "it is tried again");
        Assert.Equal((Fate.Waiting, false), (FateOf(sheet), ChannelHealth.Of(_book.Of(Hall), "desk").Fails(Now)));
        _clock.Advance(TimeSpan.FromDays(1));
        await GoUntilAsync(plan, worker, () => FateOf(sheet) == Fate.GivenUp, "it is given up");
        _clock.Advance(TimeSpan.FromHours(1));
        Assert.Equal((1, false), (_log.Count(SheetDropped), ChannelHealth.Of(_book.Of(Hall), "desk").Fails(Now)));
    }

    [Fact]
    public async Task A_print_that_hangs_is_given_up_and_tried_again()
    {
        var (plan, worker) = (Plant("desk"), Worker());
        _enclosures.Prints = () => new TaskCompletionSource<Enclosed?>().Task;
        await QueueSheetAsync("desk");
        _sender.Go(plan, [worker], CancellationToken.None);
        await Peer.UntilAsync(() => _enclosures.Begun == 1, "it is being printed");
        _clock.Advance(TimeSpan.FromMinutes(11));
        await Peer.UntilAsync(() => _log.Count(NotPrinted) == 1, "it is given up for this time");
        _enclosures.Prints = () => Task.FromResult<Enclosed?>(new("sheet.pdf", "application/pdf", [1]));
        _clock.Advance(TimeSpan.FromMinutes(11));
        await GoUntilAsync(plan, worker, () => _topic.Told.Count == 1, "it goes at the next try");
    }

    [Fact]
    public async Task Sheets_that_cannot_be_written_down_silence_no_alarm()
    {
        await using var committer = new Committer(_store, TimeProvider.System, NullLogger<Committer>.Instance);
        committer.Start();
        await using var host = new PlantHost(_store, committer, new Snapshots(_store, TimeProvider.System, NullLogger<Snapshots>.Instance), _clock, NullLogger<PlantHost>.Instance);
        // Half past eleven in London is half an hour ago.
        await host.LoadAsync(WithSheets with { Circuits = [Circuit("hall")] }, CancellationToken.None);
        Assert.IsType<Outcome.Done>(await host.SendAsync("hall", at => new IncidentDeclared(at, new Incident
        {
            Id = TimeOrderedId.Derive(at, "hall"), PoolId = "hall-pool", Kind = IncidentKind.FormedStool, Authority = IncidentAuthority.UsCdc, DeclaredBy = "R. Example", HappenedAt = at,
        }), CancellationToken.None));
        var refused = 0;
        _outbox.QueueFails = notice => notice.Kind == NoticeKind.Sheet && Interlocked.Increment(ref refused) > 0;
        using var loop = new TellingLoop(host, _book, _sender, new StandingTopics(_topic, _clock), new ChannelWatch(host, _book, _clock), _clock, _logs.CreateLogger<TellingLoop>());
        await loop.StartAsync(CancellationToken.None);
        await BeatUntilAsync(() => _topic.Told.Contains("desk/hall/notices"), "the alarm is told");
        Assert.NotEqual(0, Volatile.Read(ref refused));
        await loop.StopAsync(CancellationToken.None);
    }

    public void Dispose()
    {
        _logs.Dispose();
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

    private Task GoUntilAsync(PlantPlan plan, CircuitWorker worker, Func<bool> holds, string sentence) => Peer.UntilAsync(() =>
    {
        _sender.Go(plan, [worker], CancellationToken.None);
        return holds();
    }, sentence);

    private Fate FateOf(Guid notice) => _book.Of(Hall).Single(item => item.Notice.Id == notice).Fate;

    private async Task<Guid> QueueSheetAsync(string channel)
    {
        var notice = new Notice { Alarm = TimeOrderedId.Derive(Now, "sheet"), Key = "sheet", Kind = NoticeKind.Sheet, Priority = Priority.Low, AnnunciatedAt = Now, Step = 0, Channel = channel, Person = null };
        var message = new Message(notice.Id, NoticeKind.Sheet, Priority.Low, 0, notice.Alarm, "", "sheet", "Baths", "hall", "Hall", null, null, "Day log sheet", "Enclosed", Now, "", "", "", null, null, [])
        { Sheet = new("day-log", [], new(2026, 3, 1), new(2026, 3, 1)) };
        await _book.QueueAsync(Hall, [new(notice, message.Write())], CancellationToken.None);
        return notice.Id;
    }

    private async Task<Guid> QueueAsync(string channel)
    {
        var (id, alarm) = (TimeOrderedId.Derive(Now, channel), TimeOrderedId.Derive(Now, "alarm"));
        var notice = new Notice { Alarm = alarm, Key = "R-030/pump", Kind = NoticeKind.Raised, Priority = Priority.High, AnnunciatedAt = Now, Step = 0, Channel = channel, Person = null, Consequences = [] };
        var message = new Message(id, NoticeKind.Raised, Priority.High, 0, alarm, "R-030", "pump", "Baths", "hall", "Hall", "main", "Main pool", "A dosing pump reports a fault", "fault", Now, "pH rises.", "Have it mended.", "at once", null, null, []);
        await _book.QueueAsync(Hall, [new(notice, message.Write())], CancellationToken.None);
        return notice.Id;
    }

    private static PlantPlan WithSheets { get; } = PlantFileReader.Read("""
        site: { name: Baths, time_zone: Europe/London }
        people: [{ id: ann, name: A. Sample, role: operator, email: ann@baths.example }]
        telling:
          escalation: [ann]
          sheets: [{ kind: day-log, at: "11:30", to: [ann] }]
          channels:
            - { id: desk, name: desk, kind: mqtt, topic: desk }
            - { id: post, name: Post, kind: email, host: 127.0.0.1, port: 9, security: plain, sender: alarms@baths.example }
        circuits:
          - { id: main, name: Main, pools: [{ id: pool, name: Pool, kind: swimming, setting: indoor, disinfectant: chlorine, volume_m3: 400 }] }
        """).Plan!;

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
