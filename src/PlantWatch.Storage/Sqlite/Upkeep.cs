using PlantWatch.Core.Quantities;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Writes that are no batch: snapshots, pruning, the renaming of a circuit. Inside the transaction that the caller holds.</summary>
internal static class Upkeep
{
    private const string Partition = "(SELECT id FROM partition WHERE key = ?1)";

    public static bool Save(Session session, PartitionKey partition, Snapshot snapshot)
    {
        session.Prepare("INSERT INTO partition (key) VALUES (?1) ON CONFLICT DO NOTHING").Bind(1, partition.Value).Run();
        session.Prepare($"INSERT OR REPLACE INTO snapshot (partition, seq, fold_version, state_hash, state) VALUES ({Partition}, ?2, ?3, ?4, ?5)")
            .Bind(1, partition.Value).Bind(2, snapshot.Seq).Bind(3, snapshot.FoldVersion).Bind(4, snapshot.StateHash).Bind(5, snapshot.State.Span).Run();
        session.Prepare(
            $"""
            DELETE FROM snapshot WHERE partition = {Partition} AND seq NOT IN
              (SELECT seq FROM snapshot WHERE partition = {Partition} ORDER BY seq DESC LIMIT 2)
            """).Bind(1, partition.Value).Run();
        return true;
    }

    public static long Prune(Session session, PartitionKey partition, Instant before) =>
        // Without a second snapshot the subquery is null and nothing goes.
        session.Prepare(
            $"""
            DELETE FROM journal WHERE partition = {Partition} AND received < ?2 AND seq <=
              (SELECT seq FROM snapshot WHERE partition = {Partition} ORDER BY seq DESC LIMIT 1 OFFSET 1)
            """).Bind(1, partition.Value).Bind(2, before.UnixMicroseconds).Run();

    public static bool Rename(Session session, PartitionKey from, PartitionKey to) =>
        session.Prepare("UPDATE partition SET key = ?2 WHERE key = ?1 AND NOT EXISTS (SELECT 1 FROM partition WHERE key = ?2)")
            .Bind(1, from.Value).Bind(2, to.Value).Run() > 0;
}
