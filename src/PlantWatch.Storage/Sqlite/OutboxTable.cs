using System.Text.Json;
using PlantWatch.Core.Alarms.Telling;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Notices and what became of them. Writes run inside the transaction that the caller holds.</summary>
internal static class OutboxTable
{
    private const string Partition = "(SELECT id FROM partition WHERE key = ?1)";

    public static int Queue(Session session, PartitionKey partition, IReadOnlyList<WrittenNotice> notices, Instant at)
    {
        session.Prepare("INSERT INTO partition (key) VALUES (?1) ON CONFLICT DO NOTHING").Bind(1, partition.Value).Run();
        var insert = session.Prepare($"INSERT INTO notice (partition, id, alarm, queued, notice, content) VALUES ({Partition}, ?2, ?3, ?4, ?5, ?6) ON CONFLICT DO NOTHING");
        foreach (var (notice, content) in notices)
            insert.Bind(1, partition.Value).Bind(2, notice.Id).Bind(3, notice.Alarm).Bind(4, at.UnixMicroseconds).Bind(5, JsonSerializer.Serialize(notice, PlantJson.Options)).Bind(6, content).Run();
        return notices.Count;
    }

    public static IReadOnlyList<OutboxItem> All(Session session, PartitionKey partition)
    {
        var rows = session.Prepare($"SELECT notice, content, queued, tries, first_try, last_try, fate, trouble FROM notice WHERE partition = {Partition} ORDER BY ordinal").Bind(1, partition.Value);
        var found = new List<OutboxItem>();
        while (rows.Next())
        {
            var notice = JsonSerializer.Deserialize<Notice>(rows.Text(0), PlantJson.Options) ?? throw new JsonException("a notice cannot be null");
            found.Add(new(new(notice, rows.Text(1)), rows.Instant(2), (int)rows.Int64(3), Tried(rows, 4), Tried(rows, 5), (Fate)rows.Int64(6), rows.Text(7)));
        }

        return found;
    }

    public static int Note(Session session, PartitionKey partition, Guid notice, Attempt attempt) =>
        session.Prepare(
            $"""
            UPDATE notice SET tries = tries + 1, first_try = CASE first_try WHEN 0 THEN ?3 ELSE first_try END, last_try = ?3, fate = ?4, trouble = ?5
            WHERE partition = {Partition} AND id = ?2 AND fate <> 1
            """)
            .Bind(1, partition.Value).Bind(2, notice).Bind(3, attempt.At.UnixMicroseconds).Bind(4, (long)attempt.Fate).Bind(5, attempt.Trouble).Run();

    public static long Forget(Session session, PartitionKey partition, Instant before, IReadOnlyCollection<Guid> kept)
    {
        var old = session.Prepare($"SELECT alarm FROM notice WHERE partition = {Partition} GROUP BY alarm HAVING min(fate) > 0 AND max(queued) < ?2").Bind(1, partition.Value).Bind(2, before.UnixMicroseconds);
        var gone = new List<Guid>();
        while (old.Next()) gone.Add(old.Guid(0));
        var delete = session.Prepare($"DELETE FROM notice WHERE partition = {Partition} AND alarm = ?2");
        return gone.Except(kept).Sum(alarm => (long)delete.Bind(1, partition.Value).Bind(2, alarm).Run());
    }

    private static Instant Tried(Statement row, int column) => row.Int64(column) == 0 ? Instant.Never : row.Instant(column);
}
