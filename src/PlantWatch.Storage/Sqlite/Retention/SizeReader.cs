using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Measures a record. Looks at every page where the engine can tell tables apart, so it is asked seldom.</summary>
internal static class SizeReader
{
    private const double Microseconds = 86_400e6;

    public static RecordSize Read(Session session, Instant now)
    {
        long Pragma(string name) => session.Prepare($"PRAGMA {name}").Scalar() ?? 0;
        var page = Pragma("page_size");
        var first = session.Prepare("SELECT min(t) FROM (SELECT (SELECT min(t) FROM rollup_hour r WHERE r.series = s.id) AS t FROM series s) HAVING min(t) IS NOT NULL").Scalar() ?? now.UnixMicroseconds;
        var days = Math.Max(0, (now.UnixMicroseconds - first) / Microseconds);
        var span = Math.Clamp(days, 1.0 / 24, 7);
        var since = now.UnixMicroseconds - (long)(span * Microseconds);
        return new RecordSize(
            Pragma("page_count") * page, Pragma("freelist_count") * page, Tables(session),
            Since(session, "count(*)", "reading", long.MinValue),
            session.Prepare("SELECT coalesce(sum(raw_let_go), 0) FROM series").Scalar() ?? 0,
            Since(session, "count(*)", "rollup_minute", long.MinValue),
            Since(session, "coalesce(sum(r.count), 0)", "rollup_quarter", since) / span, Since(session, "count(*)", "rollup_minute", since) / span, days);
    }

    private static long Since(Session session, string what, string table, long since) =>
        session.Prepare($"SELECT coalesce(sum((SELECT {what} FROM {table} r WHERE r.series = s.id AND r.t >= ?1)), 0) FROM series s").Bind(1, since).Scalar() ?? 0;

    private static List<TableSize> Tables(Session session)
    {
        if (session.Prepare("SELECT count(*) FROM pragma_module_list WHERE name = 'dbstat'").Scalar() is not > 0) return [];
        var rows = session.Prepare(
            "SELECT coalesce(m.tbl_name, d.name), sum(d.pgsize) FROM dbstat d LEFT JOIN sqlite_schema m ON m.name = d.name WHERE d.aggregate = TRUE GROUP BY 1 ORDER BY 2 DESC");
        var found = new List<TableSize>();
        while (rows.Next()) found.Add(new TableSize(rows.Text(0), rows.Int64(1)));
        return found;
    }
}
