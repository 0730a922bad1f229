using System.Collections.Immutable;
using InfluxDB.Client;
using InfluxDB.Client.Api.Domain;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>The feed of InfluxDB: how much slower than the client it writes with, and what it costs the record.</summary>
internal sealed class SeriesFeed : IBenchmark
{
    private const int Series = 30;
    private const int RowsACommit = 1000;

    public string Name => "feed";

    public string Title => "InfluxDB, draining what is owed";

    public string Method =>
        "A real influxd 1.6 on loopback. Ours: `SeriesFeeder` from a record with everything owed until nothing is, read from SQLite, made lines, written, answered, noted. "
        + "Baseline: `WriteApiAsync.WriteRecordsAsync` of the same lines, made before, 5000 at a time, awaited, into a database of its own. From the second round on both write over points that are there. "
        + "Last row: the SQLite writer with 5 % late readings and everything owed to a feed that does not come, beside the same without a feed; the flush is the same in both, so that processor time is what differs.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        await using var influxd = await Influxd.StartAsync(bench.NewFolder("influxd"));
        await influxd.MakeAsync("ours");
        await influxd.MakeAsync("bare");
        return [await DrainAsync(bench, influxd), await WriterAsync(bench)];
    }

    private static async Task<Row> DrainAsync(Bench bench, Influxd influxd)
    {
        var total = bench.Of(400_000, 60_000);
        await using var store = SqliteStore.Open(Path.Combine(bench.NewFolder("drain"), "record.db"), TimeZoneInfo.Utc);
        var (rows, batches) = (new Rows(), new Batches(new PartitionKey(Plants.Circuit)));
        for (var i = 0; i < total; i += RowsACommit) await store.CommitAsync([batches.Of(rows.Next(RowsACommit, late: false))], default);
        var lines = await LinesAsync(store);
        using var door = new InfluxDoor(new(influxd.Url, "ours", null, () => null), TimeProvider.System);
        using var old = new HttpClient(new OldPath());
        using var client = new InfluxDBClient(new InfluxDBClientOptions(influxd.Url.ToString().TrimEnd('/')) { Bucket = "bare", Org = "-", HttpClient = old });
        var writer = client.GetWriteApiAsync();
        var pairs = await Rounds.InTurnAsync(
            bench.Rounds,
            async () =>
            {
                await store.WriteAllAgainAsync(default);
                var feeder = new SeriesFeeder(store, door, TimeProvider.System);
                return total / await Rounds.MillisecondsAsync(() => EmptyAsync(feeder)) * 1000;
            },
            async () => total / await Rounds.MillisecondsAsync(async () =>
            {
                foreach (var some in lines) await writer.WriteRecordsAsync(some, WritePrecision.Us);
            }) * 1000);
        bench.Say("drained");
        return pairs.Row($"{Series} series, readings/s", "0.80");
    }

    private static async Task<Row> WriterAsync(Bench bench)
    {
        var total = bench.Of(200_000, 20_000);
        await using var fed = SqliteStore.Open(Path.Combine(bench.NewFolder("fed"), "record.db"), TimeZoneInfo.Utc);
        await using var alone = SqliteStore.Open(Path.Combine(bench.NewFolder("alone"), "record.db"), TimeZoneInfo.Utc);
        var (ours, theirs) = (new Batches(new PartitionKey(Plants.Circuit)), new Batches(new PartitionKey(Plants.Circuit)));
        var (mine, other) = (new Rows(), new Rows());
        await fed.CommitAsync([ours.Of(mine.Next(Series, late: false))], default);
        await alone.CommitAsync([theirs.Of(other.Next(Series, late: false))], default);
        await fed.TakeUpAsync(default);
        var pairs = Rounds.InTurn(bench.Rounds, () => Commit(fed, ours, mine, total), () => Commit(alone, theirs, other, total));
        return pairs.Row("SQLite writer with a feed behind it, readings a second of processor time", "0.90");
    }

    private static double Commit(SqliteStore store, Batches batches, Rows rows, int total)
    {
        List<Commit> commits = [.. Enumerable.Range(0, total / RowsACommit).Select(_ => batches.Of(rows.Next(RowsACommit, late: true)))];
        // The store works on the caller's thread: each of these is done when it returns.
        return Rounds.CpuRate(total, () => commits.ForEach(commit => store.CommitAsync([commit], default).AsTask().GetAwaiter().GetResult()));
    }

    private static async Task EmptyAsync(SeriesFeeder feeder)
    {
        while (await feeder.StepAsync(default) is var step && (step.Written > 0 || step.IsMore))
            if (step.Answer.Taking != Taking.Taken) throw new InvalidOperationException(step.Answer.Words);
    }

    // The same lines in the same pages as the feed makes them.
    private static async Task<List<string[]>> LinesAsync(SqliteStore store)
    {
        var pages = new List<string[]>();
        while (await store.NextAsync(SeriesFeeder.MostLines, null, default) is { Pieces.Count: > 0 } page)
        {
            pages.Add([.. page.Pieces.SelectMany(piece => piece.Readings.Select(reading => LineProtocol.Line(LineProtocol.Prefix(piece.Circuit, piece.Probe), reading)))]);
            await store.NoteAsync(page, [], default);
        }

        return pages;
    }

    /// <summary>Readings of the series in turn, one in twenty late where that is wanted.</summary>
    private sealed class Rows
    {
        private readonly string[] _keys = [.. Enumerable.Range(0, Series).Select(Plants.Probe)];
        private long _count;

        public ImmutableArray<Reading> Next(int howMany, bool late)
        {
            var rows = ImmutableArray.CreateBuilder<Reading>(howMany);
            for (var i = 0; i < howMany; i++, _count++) rows.Add(Batches.Reading(_keys[_count % Series], _count / Series, late && ((_count * 13) + (_count / Series)) % 20 == 0));
            return rows.MoveToImmutable();
        }
    }

    // The server is an old one, and the client knows only the new path.
    private sealed class OldPath() : DelegatingHandler(new SocketsHttpHandler())
    {
        protected override Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            request.RequestUri = new Uri(request.RequestUri!.GetLeftPart(UriPartial.Authority) + "/write?db=bare&precision=u");
            return base.SendAsync(request, cancellationToken);
        }
    }
}
