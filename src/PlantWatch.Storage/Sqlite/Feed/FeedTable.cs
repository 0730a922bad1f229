namespace PlantWatch.Storage.Sqlite;

/// <summary>Writes what the feed notes. Inside the transaction that the caller holds.</summary>
internal static class FeedTable
{
    /// <summary>Mark of a series of which nothing was written.</summary>
    public const long Nothing = long.MinValue;

    /// <summary>Takes up series that are new: from here on their late readings are marked. Must be down before their first reading is read.</summary>
    public static int TakeUp(Session session) => session.Prepare(
        $"""
        INSERT INTO feed_series (series, upto, circuit, probe)
          SELECT s.id, {Nothing}, p.key, s.key FROM series s JOIN partition p ON p.id = s.partition WHERE NOT EXISTS (SELECT 1 FROM feed_series f WHERE f.series = s.id)
        """).Run();

    public static int Note(Session session, FeedPage page, IReadOnlyList<ParkedLines> parked)
    {
        // A mark that was set back meanwhile stays where it was set.
        var move = session.Prepare("UPDATE feed_series SET upto = ?3, circuit = ?4, probe = ?5 WHERE series = ?1 AND upto = ?2");
        var done = session.Prepare("DELETE FROM feed_minute WHERE series = ?1 AND t = ?2 AND times = ?3");
        foreach (var piece in page.Pieces)
        {
            if (piece.Minute is { } minute) done.Bind(1, piece.Series).Bind(2, minute).Bind(3, piece.Times).Run();
            else move.Bind(1, piece.Series).Bind(2, piece.Was).Bind(3, piece.Upto).Bind(4, piece.Circuit).Bind(5, piece.Probe).Run();
        }

        foreach (var lines in parked) Park(session, lines);
        return page.Readings;
    }

    public static int WriteAgain(Session session, long series, long from, long to) => session.Prepare(
        "INSERT INTO feed_minute (series, t) SELECT series, t FROM rollup_minute WHERE series = ?1 AND t >= ?2 AND t < ?3 ON CONFLICT DO UPDATE SET times = times + 1")
        .Bind(1, series).Bind(2, from).Bind(3, to).Run();

    // Marked minutes stay: a late reading may have come into a page that is on its way now, and is then in no other.
    public static int WriteAllAgain(Session session)
    {
        session.Prepare("DELETE FROM feed_parked").Run();
        return session.Prepare($"UPDATE feed_series SET upto = {Nothing}").Run();
    }

    public static int Keep(Session session, string name, long? value) => value is { } number
        ? session.Prepare("INSERT OR REPLACE INTO feed_note (name, value) VALUES (?1, ?2)").Bind(1, name).Bind(2, number).Run()
        : session.Prepare("DELETE FROM feed_note WHERE name = ?1").Bind(1, name).Run();

    private static void Park(Session session, ParkedLines lines) => session.Prepare(
        """
        INSERT INTO feed_parked (series, words, first, last, lines, sample, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)
          ON CONFLICT DO UPDATE SET first = min(first, excluded.first), last = max(last, excluded.last), lines = lines + excluded.lines, sample = excluded.sample, at = excluded.at
        """)
        .Bind(1, lines.Series).Bind(2, lines.Words).Bind(3, lines.First.UnixMicroseconds).Bind(4, lines.Last.UnixMicroseconds).Bind(5, lines.Lines).Bind(6, lines.Sample)
        .Bind(7, lines.At.UnixMicroseconds).Run();
}
