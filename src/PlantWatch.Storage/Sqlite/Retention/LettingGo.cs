using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Finds what is to go next and takes it away by whole minutes, or whole quarters of an hour, so that a coarser bucket is never made from a torn finer one.</summary>
internal static class LettingGo
{
    /// <summary>A series of which something is to go.</summary>
    /// <param name="Id">Its id.</param>
    /// <param name="Tier">Raw or Minute.</param>
    /// <param name="Until">All before it goes.</param>
    public readonly record struct Piece(long Id, Tier Tier, long Until);

    /// <summary>The next piece, from a series on; null when none is left.</summary>
    public static Piece? Find(Session session, Instant rawBefore, Instant minutesBefore, long from, int most)
    {
        foreach (var (id, rawFrom) in From(session, from))
        {
            if (Next(session, "reading", id, Tiers.Minute, Before(rawBefore, Tiers.Minute), most) is { } raw) return new(id, Tier.Raw, raw);
            // Minutes go only where the raw readings went, else a late one would make the quarter from less than there was.
            var first = session.Prepare("SELECT t FROM reading WHERE series = ?1 ORDER BY t LIMIT 1").Bind(1, id).Scalar() ?? long.MaxValue;
            var bound = Math.Min(Before(minutesBefore, Tiers.Quarter), Tiers.Floor(Math.Min(rawFrom, first), Tiers.Quarter));
            if (Next(session, "rollup_minute", id, Tiers.Quarter, bound, most) is { } minute) return new(id, Tier.Minute, minute);
        }

        return null;
    }

    /// <summary>Takes a piece away; inside the transaction that the caller holds. No rows where another store is still owed them.</summary>
    public static LetGo Take(Session session, Piece piece, bool heedFeed)
    {
        var until = piece.Tier == Tier.Raw && heedFeed ? Math.Min(piece.Until, Owed(session, piece.Id)) : piece.Until;
        var (partition, series) = NameOf(session, piece.Id);
        if (piece.Tier == Tier.Raw) Prove(session, piece.Id, until, partition, series);
        var table = piece.Tier == Tier.Raw ? "reading" : "rollup_minute";
        var rows = session.Prepare($"DELETE FROM {table} WHERE series = ?1 AND t < ?2").Bind(1, piece.Id).Bind(2, until).Run();
        if (rows > 0) Note(session, piece, until, rows);
        return new LetGo(partition, series, piece.Tier, rows, Instant.FromUnixMicroseconds(until));
    }

    private static void Note(Session session, Piece piece, long until, int rows)
    {
        var note = piece.Tier == Tier.Raw
            ? session.Prepare("UPDATE series SET raw_from = max(raw_from, ?2), raw_let_go = raw_let_go + ?3 WHERE id = ?1").Bind(3, rows)
            : session.Prepare("UPDATE series SET minute_from = max(minute_from, ?2) WHERE id = ?1");
        note.Bind(1, piece.Id).Bind(2, until).Run();
    }

    // About so many rows from the oldest on, up to a whole bucket of the next tier; null when there is none before the bound.
    private static long? Next(Session session, string table, long id, long width, long bound, int most)
    {
        var first = session.Prepare($"SELECT t FROM {table} WHERE series = ?1 AND t < ?2 ORDER BY t LIMIT 1").Bind(1, id).Bind(2, bound).Scalar();
        if (first is not { } oldest) return null;
        var beyond = session.Prepare($"SELECT t FROM {table} WHERE series = ?1 AND t < ?2 ORDER BY t LIMIT 1 OFFSET ?3").Bind(1, id).Bind(2, bound).Bind(3, most).Scalar() ?? bound;
        return Math.Min(bound, Math.Max(Tiers.Floor(beyond, width), Tiers.Floor(oldest, width) + width));
    }

    // Every minute must hold what its raw readings say before they go.
    private static void Prove(Session session, long id, long until, string partition, string series)
    {
        var torn = session.Prepare(
            """
            SELECT r.m FROM (SELECT t - t % 60000000 AS m, count(*) AS c FROM reading WHERE series = ?1 AND t < ?2 GROUP BY 1) r
              LEFT JOIN rollup_minute b ON b.series = ?1 AND b.t = r.m WHERE b.count IS NOT r.c LIMIT 1
            """).Bind(1, id).Bind(2, until).Scalar();
        if (torn is { } minute) throw new RollUpMissingException(partition, series, Instant.FromUnixMicroseconds(minute));
    }

    private static long Owed(Session session, long id)
    {
        var upto = session.Prepare("SELECT upto FROM feed_series WHERE series = ?1").Bind(1, id).Scalar();
        var marked = session.Prepare("SELECT min(t) FROM feed_minute WHERE series = ?1 HAVING min(t) IS NOT NULL").Bind(1, id).Scalar() ?? long.MaxValue;
        // Nothing was written yet, or nobody took it up: all of it is owed.
        return upto is null or FeedTable.Nothing ? long.MinValue : Math.Min(marked, Tiers.Floor(upto.Value + 1, Tiers.Minute));
    }

    private static List<(long Id, long RawFrom)> From(Session session, long from)
    {
        var found = new List<(long, long)>();
        var rows = session.Prepare("SELECT id, raw_from FROM series WHERE id >= ?1 ORDER BY id").Bind(1, from);
        while (rows.Next()) found.Add((rows.Int64(0), rows.Int64(1)));
        return found;
    }

    private static (string Partition, string Series) NameOf(Session session, long id)
    {
        var row = session.Prepare("SELECT p.key, s.key FROM series s JOIN partition p ON p.id = s.partition WHERE s.id = ?1").Bind(1, id);
        row.Next();
        var name = (row.Text(0), row.Text(1));
        row.Reset();
        return name;
    }

    private static long Before(Instant time, long width) => time.IsSet ? Tiers.Floor(time.UnixMicroseconds, width) : long.MinValue;
}
