using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>What a reading weighs. No clock in it: the figures are the same on every machine.</summary>
internal sealed class JournalSize : IBenchmark
{
    public string Name => "journal";

    public string Title => "Bytes a reading";

    public string Method =>
        "Journal: bytes of the codec for batches of so many messages from 30 probes, each a device of its own, ticks included. Baseline: the payload alone. "
        + "File: the database after an hour of 30 probes at 1 Hz, one batch a second, journal, raw readings and all roll-ups together.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var rows = new List<Row>();
        foreach (var batch in new[] { 1, 10, 100, 1000 }) rows.Add(Codec(batch, PayloadFormat.Number));
        rows.Add(Codec(3, PayloadFormat.SenmlJson));
        rows.Add(Codec(3, PayloadFormat.SenmlCbor));
        rows.Add(new Row("Database file, bytes a reading", Say.Number(await FileAsync(bench))));
        return rows;
    }

    private static Row Codec(int batch, PayloadFormat format)
    {
        var feed = new Feed(30, format, fractions: true);
        var (journal, payload, readings) = (0L, 0L, 0L);
        for (var i = 0; i < 30_000 / batch / (format != PayloadFormat.Number ? 10 : 1); i++)
        {
            var events = feed.Next(batch);
            journal += JournalCodec.Write(events).Length;
            payload += events.OfType<MessageArrived>().Sum(m => m.Payload.Length);
            readings += batch * (format != PayloadFormat.Number ? 10 : 1);
        }

        var what = format != PayloadFormat.Number ? $"Journal, {batch} SenML packs of ten a batch{(format == PayloadFormat.SenmlCbor ? " in CBOR" : "")}" : $"Journal, {batch} plain numbers a batch";
        return new Row($"{what}: bytes a reading", Say.Number((double)journal / readings), Say.Number((double)payload / readings), Say.Ratio((double)journal / payload));
    }

    private static async Task<double> FileAsync(Bench bench)
    {
        var path = Path.Combine(bench.NewFolder("hour"), "record.db");
        var seconds = bench.Of(3600, 600);
        var partition = new PartitionKey(Plants.Circuit);
        await using (var store = SqliteStore.Open(path, TimeZoneInfo.Utc))
        {
            var history = new History(store, partition, 30);
            await history.RunAsync(seconds, batchesASecond: 1);
        }

        return new FileInfo(path).Length / (30.0 * seconds);
    }
}
