using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage.Influx;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Reads what is owed, and how much that is.</summary>
internal static class FeedReader
{
    private const string Names = "SELECT s.id, p.key, s.key, f.upto FROM feed_series f JOIN series s ON s.id = f.series JOIN partition p ON p.id = s.partition";

    public static bool HasNew(Session session) =>
        session.Prepare("SELECT 1 FROM series s WHERE NOT EXISTS (SELECT 1 FROM feed_series f WHERE f.series = s.id) LIMIT 1").Scalar() is not null;

    public static List<StoredReading> After(Session session, long series, long after, int most) => Readings(
        session.Prepare("SELECT t, value, quality, lag FROM reading WHERE series = ?1 AND t > ?2 ORDER BY t LIMIT ?3").Bind(1, series).Bind(2, after).Bind(3, most));

    /// <summary>Marked minutes with their readings, about so many, without those on their way.</summary>
    public static int Marked(Session session, int most, FeedPage? ahead, List<FeedPiece> pieces)
    {
        var onTheirWay = ahead?.Pieces.Where(p => p.Minute is not null).Select(p => (p.Series, p.Minute!.Value)).ToHashSet() ?? [];
        var taken = 0;
        foreach (var (series, circuit, probe, minute, times) in Marks(session, most + onTheirWay.Count))
        {
            if (taken >= most) break;
            if (onTheirWay.Contains((series, minute))) continue;
            var readings = Readings(session.Prepare("SELECT t, value, quality, lag FROM reading WHERE series = ?1 AND t >= ?2 AND t < ?3 ORDER BY t").Bind(1, series).Bind(2, minute).Bind(3, minute + Tiers.Minute));
            pieces.Add(new(series, circuit, probe, null, readings, 0, 0, minute, times));
            taken += readings.Count;
        }

        return taken;
    }

    public static Backlog Backlog(Session session)
    {
        var (readings, oldest) = (InMarkedMinutes(session), long.MaxValue);
        foreach (var (series, _, _, upto) in Series(session))
        {
            if (FirstOwed(session, series, upto) is not { } first) continue;
            readings += CountAfter(session, series, upto, first.T);
            oldest = Math.Min(oldest, first.T + first.Lag);
        }

        return new(readings, oldest == long.MaxValue ? Instant.Never : Instant.FromUnixMicroseconds(oldest), Lines(session, "<>"), Lines(session, "="));
    }

    private static long Lines(Session session, string isOrIsNot) =>
        session.Prepare($"SELECT sum(lines) FROM feed_parked WHERE words {isOrIsNot} ?1").Bind(1, WriteAnswer.BeyondRetention).Scalar() ?? 0;

    public static IReadOnlyList<ParkedLines> Parked(Session session)
    {
        var rows = session.Prepare(
            "SELECT p.key, s.key, k.series, k.first, k.last, k.lines, k.sample, k.words, k.at FROM feed_parked k JOIN series s ON s.id = k.series JOIN partition p ON p.id = s.partition ORDER BY k.at DESC");
        var found = new List<ParkedLines>();
        while (rows.Next())
            found.Add(new(rows.Int64(2), rows.Text(0), rows.Text(1), rows.Instant(3), rows.Instant(4), rows.Int64(5), rows.Text(6), rows.Text(7), rows.Instant(8)));
        return found;
    }

    /// <summary>What every series holds. Quarters of an hour, because every zone's midnight falls on one.</summary>
    public static IReadOnlyList<HeldReadings> Held(Session session, long from, long to)
    {
        var found = new List<HeldReadings>();
        foreach (var (series, circuit, probe, upto) in Series(session))
        {
            var count = session.Prepare("SELECT sum(count) FROM rollup_quarter WHERE series = ?1 AND t >= ?2 AND t < ?3").Bind(1, series).Bind(2, from).Bind(3, to).Scalar() ?? 0;
            found.Add(new(series, circuit, probe, count, IsOwed(session, series, upto, from, to), HasParked(session, series, from, to)));
        }

        return found;
    }

    private static bool IsOwed(Session session, long series, long upto, long from, long to) =>
        session.Prepare("SELECT 1 FROM reading WHERE series = ?1 AND t > ?2 AND t < ?3 LIMIT 1").Bind(1, series).Bind(2, Math.Max(upto, from - 1)).Bind(3, to).Scalar() is not null
        || session.Prepare("SELECT 1 FROM feed_minute WHERE series = ?1 AND t >= ?2 AND t < ?3 LIMIT 1").Bind(1, series).Bind(2, from).Bind(3, to).Scalar() is not null;

    private static bool HasParked(Session session, long series, long from, long to) =>
        session.Prepare("SELECT 1 FROM feed_parked WHERE series = ?1 AND last >= ?2 AND first < ?3 LIMIT 1").Bind(1, series).Bind(2, from).Bind(3, to).Scalar() is not null;

    private static List<(long Series, string Circuit, string Probe, long Upto)> Series(Session session)
    {
        var found = new List<(long, string, string, long)>();
        var rows = session.Prepare(Names);
        while (rows.Next()) found.Add((rows.Int64(0), rows.Text(1), rows.Text(2), rows.Int64(3)));
        return found;
    }

    private static List<(long Series, string Circuit, string Probe, long Minute, long Times)> Marks(Session session, int most)
    {
        var found = new List<(long, string, string, long, long)>();
        var rows = session.Prepare(
            "SELECT m.series, p.key, s.key, m.t, m.times FROM feed_minute m JOIN series s ON s.id = m.series JOIN partition p ON p.id = s.partition ORDER BY m.series, m.t LIMIT ?1").Bind(1, most);
        while (rows.Next()) found.Add((rows.Int64(0), rows.Text(1), rows.Text(2), rows.Int64(3), rows.Int64(4)));
        return found;
    }

    private static List<StoredReading> Readings(Statement rows)
    {
        var found = new List<StoredReading>();
        while (rows.Next())
        {
            var t = rows.Int64(0);
            found.Add(new(Instant.FromUnixMicroseconds(t), Instant.FromUnixMicroseconds(t + rows.Int64(3)), rows.Double(1), (Quality)rows.Int64(2)));
        }

        return found;
    }

    private static long InMarkedMinutes(Session session) =>
        session.Prepare("SELECT sum(r.count) FROM feed_minute m JOIN rollup_minute r ON r.series = m.series AND r.t = m.t").Scalar() ?? 0;

    private static (long T, long Lag)? FirstOwed(Session session, long series, long upto)
    {
        var row = session.Prepare("SELECT t, lag FROM reading WHERE series = ?1 AND t > ?2 ORDER BY t LIMIT 1").Bind(1, series).Bind(2, upto);
        if (!row.Next()) return null;
        var found = (row.Int64(0), row.Int64(1));
        row.Reset();
        return found;
    }

    // A year of raw rows is not counted one by one: only up to the next quarter of an hour.
    private static long CountAfter(Session session, long series, long upto, long first)
    {
        var whole = Tiers.Floor(first, Tiers.Quarter) + Tiers.Quarter;
        var raw = session.Prepare("SELECT count(*) FROM reading WHERE series = ?1 AND t > ?2 AND t < ?3").Bind(1, series).Bind(2, upto).Bind(3, whole).Scalar() ?? 0;
        return raw + (session.Prepare("SELECT sum(count) FROM rollup_quarter WHERE series = ?1 AND t >= ?2").Bind(1, series).Bind(2, whole).Scalar() ?? 0);
    }
}
