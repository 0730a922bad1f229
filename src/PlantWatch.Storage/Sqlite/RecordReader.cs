using System.Text;
using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Reads the record: journal, snapshots, entries, refusals and sums.</summary>
internal sealed class RecordReader(Session session)
{
    private const string Partition = "(SELECT id FROM partition WHERE key = ?1)";

    public long LastSeq(PartitionKey partition) =>
        session.Prepare("SELECT last_seq FROM partition WHERE key = ?1").Bind(1, partition.Value).Scalar() ?? 0;

    public BackFillTally BackFills(PartitionKey partition)
    {
        var row = session.Prepare("SELECT already_there, conflicting FROM partition WHERE key = ?1").Bind(1, partition.Value);
        if (!row.Next()) return default;
        var tally = new BackFillTally(row.Int64(0), row.Int64(1));
        row.Reset();
        return tally;
    }

    /// <summary>A page of the journal: at least a row where there is one, and then no more than some megabytes.</summary>
    public List<JournalRow> JournalPage(PartitionKey partition, long afterSeq)
    {
        const int RowsOfAPage = 256;
        const int BytesOfAPage = 4 << 20;
        var page = new List<JournalRow>();
        var bytes = 0;
        var rows = session.Prepare($"SELECT seq, received, events FROM journal WHERE partition = {Partition} AND seq > ?2 ORDER BY seq LIMIT ?3")
            .Bind(1, partition.Value).Bind(2, afterSeq).Bind(3, RowsOfAPage);
        while (bytes < BytesOfAPage && rows.Next())
        {
            page.Add(new JournalRow(rows.Int64(0), rows.Instant(1), rows.Blob(2)));
            bytes += page[^1].Events.Length;
        }
        rows.Reset();
        return page;
    }

    public Snapshot? LatestSnapshot(PartitionKey partition, int foldVersion)
    {
        var row = session.Prepare(
            $"SELECT seq, state_hash, state FROM snapshot WHERE partition = {Partition} AND fold_version = ?2 ORDER BY seq DESC LIMIT 1")
            .Bind(1, partition.Value).Bind(2, foldVersion);
        if (!row.Next()) return null;
        var snapshot = new Snapshot(row.Int64(0), foldVersion, row.Text(1), row.Blob(2));
        row.Reset();
        return snapshot;
    }

    public IReadOnlyList<RecordEntry> Entries(PartitionKey partition, EntryQuery query)
    {
        var rows = session.Prepare(Sql(query)).Bind(1, partition.Value).Bind(2, query.From.IsSet ? query.From.UnixMicroseconds : long.MinValue)
            .Bind(3, query.To.IsSet ? query.To.UnixMicroseconds : long.MaxValue).Bind(4, Math.Max(0, query.Limit));
        if (query.Subject is not null) rows.Bind(5, query.Subject);
        for (var i = 0; i < query.Kinds.Count; i++) rows.Bind(6 + i, query.Kinds[i]);
        var found = new List<RecordEntry>();
        while (rows.Next()) found.Add(EntryOf(rows));
        return found;
    }

    public RecordEntry? Entry(PartitionKey partition, Guid id)
    {
        var row = session.Prepare($"SELECT {EntryColumns} FROM entry WHERE id = ?2 AND partition = {Partition}").Bind(1, partition.Value).Bind(2, id);
        if (!row.Next()) return null;
        var entry = EntryOf(row);
        row.Reset();
        return entry;
    }

    public IReadOnlyList<Refusal> Refusals(PartitionKey partition, int limit)
    {
        var rows = session.Prepare(
            $"SELECT id, received, topic, payload, reason, detail FROM refusal WHERE partition = {Partition} ORDER BY received DESC, id DESC LIMIT ?2")
            .Bind(1, partition.Value).Bind(2, Math.Max(0, limit));
        var found = new List<Refusal>();
        while (rows.Next())
            found.Add(new Refusal(rows.Guid(0), rows.Instant(1), rows.Text(2), rows.Blob(3), Enum.Parse<RefusalReason>(rows.Text(4)), rows.Text(5)));
        return found;
    }

    public IReadOnlyDictionary<RefusalReason, long> ForgottenRefusals(PartitionKey partition)
    {
        var rows = session.Prepare($"SELECT reason, count FROM refusal_forgotten WHERE partition = {Partition}").Bind(1, partition.Value);
        var found = new Dictionary<RefusalReason, long>();
        while (rows.Next()) found.Add(Enum.Parse<RefusalReason>(rows.Text(0)), rows.Int64(1));
        return found;
    }

    private const string EntryColumns = "id, at, happened_at, subject, body";

    private static string Sql(EntryQuery query)
    {
        var sql = new StringBuilder($"SELECT {EntryColumns} FROM entry WHERE partition = {Partition} AND happened_at >= ?2 AND happened_at < ?3");
        if (query.Subject is not null) sql.Append(" AND subject = ?5");
        if (query.Kinds.Count > 0) sql.Append(" AND kind IN (").AppendJoin(", ", Enumerable.Range(6, query.Kinds.Count).Select(i => "?" + i)).Append(')');
        return sql.Append(" ORDER BY happened_at DESC, id DESC LIMIT ?4").ToString();
    }

    private static RecordEntry EntryOf(Statement row) => new(
        row.Guid(0), row.Instant(1), row.Instant(2), row.Text(3),
        JsonSerializer.Deserialize<EntryBody>(row.Text(4), PlantJson.Options) ?? throw new JsonException("an entry without a body"));
}
