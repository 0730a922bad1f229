using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Storage.Sqlite;

/// <summary>A record that is only read: nothing of it can be changed, and a server may go on writing it meanwhile. Used by one thread at a time.</summary>
public sealed partial class SqliteArchive : IDisposable
{
    private readonly Session _session;
    private readonly SeriesReader _series;
    private readonly RecordReader _record;

    private SqliteArchive(Session session)
    {
        _session = session;
        // The zone decides what a day is, and no days are asked for here.
        (_series, _record) = (new SeriesReader(session, TimeZoneInfo.Utc), new RecordReader(session));
    }

    /// <summary>Opens a record that is there.</summary>
    /// <param name="path">Path of the database file.</param>
    /// <exception cref="UnusableDatabaseException">The file belongs to another program or to another version of PlantWatch.</exception>
    /// <exception cref="StorageException">The file cannot be opened.</exception>
    public static SqliteArchive Open(string path) => Open(path, Migrations.RefuseOtherForm);

    /// <summary>Opens a record that may have been left by an older PlantWatch, to count and to fold what it holds.</summary>
    /// <param name="path">Path of the database file.</param>
    /// <exception cref="UnusableDatabaseException">The file belongs to another program or to a newer PlantWatch.</exception>
    /// <exception cref="StorageException">The file cannot be opened.</exception>
    public static SqliteArchive OpenOfAnyAge(string path) => Open(path, Migrations.RefuseNewer);

    private static SqliteArchive Open(string path, Action<Session, string> refuse)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        var session = Session.OpenArchive(Path.GetFullPath(path));
        try
        {
            refuse(session, path);
            return new SqliteArchive(session);
        }
        catch
        {
            session.Dispose();
            throw;
        }
    }

    /// <summary>Raw readings in time order from the start (included) to the end (excluded), at most the first <paramref name="limit"/>.</summary>
    public IReadOnlyList<StoredReading> Raw(PartitionKey partition, string series, Instant from, Instant to, int limit = int.MaxValue) =>
        _series.Raw(partition, series, from, to, limit, CancellationToken.None);

    /// <summary>The time before which raw readings were let go, the latest of all series of a partition; never when none was.</summary>
    public Instant RawFrom(PartitionKey partition) => _series.RawFrom(partition, null);

    /// <summary>What a series did in a window; see <see cref="ISeriesStore.WindowAsync"/>.</summary>
    public ProbeWindow Window(PartitionKey partition, string series, Instant from, Instant to) => _series.Window(partition, series, from, to, CancellationToken.None);

    /// <summary>Rows of the record, newest first by <see cref="RecordEntry.HappenedAt"/>.</summary>
    public IReadOnlyList<RecordEntry> Entries(PartitionKey partition, EntryQuery query) => _record.Entries(partition, query);

    /// <summary>True when the record holds a partition.</summary>
    public bool Holds(PartitionKey partition) => _record.LastSeq(partition) > 0;

    /// <summary>Version of its form: number of the last migration that ran on it.</summary>
    public long Version => Migrations.VersionOf(_session);

    /// <summary>What it holds, by partition.</summary>
    public IReadOnlyList<PartitionSums> Sums() => SumsReader.Read(_session);

    /// <summary>What the engine finds wrong with the file; nothing when it is whole.</summary>
    /// <param name="quick">Without the comparison of indexes with their tables, which takes most of the time.</param>
    public IReadOnlyList<string> Damage(bool quick = false) => SumsReader.Damage(_session, quick);

    /// <inheritdoc/>
    public void Dispose() => _session.Dispose();
}
