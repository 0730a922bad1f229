using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Reads series. Each answer comes from one statement, so it shows one moment of the database.</summary>
internal sealed class SeriesReader(Session session, TimeZoneInfo zone)
{
    private const string SeriesId = "(SELECT s.id FROM series s JOIN partition p ON p.id = s.partition WHERE p.key = ?1 AND s.key = ?2)";

    public SeriesAnswer Line(PartitionKey partition, SeriesQuery query, CancellationToken cancellation)
    {
        var (from, to) = (query.From.UnixMicroseconds, query.To.UnixMicroseconds);
        var tier = Standing(partition, query.Series, from, Tiers.For(to - from, query.Width));
        var line = new LineBuilder(query, tier);
        var rows = Select(tier == Tier.Raw ? "t, value, quality" : "t, count, good, sum, min, max, last", TableOf(tier), partition, query.Series);
        rows.Bind(3, StartOf(tier, from)).Bind(4, to).Bind(5, long.MaxValue);
        while (Next(rows, cancellation)) line.Add(tier == Tier.Raw ? ReadingOf(rows) : RollUpTable.BucketOf(rows));
        return new SeriesAnswer(query.Series, tier, line.Build());
    }

    public IReadOnlyList<StoredReading> Raw(PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation)
    {
        var found = new List<StoredReading>();
        var rows = Select("t, value, quality, lag", "reading", partition, series);
        rows.Bind(3, from.UnixMicroseconds).Bind(4, to.UnixMicroseconds).Bind(5, limit);
        while (Next(rows, cancellation))
            found.Add(new StoredReading(rows.Instant(0), Instant.FromUnixMicroseconds(rows.Int64(0) + rows.Int64(3)), rows.Double(1), (Quality)rows.Int64(2)));
        return found;
    }

    public ProbeWindow Window(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation)
    {
        var sums = default(WindowSums);
        var rows = Select("t, value, quality", "reading", partition, series);
        rows.Bind(3, from.UnixMicroseconds).Bind(4, to.UnixMicroseconds).Bind(5, long.MaxValue);
        while (Next(rows, cancellation)) sums.Add(rows.Int64(0), rows.Double(1), (Quality)rows.Int64(2));
        return sums.Close(series, from, to);
    }

    /// <summary>The time before which raw readings were let go, of one series or the latest of all; never when none was.</summary>
    public Instant RawFrom(PartitionKey partition, string? series)
    {
        var found = session.Prepare("SELECT max(s.raw_from) FROM series s JOIN partition p ON p.id = s.partition WHERE p.key = ?1 AND (?2 = '' OR s.key = ?2)")
            .Bind(1, partition.Value).Bind(2, series ?? "").Scalar();
        return found is > 0 ? Instant.FromUnixMicroseconds(found.Value) : Instant.Never;
    }

    // Where a tier was let go, the next coarser one answers for the whole range.
    private Tier Standing(PartitionKey partition, string series, long from, Tier tier)
    {
        if (tier > Tier.Minute) return tier;
        var row = session.Prepare($"SELECT raw_from, minute_from FROM series WHERE id = {SeriesId}").Bind(1, partition.Value).Bind(2, series);
        if (!row.Next()) return tier;
        var (raw, minute) = (row.Int64(0), row.Int64(1));
        row.Reset();
        return from < minute ? Tier.QuarterHour : tier == Tier.Raw && from < raw ? Tier.Minute : tier;
    }

    private Statement Select(string columns, string table, PartitionKey partition, string series) => session
        .Prepare($"SELECT {columns} FROM {table} WHERE series = {SeriesId} AND t >= ?3 AND t < ?4 ORDER BY t LIMIT ?5")
        .Bind(1, partition.Value).Bind(2, series);

    private static bool Next(Statement rows, CancellationToken cancellation)
    {
        if (!cancellation.IsCancellationRequested) return rows.Next();
        rows.Reset();
        throw new OperationCanceledException(cancellation);
    }

    private static Bucket ReadingOf(Statement row) => Bucket.Of(row.Int64(0), row.Double(1), ((Quality)row.Int64(2)).IsGood());

    /// <summary>Start of the bucket that holds the start of the range: what it holds would otherwise be missing at the left edge.</summary>
    private long StartOf(Tier tier, long from) => tier switch
    {
        Tier.Raw => from,
        Tier.Day => new SiteCalendar(zone).DayOf(from).Start,
        _ => Tiers.Floor(from, Tiers.SpanOf(tier)),
    };

    private static string TableOf(Tier tier) => tier switch
    {
        Tier.Minute => "rollup_minute",
        Tier.QuarterHour => "rollup_quarter",
        Tier.Hour => "rollup_hour",
        Tier.Day => "rollup_day",
        _ => "reading",
    };
}
