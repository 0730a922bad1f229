using System.Runtime.CompilerServices;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>The record and the series in one SQLite file. One writer at a time, readers never wait for it. Calls run on the caller's thread.</summary>
public sealed partial class SqliteStore : IRecordStore, ISeriesStore
{
    private readonly TimeZoneInfo _zone;
    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Session _writer;
    private readonly CommitWriter _commits;
    private readonly SessionPool _readers;
    private bool _closed;

    private SqliteStore(Session writer, RollUps rollUps, string path, TimeZoneInfo zone)
    {
        _zone = zone;
        _writer = writer;
        _commits = new CommitWriter(writer, rollUps);
        _readers = new SessionPool(path);
    }

    /// <summary>Opens the file, makes it where there is none, and brings it to the form this program knows.</summary>
    /// <param name="path">Path of the database file; its folder is made.</param>
    /// <param name="siteZone">The site's time zone: it decides what a day is. Changing it cuts the days anew.</param>
    /// <exception cref="UnusableDatabaseException">The file belongs to another program or to a newer PlantWatch; it is left as it is.</exception>
    /// <exception cref="StorageException">The file cannot be opened or written.</exception>
    public static SqliteStore Open(string path, TimeZoneInfo siteZone) => Open(path, siteZone, Session.UsualPatience);

    /// <summary>Opens with a patience of its own for locks that another process holds.</summary>
    internal static SqliteStore Open(string path, TimeZoneInfo siteZone, TimeSpan patience)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(siteZone);
        var full = Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        Migrations.RefuseUnusable(full);
        var writer = Session.OpenWriter(full, patience);
        try
        {
            Migrations.Apply(writer);
            var rollUps = new RollUps(writer, new SiteCalendar(siteZone));
            SiteZone.Hold(writer, rollUps, siteZone);
            return new SqliteStore(writer, rollUps, full, siteZone);
        }
        catch
        {
            writer.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<CommitReceipt>> CommitAsync(IReadOnlyList<Commit> commits, CancellationToken cancellation)
    {
        CommitCheck.Throw(commits);
        return WriteAsync<IReadOnlyList<CommitReceipt>>(() => _commits.Write(commits), cancellation);
    }

    /// <inheritdoc/>
    public async ValueTask SaveSnapshotAsync(PartitionKey partition, Snapshot snapshot, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(snapshot);
        await WriteAsync(() => Upkeep.Save(_writer, partition, snapshot), cancellation).ConfigureAwait(false);
    }

    /// <inheritdoc/>
    public ValueTask<long> PruneJournalAsync(PartitionKey partition, Instant before, CancellationToken cancellation) =>
        WriteAsync(() => Upkeep.Prune(_writer, partition, before), cancellation);

    /// <inheritdoc/>
    public ValueTask<bool> RenamePartitionAsync(PartitionKey from, PartitionKey to, CancellationToken cancellation) =>
        WriteAsync(
            () =>
            {
                _commits.Forget();
                return Upkeep.Rename(_writer, from, to);
            },
            cancellation);

    /// <inheritdoc/>
    public ValueTask<long> LastSeqAsync(PartitionKey partition, CancellationToken cancellation) =>
        Read(session => new RecordReader(session).LastSeq(partition), cancellation);

    /// <inheritdoc/>
    public async IAsyncEnumerable<JournalRow> JournalAsync(
        PartitionKey partition, long afterSeq, [EnumeratorCancellation] CancellationToken cancellation)
    {
        // A page at a time: a read left open for a whole replay would keep the write-ahead log from being folded in.
        while (true)
        {
            var page = await Read(session => new RecordReader(session).JournalPage(partition, afterSeq), cancellation).ConfigureAwait(false);
            if (page.Count == 0) yield break;
            foreach (var row in page) yield return row;
            afterSeq = page[^1].Seq;
        }
    }

    /// <inheritdoc/>
    public ValueTask<Snapshot?> LatestSnapshotAsync(PartitionKey partition, int foldVersion, CancellationToken cancellation) =>
        Read(session => new RecordReader(session).LatestSnapshot(partition, foldVersion), cancellation);

    /// <inheritdoc/>
    public ValueTask<BackFillTally> BackFillsAsync(PartitionKey partition, CancellationToken cancellation) =>
        Read(session => new RecordReader(session).BackFills(partition), cancellation);

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<RecordEntry>> EntriesAsync(PartitionKey partition, EntryQuery query, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(query);
        return Read(session => new RecordReader(session).Entries(partition, query), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<RecordEntry?> EntryAsync(PartitionKey partition, Guid id, CancellationToken cancellation) =>
        Read(session => new RecordReader(session).Entry(partition, id), cancellation);

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<Refusal>> RefusalsAsync(PartitionKey partition, int limit, CancellationToken cancellation) =>
        Read(session => new RecordReader(session).Refusals(partition, limit), cancellation);

    /// <inheritdoc/>
    public ValueTask<IReadOnlyDictionary<RefusalReason, long>> ForgottenRefusalsAsync(PartitionKey partition, CancellationToken cancellation) =>
        Read(session => new RecordReader(session).ForgottenRefusals(partition), cancellation);

    /// <inheritdoc/>
    public ValueTask<SeriesAnswer> SeriesAsync(PartitionKey partition, SeriesQuery query, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(query);
        query.ThrowIfImpossible();
        return Read(session => new SeriesReader(session, _zone).Line(partition, query, cancellation), cancellation);
    }

    /// <inheritdoc/>
    public ValueTask<IReadOnlyList<StoredReading>> RawAsync(
        PartitionKey partition, string series, Instant from, Instant to, int limit, CancellationToken cancellation) =>
        Read(session => new SeriesReader(session, _zone).Raw(partition, series, from, to, Math.Max(0, limit), cancellation), cancellation);

    /// <inheritdoc/>
    public ValueTask<ProbeWindow> WindowAsync(PartitionKey partition, string series, Instant from, Instant to, CancellationToken cancellation) =>
        Read(session => new SeriesReader(session, _zone).Window(partition, series, from, to, cancellation), cancellation);

    /// <summary>Closes the file after the write in hand; the log is folded into the database.</summary>
    public async ValueTask DisposeAsync()
    {
        await _turn.WaitAsync().ConfigureAwait(false);
        try
        {
            if (_closed) return;
            _closed = true;
            _readers.Dispose();
            _writer.Dispose();
        }
        finally
        {
            _turn.Release();
        }
    }

    private async ValueTask<T> WriteAsync<T>(Func<T> work, CancellationToken cancellation, bool lightly = false)
    {
        await _turn.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            ObjectDisposedException.ThrowIf(_closed, this);
            return lightly ? _writer.Unflushed(work) : _writer.InTransaction(work);
        }
        catch
        {
            _commits.Forget();
            throw;
        }
        finally
        {
            _turn.Release();
        }
    }

    private ValueTask<T> Read<T>(Func<Session, T> work, CancellationToken cancellation) =>
        cancellation.IsCancellationRequested ? ValueTask.FromCanceled<T>(cancellation) : ValueTask.FromResult(_readers.Read(work));
}
