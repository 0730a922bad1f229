using System.Diagnostics;
using Microsoft.Data.Sqlite;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>A year at one reading a second, drawn 1200 pixels wide.</summary>
internal sealed class YearQuery : IBenchmark
{
    private const int Pixels = 1200;
    private static readonly TimeSpan MostBuilding = TimeSpan.FromSeconds(150);

    public string Name => "year";

    public string Title => "A year at 1 Hz, 1200 pixels";

    public string Method =>
        "One series, a reading a second, stored by ordinary commits of a day each. Ours: `SeriesAsync`, which chooses the tier. Baseline: the same buckets (count, least, mean, greatest) by SQL from the raw readings. "
        + "Building stops after 150 s on a slow disk; how many days were made is said. The raw scan was warm: its file lay in the page cache as far as memory allowed.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var path = Path.Combine(bench.NewFolder("year"), "record.db");
        var partition = new PartitionKey(Plants.Circuit);
        await using var store = SqliteStore.Open(path, TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));
        var (days, buildRate) = await BuildAsync(store, partition, bench.Of(365, 10));
        bench.Say($"{days} days are built");
        var (from, to) = (Batches.Start, Batches.Start + TimeSpan.FromDays(days));
        var times = new List<double>();
        SeriesAnswer? answer = null;
        async Task<double> Ours()
        {
            var took = await Rounds.MillisecondsAsync(async () => answer = await store.SeriesAsync(partition, new SeriesQuery("one", from, to, Pixels, TimeSpan.FromSeconds(1)), default));
            times.Add(took);
            return 1000 / took;
        }

        using var raw = Reader(path, from.UnixMicroseconds, to.UnixMicroseconds);
        var pairs = await Rounds.InTurnAsync(bench.Quick ? 2 : 3, Ours, () => Task.FromResult(Scan(raw)));
        for (var i = 0; i < 20; i++) await Ours();
        var milliseconds = new Pairs([.. pairs.Ours.Select(r => 1000 / r)], [.. pairs.Baseline.Select(r => 1000 / r)]);
        return [
            new Row($"{days} days, {days * 86400L:#,0} readings, ms", $"{Say.Spread(times)} from the {answer!.Tier} tier, {answer.Points.Count} points",
                $"{Say.Spread(milliseconds.Baseline)}", $"{Say.Ratio(pairs.Ratio)} times faster", "≤ 20 ms, ≥ 300 times"),
            new Row("Building it, readings/s", Say.Number(buildRate)),
            new Row("File, bytes a reading", Say.Number(new FileInfo(path).Length / (days * 86400.0))),
        ];
    }

    private static async Task<(int Days, double Rate)> BuildAsync(SqliteStore store, PartitionKey partition, int most)
    {
        // The journal of a year is measured elsewhere: one byte a reading stands for it here.
        var batches = new Batches(partition, bytesAReading: 1);
        var start = Stopwatch.GetTimestamp();
        var days = 0;
        while (days < most && Stopwatch.GetElapsedTime(start) < MostBuilding)
        {
            await store.CommitAsync([batches.OfOneSeries(86400)], default);
            days++;
        }

        return (days, days * 86400.0 / Stopwatch.GetElapsedTime(start).TotalSeconds);
    }

    private static SqliteCommand Reader(string path, long from, long to)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = SqliteOpenMode.ReadOnly, Pooling = false }.ToString());
        connection.Open();
        var command = connection.CreateCommand();
        command.CommandText = """
            SELECT (t - $from) * $pixels / ($to - $from) AS pixel, count(*), min(value), avg(value), max(value) FROM reading
            WHERE series = (SELECT id FROM series WHERE key = 'one') AND t >= $from AND t < $to GROUP BY pixel
            """;
        command.CommandTimeout = 300;
        command.Parameters.AddWithValue("$from", from);
        command.Parameters.AddWithValue("$to", to);
        command.Parameters.AddWithValue("$pixels", Pixels);
        return command;
    }

    private static double Scan(SqliteCommand command)
    {
        var pixels = 0;
        var rate = Rounds.Rate(1, () =>
        {
            using var rows = command.ExecuteReader();
            while (rows.Read()) pixels++;
        });
        return pixels == Pixels ? rate : throw new InvalidOperationException($"the raw scan gave {pixels} pixels");
    }
}
