namespace PlantWatch.Storage.Sqlite;

/// <summary>Counts what a record holds. Asks only for tables of the first migration, so that a record of any age can be counted.</summary>
internal static class SumsReader
{
    public static IReadOnlyList<PartitionSums> Read(Session session)
    {
        // Each count runs along one index: a join over all readings would take many times as long.
        var hasLetGo = session.Prepare("SELECT 1 FROM pragma_table_info('series') WHERE name = 'raw_let_go'").Scalar() is 1;
        var rows = session.Prepare(
            $"""
            SELECT p.key, p.last_seq,
              (SELECT count(*) FROM journal j WHERE j.partition = p.id),
              (SELECT coalesce(min(j.seq), 0) FROM journal j WHERE j.partition = p.id),
              (SELECT coalesce(sum((SELECT count(*) FROM reading r WHERE r.series = s.id)), 0) FROM series s WHERE s.partition = p.id),
              (SELECT count(*) FROM entry e WHERE e.partition = p.id),
              (SELECT count(*) FROM refusal f WHERE f.partition = p.id),
              {(hasLetGo ? "(SELECT coalesce(sum(s.raw_let_go), 0) FROM series s WHERE s.partition = p.id)" : "0")}
            FROM partition p ORDER BY p.key
            """);
        var found = new List<PartitionSums>();
        while (rows.Next()) found.Add(new PartitionSums(rows.Text(0), rows.Int64(1), rows.Int64(2), rows.Int64(3), rows.Int64(4), rows.Int64(5), rows.Int64(6), rows.Int64(7)));
        return found;
    }

    /// <summary>What the engine finds wrong with the file; nothing when it is whole.</summary>
    public static IReadOnlyList<string> Damage(Session session, bool quick)
    {
        var rows = session.Prepare(quick ? "PRAGMA quick_check(20)" : "PRAGMA integrity_check(20)");
        var found = new List<string>();
        while (rows.Next()) found.Add(rows.Text(0));
        return found is ["ok"] ? [] : found;
    }
}
