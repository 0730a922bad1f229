using PlantWatch.Campaign;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Storage;
using PlantWatch.Storage;
using PlantWatch.Storage.Influx;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Influx;

/// <summary>The whole server, killed (SIGKILL) at the one moment that matters: InfluxDB has taken a page, and nobody has noted it.</summary>
public sealed class KilledFeedTests
{
    private const int Series = 3, Each = 9000;

    [PeerFact("influxd")]
    public async Task Killed_between_write_and_note_it_loses_nothing_and_doubles_nothing()
    {
        await using var influxd = await Influxd.StartAsync();
        await using var gate = await Gate.BeforeAsync(influxd.Url);
        var folder = Directory.CreateTempSubdirectory("plantwatch-feed-").FullName;
        await using var server = new ServerProcess(folder, BrokerMode.Embedded, Peer.FreePort())
        {
            Further = new Dictionary<string, string> { ["PlantWatch__Influx__Url"] = gate.Url.ToString() },
        };
        await File.WriteAllTextAsync(server.PlantFile, new NumberPlant(2).Yaml());
        await FillAsync(Path.Combine(server.Data, "record.db"));
        var kills = 0;
        gate.AfterWrite = async number =>
        {
            if (number > 3) return;
            kills++;
            await server.KillAsync();
        };

        for (var life = 1; life <= 4; life++)
        {
            server.Start();
            Assert.True(await Programs.ComesAboutAsync(async () => server.HasExited || await CountAsync(influxd) == Series * Each, TimeSpan.FromSeconds(60)), string.Join('\n', server.Said));
        }

        Assert.Equal((3, false), (kills, server.HasExited));
        Assert.Equal(Series * Each, await CountAsync(influxd));
        server.AskToEnd();
        Assert.True(await server.EndsAsync(TimeSpan.FromSeconds(30)));
        await using (var store = SqliteStore.Open(Path.Combine(server.Data, "record.db"), TimeZoneInfo.Utc))
        {
            Assert.Equal(default, await store.BacklogAsync(default));
        }

        // Nothing was doubled: more writes than pages, and as many points as readings, with the same sum.
        Assert.True(gate.Writes >= 3 + (Series * Each / SeriesFeeder.MostLines), $"{gate.Writes} writes");
        Assert.Contains($",{Series * Enumerable.Range(0, Each).Sum(i => 7 + (i % 16 / 16.0))}]", await influxd.AskAsync("SELECT sum(value) FROM reading WHERE circuit = 'former'"), StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    // Of a circuit that the plant no longer has: nothing is restored for it, and its series are fed like all others.
    private static async Task FillAsync(string path)
    {
        await using var store = SqliteStore.Open(path, TimeZoneInfo.Utc);
        for (var i = 0; i < Series; i++) await store.CommitAsync([Batch.In(new PartitionKey("former"), i + 1, FedRecord.Seconds(0, Each, $"p{i}"))], default);
    }

    private static async Task<long> CountAsync(Influxd influxd)
    {
        using var door = new InfluxDoor(new(influxd.Url, Influxd.Database, null, () => null), TimeProvider.System);
        return await door.AskAsync("SELECT count(value) FROM reading WHERE circuit = 'former'", default) is [var table] ? (long)table.Rows[0][1]!.Value : 0;
    }
}
