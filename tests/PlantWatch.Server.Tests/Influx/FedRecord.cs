using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>A record in a folder of its own and a feed from it to a server.</summary>
internal sealed class FedRecord : IAsyncDisposable
{
    public static readonly Instant Noon = Batch.Noon;

    private readonly DatabaseFile _file = new();
    private readonly Dictionary<PartitionKey, long> _seqs = [];

    public FedRecord(Uri url, string? token = null, string database = Influxd.Database)
        : this(new InfluxPlace(url, database, null, () => token))
    {
    }

    public FedRecord(InfluxPlace place)
    {
        Store = SqliteStore.Open(_file.Path, TimeZoneInfo.Utc);
        Door = new(place, TimeProvider.System);
        Feeder = new(Store, Door, TimeProvider.System);
    }

    public SqliteStore Store { get; private set; }

    public InfluxDoor Door { get; }

    public SeriesFeeder Feeder { get; private set; }

    /// <summary>Readings a second apart from noon on.</summary>
    public static IEnumerable<Reading> Seconds(int from, int count, string series = "main-ph") =>
        Enumerable.Range(from, count).Select(i => Batch.Ph(Noon + TimeSpan.FromSeconds(i), 7 + (i % 16 / 16.0), series: series));

    public Task CommitAsync(params IEnumerable<Reading> readings) => CommitAsync(Batch.Main, readings);

    public async Task CommitAsync(PartitionKey partition, IEnumerable<Reading> readings) => await CommitAsync(Batch.In(partition, _seqs.GetValueOrDefault(partition) + 1, readings));

    public async Task CommitAsync(Commit commit)
    {
        await Store.CommitAsync([commit], default);
        _seqs[commit.Partition] = commit.Seq;
    }

    /// <summary>Writes until nothing is owed, and fails when the server does not take it.</summary>
    public async Task<List<FeedStep>> DrainAsync()
    {
        var steps = new List<FeedStep>();
        while (true)
        {
            var step = await Feeder.StepAsync(default);
            Assert.True(step.Answer.Taking == Taking.Taken, step.Answer.Words);
            if (step.Written == 0 && !step.IsMore) return steps;
            steps.Add(step);
        }
    }

    /// <summary>Ends and begins again on the same file, as after a kill.</summary>
    public async Task ReopenAsync()
    {
        await Store.DisposeAsync();
        Store = SqliteStore.Open(_file.Path, TimeZoneInfo.Utc);
        Feeder = new(Store, Door, TimeProvider.System);
    }

    /// <summary>Points that the server holds.</summary>
    public async Task<long> PointsAsync(string where = "")
    {
        var tables = await Door.AskAsync($"SELECT count(value) FROM {LineProtocol.Measurement} {where}", default);
        return tables is [var table] ? (long)table.Rows[0][1]!.Value : 0;
    }

    public async Task<long> OwedAsync() => (await Store.BacklogAsync(default)).Readings;

    public async ValueTask DisposeAsync()
    {
        Door.Dispose();
        await Store.DisposeAsync();
        _file.Remove();
    }
}
