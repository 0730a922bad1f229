using System.Runtime.CompilerServices;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Storage;

/// <summary>The ports, simply and obviously: every roll-up is computed from the raw readings when it is asked for.</summary>
public sealed partial class InMemoryStore(TimeZoneInfo siteZone) : IRecordStore, ISeriesStore
{
    private readonly Lock _door = new();
    private Dictionary<string, Drawer> _drawers = [];

    /// <summary>When set, the next commit fails with it at the end and must leave nothing behind.</summary>
    public Exception? FailNextCommit { get; set; }

    public ValueTask<IReadOnlyList<CommitReceipt>> CommitAsync(IReadOnlyList<Commit> commits, CancellationToken cancellation)
    {
        CommitCheck.Throw(commits);
        cancellation.ThrowIfCancellationRequested();
        lock (_door)
        {
            var copy = _drawers.ToDictionary(d => d.Key, d => d.Value.Copy());
            var receipts = commits.Select(commit => Write(copy, commit)).ToList();
            if (FailNextCommit is { } failure)
            {
                FailNextCommit = null;
                throw failure;
            }
            _drawers = copy;
            return ValueTask.FromResult<IReadOnlyList<CommitReceipt>>(receipts);
        }
    }

    public ValueTask<long> LastSeqAsync(PartitionKey partition, CancellationToken cancellation) => Ask(partition, d => d.LastSeq);

    public async IAsyncEnumerable<JournalRow> JournalAsync(PartitionKey partition, long afterSeq, [EnumeratorCancellation] CancellationToken cancellation)
    {
        foreach (var row in await Ask(partition, d => d.Journal.Where(r => r.Seq > afterSeq).ToList())) yield return row;
    }

    public ValueTask SaveSnapshotAsync(PartitionKey partition, Snapshot snapshot, CancellationToken cancellation)
    {
        lock (_door)
        {
            var drawer = Of(_drawers, partition);
            drawer.Snapshots = [.. drawer.Snapshots.Where(s => s.Seq != snapshot.Seq).Append(snapshot).OrderByDescending(s => s.Seq).Take(2)];
        }
        return ValueTask.CompletedTask;
    }

    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) =>
        Ask(partition, d => d.Snapshots.FirstOrDefault(s => s.FoldVersion == foldVersion));

    public ValueTask<long> PruneJournalAsync(PartitionKey partition, Instant before, CancellationToken cancellation) => Ask(partition, d =>
        d.Snapshots.Count < 2 ? 0L : d.Journal.RemoveAll(r => r.ReceivedAt < before && r.Seq <= d.Snapshots[1].Seq));

    public ValueTask<bool> RenamePartitionAsync(PartitionKey from, PartitionKey to, CancellationToken cancellation)
    {
        lock (_door)
        {
            if (_drawers.ContainsKey(to.Value) || !_drawers.Remove(from.Value, out var drawer)) return ValueTask.FromResult(false);
            _drawers.Add(to.Value, drawer);
            return ValueTask.FromResult(true);
        }
    }

    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) => Ask(partition, d => d.Tally);

    public ValueTask<IReadOnlyList<RecordEntry>> EntriesAsync(PartitionKey partition, EntryQuery query, CancellationToken cancellation) =>
        Ask(partition, d => (IReadOnlyList<RecordEntry>)[.. d.Entries
            .Where(e => query.Kinds.Count == 0 || query.Kinds.Contains(e.Body.Kind))
            .Where(e => query.Subject is null || e.Subject == query.Subject)
            .Where(e => !query.From.IsSet || e.HappenedAt >= query.From)
            .Where(e => !query.To.IsSet || e.HappenedAt < query.To)
            .OrderByDescending(e => e.HappenedAt).ThenByDescending(e => e.Id.ToString(), StringComparer.Ordinal)
            .Take(query.Limit)]);

    public ValueTask<RecordEntry?> EntryAsync(PartitionKey partition, Guid id, CancellationToken cancellation) =>
        Ask(partition, d => d.Entries.Find(e => e.Id == id));

    // Memory keeps them all.
    public ValueTask<IReadOnlyDictionary<RefusalReason, long>> ForgottenRefusalsAsync(PartitionKey partition, CancellationToken cancellation) =>
        ValueTask.FromResult<IReadOnlyDictionary<RefusalReason, long>>(new Dictionary<RefusalReason, long>());

    public ValueTask<IReadOnlyList<Refusal>> RefusalsAsync(PartitionKey partition, int limit, CancellationToken cancellation) =>
        Ask(partition, d => (IReadOnlyList<Refusal>)[.. d.Refusals
            .OrderByDescending(r => r.ReceivedAt).ThenByDescending(r => r.Id.ToString(), StringComparer.Ordinal).Take(limit)]);

    public ValueTask<SeriesAnswer> SeriesAsync(PartitionKey partition, SeriesQuery query, CancellationToken cancellation)
    {
        query.ThrowIfImpossible();
        return Ask(partition, d => PlainRollUp.Line(d.ReadingsOf(query.Series), query, siteZone));
    }

    public ValueTask<IReadOnlyList<StoredReading>> RawAsync(
        PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation) =>
        Ask(partition, d => (IReadOnlyList<StoredReading>)[.. Between(d, series, from, to).Take(limit)]);

    public ValueTask<Instant> RawFromAsync(PartitionKey partition, string? series, CancellationToken cancellation) => ValueTask.FromResult(Instant.Never);

    public ValueTask<ProbeWindow> WindowAsync(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation) =>
        Ask(partition, d => PlainRollUp.Window(series, from, to, [.. Between(d, series, from, to)]));

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private static IEnumerable<StoredReading> Between(Drawer drawer, string series, Instant from, Instant to) =>
        drawer.ReadingsOf(series).Values.Where(r => r.MeasuredAt >= from && r.MeasuredAt < to);

    private ValueTask<T> Ask<T>(PartitionKey partition, Func<Drawer, T> question)
    {
        lock (_door) return ValueTask.FromResult(question(_drawers.GetValueOrDefault(partition.Value) ?? new Drawer()));
    }

    private static Drawer Of(Dictionary<string, Drawer> drawers, PartitionKey partition)
    {
        if (!drawers.TryGetValue(partition.Value, out var drawer)) drawers.Add(partition.Value, drawer = new Drawer());
        return drawer;
    }

    private static CommitReceipt Write(Dictionary<string, Drawer> drawers, Commit commit)
    {
        var drawer = Of(drawers, commit.Partition);
        if (commit.Seq != drawer.LastSeq + 1) throw new OutOfSequenceException(commit.Partition, drawer.LastSeq + 1, commit.Seq);
        drawer.LastSeq = commit.Seq;
        drawer.Journal.Add(new JournalRow(commit.Seq, commit.ReceivedAt, commit.Events.ToArray()));
        drawer.Rename(commit.Result.Renamed, commit.Seq);
        drawer.Refusals.AddRange(commit.Result.Refusals);
        foreach (var entry in commit.Result.Entries)
            drawer.Entries.Add(drawer.Entries.Exists(e => e.Id == entry.Id) ? throw new StorageException("an entry comes twice", mayPass: false) : entry);
        var tally = default(BackFillTally);
        foreach (var reading in commit.Result.Readings) tally = drawer.Store(reading, commit, tally);
        drawer.Tally = new BackFillTally(drawer.Tally.AlreadyThere + tally.AlreadyThere, drawer.Tally.Conflicting + tally.Conflicting);
        return new CommitReceipt(commit.Partition, commit.Seq, tally);
    }

    /// <summary>All that one partition holds.</summary>
    private sealed class Drawer
    {
        public long LastSeq { get; set; }
        public List<JournalRow> Journal { get; private init; } = [];
        public List<Refusal> Refusals { get; private init; } = [];
        public List<RecordEntry> Entries { get; private init; } = [];
        public List<Snapshot> Snapshots { get; set; } = [];
        public Dictionary<string, SortedList<Instant, StoredReading>> Series { get; private set; } = [];
        public BackFillTally Tally { get; set; }
        public List<OutboxItem> Outbox { get; private init; } = [];

        public Drawer Copy() => new()
        {
            LastSeq = LastSeq, Tally = Tally, Journal = [.. Journal], Refusals = [.. Refusals], Entries = [.. Entries], Snapshots = [.. Snapshots], Outbox = [.. Outbox],
            Series = Series.ToDictionary(s => s.Key, s => new SortedList<Instant, StoredReading>(s.Value)),
        };

        public SortedList<Instant, StoredReading> ReadingsOf(string series) => Series.GetValueOrDefault(series) ?? [];

        public void Rename(IEnumerable<SeriesRenamed> renames, long seq)
        {
            var moved = renames.Where(r => Series.ContainsKey(r.From)).ToDictionary(r => r.To, r => Series[r.From]);
            var rest = Series.Where(s => !moved.ContainsValue(s.Value)).ToDictionary(s => moved.ContainsKey(s.Key) ? $"{s.Key}~{seq}" : s.Key, s => s.Value);
            Series = moved.Concat(rest).ToDictionary();
        }

        public BackFillTally Store(Reading reading, Commit commit, BackFillTally tally)
        {
            var key = Renames.KeyOf(commit.Result.Renamed, reading.Series);
            if (!Series.TryGetValue(key, out var readings)) Series.Add(key, readings = []);
            if (readings.TryAdd(reading.MeasuredAt, new StoredReading(reading.MeasuredAt, reading.ReceivedAt, reading.Raw, reading.Quality))) return tally;
            var stands = readings[reading.MeasuredAt].Raw;
            if (stands == reading.Raw) return tally with { AlreadyThere = tally.AlreadyThere + 1 };
            Refusals.Add(Conflicts.Refuse(commit, tally.Conflicting, key, reading.MeasuredAt, reading.ReceivedAt, reading.Raw, stands));
            return tally with { Conflicting = tally.Conflicting + 1 };
        }
    }
}
