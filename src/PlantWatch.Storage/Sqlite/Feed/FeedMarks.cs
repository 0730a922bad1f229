namespace PlantWatch.Storage.Sqlite;

/// <summary>Marks minutes that got a reading behind what may have been written elsewhere. A series that nobody feeds marks nothing.</summary>
internal sealed class FeedMarks(Session session)
{
    // Asked of the table each time: the feed takes a series up at any moment, and may be another process.
    private readonly Statement _mark = session.Prepare(
        "INSERT INTO feed_minute (series, t) SELECT ?1, ?2 WHERE EXISTS (SELECT 1 FROM feed_series WHERE series = ?1) ON CONFLICT DO UPDATE SET times = times + 1");

    public void Write(long series, IReadOnlyCollection<long> minutes)
    {
        foreach (var minute in minutes) _mark.Bind(1, series).Bind(2, minute).Run();
    }
}
