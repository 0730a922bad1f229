using System.Runtime.CompilerServices;
using Microsoft.Data.Sqlite;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Api;
using PlantWatch.Server.Backup;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Backup;

/// <summary>A backup of a server that goes on receiving: the record as it stood when the copy began, whole.</summary>
public sealed class BackupUnderLoadTests
{
    private static readonly PartitionKey Hall = new("hall");

    [PeerFact("mosquitto_pub")]
    public async Task It_holds_what_stood_when_it_began_and_a_server_goes_on_from_it()
    {
        var server = await WholeServer.StartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Range(0, 500).Select(i => FormattableString.Invariant($"{7.2 + (i % 40 / 100.0)}")));
        await server.PutAsync($"/api/v1/checks/{Guid.CreateVersion7()}", WholeServer.Check(WholeServer.Now, new TestResult(Measurand.Ph, 7.3, TestMethod.Photometer)));
        server = await server.RestartAsync();
        await server.PublishLinesAsync("hall/ph", Enumerable.Repeat("7.4", 50));
        var data = Path.Combine(server.Folder, "data");
        var before = await server.Record.LastSeqAsync(Hall, default);

        // Between two steps of the copy a device publishes, and its broker acknowledges what is committed.
        var published = 0;
        void Publish(long done, long whole)
        {
            server.PublishAsync("hall/ph", "7.31").GetAwaiter().GetResult();
            published++;
        }

        var (folder, manifest) = await Task.Run(() => BackupMaker.Make(data, Path.Combine(server.Folder, "backups"), WholeServer.Now, Publish, default, pagesAStep: 4));

        Assert.True(published > 3, $"{published} steps");
        var last = manifest.Partitions.Single(p => p.Partition == "hall").LastSeq;
        Assert.InRange(last, before, await server.Record.LastSeqAsync(Hall, default) - published);
        Assert.Equal(published, DifferenceOfReadings(data, folder));
        var said = new List<string>();
        new BackupCheck(said.Add).Prove(folder);
        var hash = await HashAtAsync(server, last);
        Assert.Contains($"hall: state {hash}, the same from the snapshot and from zero", said);

        var elsewhere = Path.Combine(server.Folder, "restored");
        var restored = BackupRestore.Into(Path.Combine(elsewhere, "data"), folder, new BackupCheck(_ => { }), _ => { });
        Assert.Equivalent(manifest, restored);
        Assert.Equal(hash, await RestoredHashAsync(Path.Combine(elsewhere, "data", "record.db")));
        var second = await WholeServer.StartAsync(elsewhere);
        Assert.Equal(manifest.Readings, (await second.SumsAsync()).Stored);
        await second.PublishAsync("hall/ph", "7.5");
        Assert.Equal(7.5, (await second.GetAsync<CircuitView>("/api/v1/circuits/hall")).Probes.Single(p => p.Id == "ph").Value);
        await second.StopAsync();
        await server.DisposeAsync();
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_nightly_one_shows_its_age_and_one_that_fails_limps_in_the_health()
    {
        await using (var server = await WholeServer.StartAsync(set: o => o.Backup.Folder = Path.Combine(o.Data, "..", "backups")))
            await UntilAsync(async () => (await server.Http.GetStringAsync("/metrics")).Contains("plantwatch_backup_age", StringComparison.Ordinal), "the age is shown");
        await using (var server = await WholeServer.StartAsync(set: o => o.Backup.Folder = o.PlantFile))
        {
            await UntilAsync(async () => (await server.Http.GetStringAsync("/health/ready")).Contains("no backup could be made", StringComparison.Ordinal), "the failure is said");
            Assert.Contains("degraded", await server.Http.GetStringAsync("/health/ready"), StringComparison.Ordinal);
        }
    }

    // All that is in the copy is in the live record; all of the live journal up to the copy's last batch is in the copy. Readings that only the live record holds are counted.
    private static long DifferenceOfReadings(string data, string folder)
    {
        using var live = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(data, "record.db"), Pooling = false }.ToString());
        live.Open();
        Ask(live, $"ATTACH '{Path.Combine(folder, "record.db")}' AS copy");
        foreach (var table in (string[])["series", "journal", "reading", "entry", "refusal", "snapshot"])
            Assert.Equal((table, 0L), (table, Ask(live, $"SELECT count(*) FROM (SELECT * FROM copy.{table} EXCEPT SELECT * FROM main.{table})")));
        Assert.Equal(0, Ask(live, "SELECT count(*) FROM (SELECT * FROM main.journal WHERE seq <= (SELECT last_seq FROM copy.partition c WHERE c.id = main.journal.partition) EXCEPT SELECT * FROM copy.journal)"));
        return Ask(live, "SELECT (SELECT count(*) FROM main.reading) - (SELECT count(*) FROM copy.reading)");
    }

    private static async Task<string> HashAtAsync(WholeServer server, long seq) =>
        PlantJson.HashOf((await Restore.FromZeroAsync(new JournalUpTo(server.Record, seq), Hall, server.Host.Find("hall")!.State.Plan, default)).State);

    private static async Task<string> RestoredHashAsync(string record)
    {
        using var archive = SqliteArchive.Open(record);
        return PlantJson.HashOf((await Restore.FromAsync(archive, Hall, new Core.Plans.CircuitPlan { Id = "hall", Name = "Hall", TimeZone = "UTC" }, default)).State);
    }

    private static long Ask(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar() as long? ?? 0;
    }

    private static async Task UntilAsync(Func<Task<bool>> holds, string sentence)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (!await holds())
        {
            if (patience.IsCancellationRequested) Assert.Fail($"never came: {sentence}");
            await Task.Delay(50);
        }
    }

    private sealed class JournalUpTo(IJournalSource source, long last) : IJournalSource
    {
        public async IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, [EnumeratorCancellation] CancellationToken cancellation)
        {
            await foreach (var row in source.JournalAsync(partition, afterSeq, cancellation))
            {
                if (row.Seq > last) yield break;
                yield return row;
            }
        }

        public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) => ValueTask.FromResult<Snapshot?>(null);

        public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => source.BackFillsAsync(partition, cancellation);
    }
}
