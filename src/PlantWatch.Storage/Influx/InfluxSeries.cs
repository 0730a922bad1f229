using System.Runtime.CompilerServices;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Storage.Influx;

/// <summary>The series as InfluxDB holds them, by InfluxQL. It knows no tiers: buckets are computed by <c>GROUP BY time</c> when they are asked for, the site's days from quarters of an hour.</summary>
/// <remarks>What it costs follows from that: a decade of days is a decade of quarters. Long ranges are asked a page at a time, so memory is bounded.</remarks>
public sealed class InfluxSeries(InfluxDoor door, TimeZoneInfo siteZone) : ISeriesStore
{
    /// <inheritdoc/>
    public async ValueTask<SeriesAnswer> SeriesAsync(PartitionKey partition, SeriesQuery query, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(query);
        query.ThrowIfImpossible();
        var (from, to) = (query.From.UnixMicroseconds, query.To.UnixMicroseconds);
        var tier = Tiers.For(to - from, query.Width);
        var line = new LineBuilder(query, tier);
        var buckets = tier switch
        {
            Tier.Raw => RawBucketsAsync(partition, query.Series, from, to, cancellation),
            Tier.Day => DaysAsync(partition, query.Series, from, to, cancellation),
            _ => BucketsAsync(partition, query.Series, Tiers.Floor(from, Tiers.SpanOf(tier)), Ceiling(to, Tiers.SpanOf(tier)), Tiers.SpanOf(tier), cancellation),
        };
        await foreach (var bucket in buckets.ConfigureAwait(false)) line.Add(bucket);
        return new(query.Series, tier, line.Build());
    }

    /// <inheritdoc/>
    public async ValueTask<IReadOnlyList<StoredReading>> RawAsync(PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation)
    {
        var found = new List<StoredReading>();
        await foreach (var reading in ReadingsAsync(partition, series, from.UnixMicroseconds, to.UnixMicroseconds, Math.Max(0, limit), cancellation).ConfigureAwait(false)) found.Add(reading);
        return found;
    }

    /// <inheritdoc/>
    /// <remarks>What InfluxDB keeps is its own affair, and it does not tell.</remarks>
    public ValueTask<Instant> RawFromAsync(PartitionKey partition, string? series, CancellationToken cancellation) => ValueTask.FromResult(Instant.Never);

    /// <inheritdoc/>
    public async ValueTask<ProbeWindow> WindowAsync(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation)
    {
        var sums = default(WindowSums);
        await foreach (var reading in ReadingsAsync(partition, series, from.UnixMicroseconds, to.UnixMicroseconds, int.MaxValue, cancellation).ConfigureAwait(false))
            sums.Add(reading.MeasuredAt.UnixMicroseconds, reading.Raw, reading.Quality);
        return sums.Close(series, from, to);
    }

    private async IAsyncEnumerable<StoredReading> ReadingsAsync(PartitionKey partition, string series, long from, long to, int limit, [EnumeratorCancellation] CancellationToken cancellation)
    {
        while (limit > 0 && from < to)
        {
            var most = Math.Min(limit, InfluxQl.PageOfRaw);
            var rows = RowsOf(await door.AskAsync(InfluxQl.Raw(partition, series, from, to, most), cancellation).ConfigureAwait(false), 0);
            foreach (var row in rows) yield return ReadingOf(row);
            if (rows.Count < most) yield break;
            (from, limit) = (InfluxTable.TimeOf(rows[^1]) + 1, limit - rows.Count);
        }
    }

    private async IAsyncEnumerable<Bucket> RawBucketsAsync(PartitionKey partition, string series, long from, long to, [EnumeratorCancellation] CancellationToken cancellation)
    {
        await foreach (var reading in ReadingsAsync(partition, series, from, to, int.MaxValue, cancellation).ConfigureAwait(false))
            yield return Bucket.Of(reading.MeasuredAt.UnixMicroseconds, reading.Raw, reading.Quality.IsGood());
    }

    // From local midnight to the end of the day that holds the end, as the tier of days has it.
    private async IAsyncEnumerable<Bucket> DaysAsync(PartitionKey partition, string series, long from, long to, [EnumeratorCancellation] CancellationToken cancellation)
    {
        var calendar = new SiteCalendar(siteZone);
        var day = default(Bucket);
        await foreach (var quarter in BucketsAsync(partition, series, calendar.DayOf(from).Start, calendar.DayOf(to - 1).End, Tiers.Quarter, cancellation).ConfigureAwait(false))
        {
            var start = calendar.DayOf(quarter.Start).Start;
            if (day.Count > 0 && day.Start != start)
            {
                yield return day;
                day = default;
            }

            day.Append(quarter with { Start = start });
        }

        if (day.Count > 0) yield return day;
    }

    private async IAsyncEnumerable<Bucket> BucketsAsync(PartitionKey partition, string series, long from, long to, long span, [EnumeratorCancellation] CancellationToken cancellation)
    {
        for (var start = from; start < to; start += span * InfluxQl.PageOfBuckets)
        {
            var end = Math.Min(to, start + (span * InfluxQl.PageOfBuckets));
            var tables = await door.AskAsync(InfluxQl.Buckets(partition, series, start, end, span), cancellation).ConfigureAwait(false);
            var good = RowsOf(tables, 1).ToDictionary(InfluxTable.TimeOf);
            foreach (var row in RowsOf(tables, 0)) yield return BucketOf(row, good.GetValueOrDefault(InfluxTable.TimeOf(row)));
        }
    }

    private static Bucket BucketOf(double?[] all, double?[]? good) => new()
    {
        Start = InfluxTable.TimeOf(all), Count = (long)all[1]!.Value, Good = (long)(good?[1] ?? 0), Last = all[5]!.Value,
        Sum = (good ?? all)[2]!.Value, Min = (good ?? all)[3]!.Value, Max = (good ?? all)[4]!.Value,
    };

    private static StoredReading ReadingOf(double?[] row)
    {
        var t = InfluxTable.TimeOf(row);
        return new(Instant.FromUnixMicroseconds(t), Instant.FromUnixMicroseconds(t + (long)(row[3] ?? 0)), row[1]!.Value, (Quality)(byte)(row[2] ?? 0));
    }

    private static IReadOnlyList<double?[]> RowsOf(IReadOnlyList<InfluxTable> tables, int statement) => tables.FirstOrDefault(t => t.Statement == statement)?.Rows ?? [];

    private static long Ceiling(long t, long span) => Tiers.Floor(t - 1, span) + span;
}
