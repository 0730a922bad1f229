using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Writes batches inside the transaction that its caller holds. Readings are gathered a series over all batches, so that each roll-up bucket is touched once.</summary>
internal sealed class CommitWriter(Session session, RollUps rollUps)
{
    private readonly SeriesBook _book = new(session);
    private readonly RecordWriter _record = new(session);
    private readonly RefusalKeeper _refusals = new(session);
    private readonly ReadingWriter _readings = new(session, rollUps);
    private readonly List<(SeriesBook.Section Section, string Key, SeriesSlot Slot)> _touched = [];

    /// <summary>Writes the batches in their order.</summary>
    public CommitReceipt[] Write(IReadOnlyList<Commit> commits)
    {
        var tallies = new BackFillTally[commits.Count];
        for (var i = 0; i < commits.Count; i++) Write(commits, i, tallies);
        WriteReadings(commits, tallies);
        _refusals.Look();
        var receipts = new CommitReceipt[commits.Count];
        for (var i = 0; i < receipts.Length; i++)
        {
            _record.Tally(_book.Of(commits[i].Partition).Id, tallies[i]);
            receipts[i] = new CommitReceipt(commits[i].Partition, commits[i].Seq, tallies[i]);
        }
        return receipts;
    }

    /// <summary>Raw readings or minutes of a series were let go.</summary>
    public void LetGo(long series, Tier tier, long before)
    {
        if (_book.Known(series) is not { } slot) return;
        if (tier == Tier.Raw) slot.RawFrom = Math.Max(slot.RawFrom, before);
        else slot.MinuteFrom = Math.Max(slot.MinuteFrom, before);
    }

    /// <summary>Forgets what a rolled-back transaction left in memory.</summary>
    public void Forget()
    {
        _book.Clear();
        _touched.Clear();
        rollUps.Forget();
    }

    private void Write(IReadOnlyList<Commit> commits, int index, BackFillTally[] tallies)
    {
        var commit = commits[index];
        var section = _book.Of(commit.Partition);
        _record.Journal(section.Id, commit);
        var renames = commit.Result.Renamed;
        if (!renames.IsDefaultOrEmpty)
        {
            // Rows that wait under the old keys must be down before the keys change hands.
            WriteReadings(commits, tallies);
            _book.Rename(section, renames, commit.Seq);
        }
        Gather(section, commit, index);
        foreach (var refusal in commit.Result.Refusals) Keep(section, refusal);
        foreach (var entry in commit.Result.Entries) _record.Write(section.Id, entry);
    }

    private void Keep(SeriesBook.Section section, Refusal refusal)
    {
        _record.Write(section.Id, refusal);
        _refusals.Written(section.Id, refusal);
    }

    private void Gather(SeriesBook.Section section, Commit commit, int index)
    {
        foreach (ref readonly var reading in commit.Result.Readings.AsSpan())
        {
            var key = Renames.KeyOf(commit.Result.Renamed, reading.Series);
            var slot = _book.Of(section, key);
            if (slot.Rows.Count == 0) _touched.Add((section, key, slot));
            var t = reading.MeasuredAt.UnixMicroseconds;
            slot.Rows.Add(new SeriesSlot.Row(t, reading.Raw, reading.ReceivedAt.UnixMicroseconds - t, reading.Quality, index));
        }
    }

    private void WriteReadings(IReadOnlyList<Commit> commits, BackFillTally[] tallies)
    {
        foreach (var (section, key, slot) in _touched)
            _readings.Write(
                slot,
                index => tallies[index] = tallies[index] with { AlreadyThere = tallies[index].AlreadyThere + 1 },
                conflict => Keep(commits, tallies, section, key, conflict));
        _touched.Clear();
    }

    private void Keep(IReadOnlyList<Commit> commits, BackFillTally[] tallies, SeriesBook.Section section, string key, ReadingWriter.Conflict conflict)
    {
        var row = conflict.Row;
        ref var tally = ref tallies[row.Commit];
        var measured = Instant.FromUnixMicroseconds(row.T);
        var received = Instant.FromUnixMicroseconds(row.T + row.Lag);
        Keep(section, conflict.Stands is { } stands
            ? Conflicts.Refuse(commits[row.Commit], tally.Conflicting, key, measured, received, row.Value, stands)
            : Conflicts.TooLate(commits[row.Commit], tally.Conflicting, key, measured, received, row.Value));
        tally = tally with { Conflicting = tally.Conflicting + 1 };
    }
}
