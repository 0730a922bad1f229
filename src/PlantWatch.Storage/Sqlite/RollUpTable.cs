namespace PlantWatch.Storage.Sqlite;

/// <summary>One tier of roll-ups. Its name is one of ours, never text from outside.</summary>
internal sealed class RollUpTable
{
    private readonly Statement _add;
    private readonly Statement _put;
    private readonly Statement _read;

    public RollUpTable(Session session, string name)
    {
        const string Columns = "(series, t, count, good, sum, min, max, last) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)";
        // The same joining as Bucket.Append, where the good outrank the rest.
        _add = session.Prepare(
            $"""
            INSERT INTO {name} {Columns} ON CONFLICT DO UPDATE SET
              sum = CASE WHEN (good > 0) = (excluded.good > 0) THEN sum + excluded.sum WHEN good > 0 THEN sum ELSE excluded.sum END,
              min = CASE WHEN (good > 0) = (excluded.good > 0) THEN min(min, excluded.min) WHEN good > 0 THEN min ELSE excluded.min END,
              max = CASE WHEN (good > 0) = (excluded.good > 0) THEN max(max, excluded.max) WHEN good > 0 THEN max ELSE excluded.max END,
              count = count + excluded.count, good = good + excluded.good, last = excluded.last
            """);
        _put = session.Prepare($"INSERT OR REPLACE INTO {name} {Columns}");
        _read = session.Prepare(Select(name));
    }

    /// <summary>Reads the buckets of a series between two starts, in time order: see <see cref="BucketOf"/>.</summary>
    public static string Select(string name) =>
        $"SELECT t, count, good, sum, min, max, last FROM {name} WHERE series = ?1 AND t >= ?2 AND t < ?3 ORDER BY t";

    /// <summary>The bucket in the row at hand.</summary>
    public static Bucket BucketOf(Statement row) => new()
    {
        Start = row.Int64(0), Count = row.Int64(1), Good = row.Int64(2), Sum = row.Double(3), Min = row.Double(4), Max = row.Double(5), Last = row.Double(6),
    };

    /// <summary>Joins later readings to a bucket, or makes it.</summary>
    public void Add(long series, in Bucket bucket) => Run(_add, series, bucket);

    /// <summary>Sets a bucket that was computed anew.</summary>
    public void Put(long series, in Bucket bucket) => Run(_put, series, bucket);

    /// <summary>All buckets of a span joined into one.</summary>
    public Bucket Sum(long series, long from, long to)
    {
        var sum = default(Bucket);
        _read.Bind(1, series).Bind(2, from).Bind(3, to);
        while (_read.Next()) sum.Append(BucketOf(_read));
        sum.Start = from;
        return sum;
    }

    private static void Run(Statement statement, long series, in Bucket bucket) => statement
        .Bind(1, series).Bind(2, bucket.Start).Bind(3, bucket.Count).Bind(4, bucket.Good)
        .Bind(5, bucket.Sum).Bind(6, bucket.Min).Bind(7, bucket.Max).Bind(8, bucket.Last).Run();
}
