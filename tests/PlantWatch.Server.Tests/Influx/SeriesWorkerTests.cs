using System.Reflection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Server.Series;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>The feed as it runs in the server, with a server at the other end that is away, slow, or says no.</summary>
public sealed class SeriesWorkerTests
{
    private sealed class Running : IAsyncDisposable
    {
        private readonly SeriesWorker _worker;

        public Running(FedRecord record, IFeedSource? source = null) => _worker = new(
            record.Feeder, source ?? record.Store, record.Door, new NightlyCheck(record.Store, new CopyCheck(record.Store, record.Door), TimeZoneInfo.Utc, TimeProvider.System, NullLogger<NightlyCheck>.Instance), Book,
            TimeProvider.System, Log);

        public FeedBook Book { get; } = new();

        public Said Log { get; } = new();

        public bool IsOver => _worker.ExecuteTask is { IsCompleted: true };

        public Task StartAsync() => _worker.StartAsync(default);

        public async ValueTask DisposeAsync()
        {
            await _worker.StopAsync(default);
            _worker.Dispose();
        }
    }

    private sealed class Said : ILogger<SeriesWorker>
    {
        private readonly List<string> _lines = [];

        public string All
        {
            get
            {
                lock (_lines) return string.Join('\n', _lines);
            }
        }

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            lock (_lines) _lines.Add($"{eventId.Id} {formatter(state, exception)} {exception}");
        }
    }

    [PeerFact("influxd")]
    public async Task A_server_that_was_away_gets_everything_when_it_is_back_and_nobody_waited_for_it()
    {
        await using var influxd = await Influxd.StartAsync();
        await influxd.KillAsync();
        await using var record = new FedRecord(influxd.Url);
        await using var running = new Running(record);
        await running.StartAsync();
        for (var i = 0; i < 20; i++) await record.CommitAsync(FedRecord.Seconds(100 * i, 100));
        await Peer.UntilAsync(() => running.Book.Now is { Trouble.Length: > 0, Owed.Readings: 2000 }, "the trouble is known and the readings are owed");
        Assert.Contains("InfluxDB cannot be written", FeedWords.WhatIsWrong(running.Book.Now), StringComparison.Ordinal);

        await influxd.StartAgainAsync();
        await Peer.UntilAsync(() => running.Book.Now is { Trouble: "", Written: 2000 }, "it is written");

        Assert.Equal(2000, await record.PointsAsync());
        Assert.Contains("4110 ", running.Log.All, StringComparison.Ordinal);
        Assert.Contains("4101 ", running.Log.All, StringComparison.Ordinal);
    }

    [PeerFact("influxd")]
    public async Task A_slow_server_slows_nothing_but_its_own_feed()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var gate = await Gate.BeforeAsync(influxd.Url);
        var open = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        gate.BeforeWrite = _ => open.Task;
        await using var record = new FedRecord(gate.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 12_000));
        await using var running = new Running(record);
        await running.StartAsync();
        await Peer.UntilAsync(() => gate.Writes == 1, "a write is under way");

        // It answers not at all now, and commits go on.
        for (var i = 0; i < 20; i++) await record.CommitAsync(FedRecord.Seconds(12_000 + (100 * i), 100));
        Assert.Equal((1, 0L), (gate.Writes, running.Book.Now.Written));
        Assert.Equal(14_000, await record.OwedAsync());

        open.SetResult();
        await Peer.UntilAsync(() => running.Book.Now.Written == 14_000, "it is written");
        Assert.Equal(14_000, await record.PointsAsync());
    }

    [PeerFact("influxd")]
    public async Task A_refused_token_is_said_in_words_without_the_token_and_a_new_one_is_taken_without_a_restart()
    {
        await using var influxd = await Influxd.StartAsync();
        await influxd.AskAsync("CREATE USER plant WITH PASSWORD 'right' WITH ALL PRIVILEGES");
        await influxd.KillAsync();
        await influxd.StartAgainAsync(asksWho: true);
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, "plant:wrongsecret\n");
        var options = new InfluxOptions { Url = influxd.Url.ToString(), TokenFile = file };
        await using var record = new FedRecord(options.Place!);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await using var running = new Running(record);
        await running.StartAsync();
        await Peer.UntilAsync(() => running.Book.Now.Trouble.Length > 0, "the refusal is known");
        Assert.Equal("InfluxDB refuses the token (authorization failed): set PlantWatch__Influx__Token or TokenFile", running.Book.Now.Trouble);

        await File.WriteAllTextAsync(file, "plant:right\n");
        await Peer.UntilAsync(() => running.Book.Now is { Trouble: "", Written: 10 }, "it is written");

        Assert.DoesNotContain("wrongsecret", running.Log.All, StringComparison.Ordinal);
        File.Delete(file);
    }

    [Fact]
    public void An_address_that_is_none_keeps_the_server_from_starting_with_a_sentence()
    {
        Assert.Null(new InfluxOptions().Place);
        var fault = Assert.Throws<IOException>(() => new InfluxOptions { Url = "influx" }.Place);
        Assert.Equal("PlantWatch__Influx__Url is no http address", fault.Message);
    }

    [Fact]
    public async Task A_record_that_fails_at_the_start_never_ends_the_server_and_the_first_word_knows_what_is_owed()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = _ => null;
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await using var running = new Running(record, FailingOnce.On(record.Store));

        await running.StartAsync();
        await Peer.UntilAsync(() => other.Writes.Count == 1 || running.IsOver, "it writes");

        Assert.False(running.IsOver);
        Assert.Contains("4112 The feed of InfluxDB failed on our side", running.Log.All, StringComparison.Ordinal);
        Assert.Contains("; 10 readings are owed", running.Log.All, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_orderly_stop_in_the_middle_of_a_write_is_no_failure()
    {
        await using var other = await Pretender.StartAsync();
        other.Says = _ => null;
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        var running = new Running(record);
        await running.StartAsync();
        await Peer.UntilAsync(() => other.Writes.Count == 1, "a write is under way");

        await running.DisposeAsync();

        Assert.StartsWith("4100 ", running.Log.All, StringComparison.Ordinal);
        Assert.Single(running.Log.All.Split('\n'));
    }

    [Fact]
    public async Task Another_server_is_said_to_be_another_and_gets_everything()
    {
        await using var other = await Pretender.StartAsync();
        await using var record = new FedRecord(other.Url);
        await record.CommitAsync(FedRecord.Seconds(0, 10));
        await MarksOf.TakeAsync(record.Store, new(new Uri("http://127.0.0.1:9"), Influxd.Database, null, () => null), default);
        var page = await record.Store.NextAsync(5000, null, default);
        await record.Store.NoteAsync(page, [], default);
        Assert.Equal(0, await record.OwedAsync());

        await using var running = new Running(record);
        await running.StartAsync();
        await Peer.UntilAsync(() => running.Book.Now.Written == 10, "it is written");

        Assert.StartsWith("4104 ", running.Log.All, StringComparison.Ordinal);
        Assert.Equal(10, other.Writes.Sum(w => w.Length));
    }

    /// <summary>A record that cannot be counted the first time.</summary>
    public class FailingOnce : DispatchProxy
    {
        private IFeedSource _inner = null!;
        private bool _hasFailed;

        public static IFeedSource On(IFeedSource inner)
        {
            var source = Create<IFeedSource, FailingOnce>();
            ((FailingOnce)(object)source)._inner = inner;
            return source;
        }

        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
        {
            if (targetMethod!.Name != nameof(IFeedSource.BacklogAsync) || _hasFailed) return targetMethod.Invoke(_inner, args);
            _hasFailed = true;
            throw new StorageException("disk I/O error", mayPass: true);
        }
    }
}
