using System.Text.Json;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Writes what belongs to a partition as a whole: sequence, journal, record, refusals.</summary>
internal sealed class RecordWriter(Session session)
{
    private readonly Statement _advance = session.Prepare("UPDATE partition SET last_seq = ?2 WHERE id = ?1 AND last_seq = ?2 - 1");
    private readonly Statement _journal = session.Prepare("INSERT INTO journal (partition, seq, received, events) VALUES (?1, ?2, ?3, ?4)");
    private readonly Statement _refusal = session.Prepare(
        "INSERT INTO refusal (partition, id, received, topic, payload, reason, detail) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)");
    private readonly Statement _entry = session.Prepare(
        "INSERT INTO entry (partition, id, kind, at, happened_at, subject, body) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)");

    /// <summary>Moves the partition on and keeps the events.</summary>
    /// <exception cref="OutOfSequenceException">The batch does not follow.</exception>
    public void Journal(long partition, Commit commit)
    {
        if (_advance.Bind(1, partition).Bind(2, commit.Seq).Run() == 0)
        {
            var last = session.Prepare("SELECT last_seq FROM partition WHERE id = ?1").Bind(1, partition).Scalar() ?? 0;
            throw new OutOfSequenceException(commit.Partition, last + 1, commit.Seq);
        }
        _journal.Bind(1, partition).Bind(2, commit.Seq).Bind(3, commit.ReceivedAt.UnixMicroseconds).Bind(4, commit.Events.Span).Run();
    }

    /// <summary>Keeps a refused item with its bytes.</summary>
    public void Write(long partition, Refusal item) => _refusal
        .Bind(1, partition).Bind(2, item.Id).Bind(3, item.ReceivedAt.UnixMicroseconds).Bind(4, item.Topic)
        .Bind(5, item.Payload.Span).Bind(6, item.Reason.ToString()).Bind(7, item.Detail).Run();

    /// <summary>Appends a row of the record.</summary>
    public void Write(long partition, RecordEntry row) => _entry
        .Bind(1, partition).Bind(2, row.Id).Bind(3, row.Body.Kind).Bind(4, row.At.UnixMicroseconds).Bind(5, row.HappenedAt.UnixMicroseconds)
        .Bind(6, row.Subject).Bind(7, JsonSerializer.Serialize(row.Body, PlantJson.Options)).Run();

    /// <summary>Adds to the sums of the partition.</summary>
    public void Tally(long partition, BackFillTally tally)
    {
        if (tally == default) return;
        session.Prepare("UPDATE partition SET already_there = already_there + ?2, conflicting = conflicting + ?3 WHERE id = ?1")
            .Bind(1, partition).Bind(2, tally.AlreadyThere).Bind(3, tally.Conflicting).Run();
    }
}
