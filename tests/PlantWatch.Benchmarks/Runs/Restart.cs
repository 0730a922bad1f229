using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>How long a plant is blind when the server is started again.</summary>
internal sealed class Restart : IBenchmark
{
    private const int Probes = 20;
    private const int MinutesSinceSnapshot = 15;

    public string Name => "restart";

    public string Title => "Start and restart after 24 hours";

    public string Method =>
        "20 probes at 1 Hz for 24 hours, folded and stored by the code of the loop; every message a batch of its own, which is the worst case. The newest snapshot is 15 minutes old, the oldest the server lets it become. "
        + "Start of the whole server, until it listens: with that record, beside the same with none. Restore alone: snapshot and journal after it; and the whole journal from zero, as after a new version of the fold. All three states have the same hash.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var minutes = bench.Of(24 * 60, 40);
        var folder = bench.NewFolder("day");
        var partition = new PartitionKey(Plants.Circuit);
        History history;
        var rows = new List<Row>();
        await using (var store = SqliteStore.Open(Path.Combine(folder, "data", "record.db"), TimeZoneInfo.FindSystemTimeZoneById("Europe/London")))
        {
            history = new History(store, partition, Probes);
            await history.RunAsync((minutes - MinutesSinceSnapshot) * 60, Probes);
            await history.SnapshotAsync();
            await history.RunAsync(MinutesSinceSnapshot * 60, Probes);
            bench.Say($"{history.Seq} batches are stored");
            rows.AddRange(await RestoreAsync(bench, store, partition, history));
        }

        var ours = new List<double>();
        var none = new List<double>();
        for (var i = 0; i < bench.Rounds + 1; i++)
        {
            // A stop in peace keeps a snapshot, which would make the next start an easy one: each starts on a copy.
            ours.Add(await StartAsync(Copy(folder, bench.NewFolder("copy"))));
            none.Add(await StartAsync(bench.NewFolder("fresh")));
        }

        rows.Insert(0, new Pairs([.. ours.Skip(1)], [.. none.Skip(1)]).Row("Start of the whole server, ms (less is better)"));
        return rows;
    }

    private static async Task<IEnumerable<Row>> RestoreAsync(Bench bench, SqliteStore store, PartitionKey partition, History history)
    {
        var live = PlantJson.HashOf(history.State);
        var (snapshot, replayed) = (new List<double>(), 0);
        for (var i = 0; i < bench.Rounds + 1; i++)
        {
            RestoredCircuit? restored = null;
            snapshot.Add(await Rounds.MillisecondsAsync(async () => restored = await PlantWatch.Server.Loop.Restore.FromAsync(store, partition, history.Plan, default)));
            replayed = Same(restored!, live);
        }

        RestoredCircuit? zero = null;
        var fromZero = await Rounds.MillisecondsAsync(async () => zero = await PlantWatch.Server.Loop.Restore.FromZeroAsync(store, partition, history.Plan, default));
        var all = Same(zero!, live);
        return [
            new Row($"Snapshot and {replayed:#,0} batches, ms", Say.Spread([.. snapshot.Skip(1)])),
            new Row($"From zero, {all:#,0} batches, s", Say.Number(fromZero / 1000)),
            new Row("From zero, batches/s", Say.Number(all / fromZero * 1000)),
        ];
    }

    private static int Same(RestoredCircuit restored, string live) =>
        PlantJson.HashOf(restored.State) == live ? restored.Replayed : throw new InvalidOperationException("the state after the restart is another one");

    private static async Task<double> StartAsync(string folder)
    {
        ServerUnderTest? server = null;
        var took = await Rounds.MillisecondsAsync(async () => server = await ServerUnderTest.StartAsync(folder, Plants.File(Probes)));
        await server!.DisposeAsync();
        return took;
    }

    private static string Copy(string from, string to)
    {
        Directory.CreateDirectory(Path.Combine(to, "data"));
        foreach (var file in Directory.GetFiles(Path.Combine(from, "data"))) File.Copy(file, Path.Combine(to, "data", Path.GetFileName(file)));
        return to;
    }
}
