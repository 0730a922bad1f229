using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Keeps the newest refusals of each reason with their bytes and counts the others, so that a device gone wild does not fill the disk.</summary>
/// <remarks>Looks only when a good many have come since the last look, so up to a quarter more may lie there for a while.</remarks>
internal sealed class RefusalKeeper(Session session)
{
    /// <summary>Refusals kept of one reason in one partition.</summary>
    public const int MostRows = 1000;

    /// <summary>Bytes of payload kept of one reason in one partition; the newest refusal is kept however large.</summary>
    public const long MostBytes = 16 << 20;

    private readonly Dictionary<(long Partition, RefusalReason Reason), (int Rows, long Bytes)> _sinceLook = [];
    private readonly Statement _newest = session.Prepare("SELECT ordinal, length(payload) FROM refusal WHERE partition = ?1 AND reason = ?2 ORDER BY ordinal DESC");
    private readonly Statement _forget = session.Prepare("DELETE FROM refusal WHERE partition = ?1 AND reason = ?2 AND ordinal < ?3");
    private readonly Statement _count = session.Prepare(
        "INSERT INTO refusal_forgotten (partition, reason, count) VALUES (?1, ?2, ?3) ON CONFLICT DO UPDATE SET count = count + excluded.count");

    /// <summary>A refusal was written.</summary>
    public void Written(long partition, Refusal item)
    {
        var (rows, bytes) = _sinceLook.GetValueOrDefault((partition, item.Reason));
        _sinceLook[(partition, item.Reason)] = (rows + 1, bytes + item.Payload.Length);
    }

    /// <summary>Forgets what is too much by now. Inside the transaction that wrote them.</summary>
    public void Look()
    {
        foreach (var (key, (rows, bytes)) in _sinceLook.ToArray())
        {
            if (rows < MostRows / 4 && bytes < MostBytes / 4) continue;
            Trim(key.Partition, key.Reason.ToString());
            _sinceLook[key] = default;
        }
    }

    private void Trim(long partition, string reason)
    {
        if (OldestToKeep(partition, reason) is not { } oldest) return;
        var forgotten = _forget.Bind(1, partition).Bind(2, reason).Bind(3, oldest).Run();
        if (forgotten > 0) _count.Bind(1, partition).Bind(2, reason).Bind(3, forgotten).Run();
    }

    private long? OldestToKeep(long partition, string reason)
    {
        var (rows, bytes) = (0, 0L);
        long? oldest = null;
        _newest.Bind(1, partition).Bind(2, reason);
        while (rows < MostRows && _newest.Next())
        {
            bytes += _newest.Int64(1);
            if (rows > 0 && bytes > MostBytes) break;
            oldest = _newest.Int64(0);
            rows++;
        }
        _newest.Reset();
        return oldest;
    }
}
