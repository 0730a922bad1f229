using Microsoft.Data.Sqlite;
using SQLitePCL;

namespace PlantWatch.Storage.Sqlite;

/// <summary>One connection with its prepared statements. Used by one thread at a time.</summary>
internal sealed class Session : IDisposable
{
    /// <summary>How long a call waits for a lock that another process holds.</summary>
    public static readonly TimeSpan UsualPatience = TimeSpan.FromSeconds(10);

    private readonly SqliteConnection _connection;
    private readonly Dictionary<string, Statement> _statements = new(StringComparer.Ordinal);

    // Commits do not wait for the disk at the moment, or may not: setting it back failed.
    private bool _isLight;

    private Session(SqliteConnection connection) => _connection = connection;

    /// <summary>The connection that writes. FULL: a commit that returned survives a power cut, because an acknowledgement follows it.</summary>
    public static Session OpenWriter(string path, TimeSpan patience) => Open(path, patience,
        """
        PRAGMA journal_mode = WAL;
        PRAGMA synchronous = FULL;
        PRAGMA wal_autocheckpoint = 4000;
        PRAGMA journal_size_limit = 67108864;
        PRAGMA cache_size = -65536;
        PRAGMA temp_store = MEMORY;
        """);

    /// <summary>A connection that reads a steady picture while the writer goes on.</summary>
    public static Session OpenReader(string path) => Open(path, UsualPatience,
        """
        PRAGMA query_only = ON;
        PRAGMA cache_size = -8192;
        PRAGMA temp_store = MEMORY;
        """);

    /// <summary>A connection that cannot write at all and leaves the log as it is when it closes, for a look at a record that another process may be writing.</summary>
    public static Session OpenArchive(string path) => Open(path, UsualPatience, "PRAGMA cache_size = -8192; PRAGMA temp_store = MEMORY;", SqliteOpenMode.ReadOnly);

    /// <summary>A file that is filled with the pages of another one and belongs to nobody until it is whole.</summary>
    public static Session OpenCopy(string path) => Open(path, UsualPatience, "PRAGMA synchronous = FULL; PRAGMA cache_size = -8192;");

    private static Session Open(string path, TimeSpan patience, string pragmas, SqliteOpenMode mode = SqliteOpenMode.ReadWriteCreate)
    {
        // Its own pool would hand out connections without our prepared statements.
        var text = new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, Mode = mode }.ToString();
        var session = new Session(new SqliteConnection(text));
        try
        {
            session._connection.Open();
            _ = raw.sqlite3_busy_timeout(session._connection.Handle!, (int)patience.TotalMilliseconds);
            session.Script(pragmas);
            return session;
        }
        catch (SqliteException e)
        {
            session.Dispose();
            throw new StorageException($"{path} cannot be opened: {e.Message}", mayPass: true);
        }
        catch
        {
            session.Dispose();
            throw;
        }
    }

    /// <summary>The engine's own handle, for what only its C interface can do.</summary>
    public sqlite3 Handle => _connection.Handle ?? throw new InvalidOperationException("the connection is not open");

    /// <summary>The statement for a text, prepared once.</summary>
    public Statement Prepare(string sql)
    {
        if (!_statements.TryGetValue(sql, out var statement))
            _statements.Add(sql, statement = new Statement(_connection, sql));
        return statement;
    }

    /// <summary>Runs statements that are needed once.</summary>
    public void Script(string sql)
    {
        var database = _connection.Handle!;
        var code = raw.sqlite3_exec(database, sql);
        if (code != raw.SQLITE_OK) throw SqliteFailure.Of(database, code);
    }

    /// <summary>Runs work in a transaction that takes the write lock at once: all of it is committed and down on the disk, or none.</summary>
    public T InTransaction<T>(Func<T> work)
    {
        if (_isLight) WaitForTheDiskAgain();
        return Transact(work);
    }

    private T Transact<T>(Func<T> work)
    {
        Prepare("BEGIN IMMEDIATE").Run();
        try
        {
            var result = work();
            Prepare("COMMIT").Run();
            return result;
        }
        catch
        {
            RollBack();
            throw;
        }
    }

    /// <summary>A transaction that does not wait for the disk: whole or not at all, but a power cut soon after may take it away.</summary>
    public T Unflushed<T>(Func<T> work)
    {
        _isLight = true;
        Script("PRAGMA synchronous = NORMAL");
        try
        {
            return Transact(work);
        }
        finally
        {
            TryWaitForTheDiskAgain();
        }
    }

    private void WaitForTheDiskAgain()
    {
        Script("PRAGMA synchronous = FULL");
        _isLight = false;
    }

    // This work is done or undone already. The next that must be down tries again, and fails where it cannot.
    private void TryWaitForTheDiskAgain()
    {
        try
        {
            WaitForTheDiskAgain();
        }
        catch (StorageException)
        {
            _isLight = true;
        }
    }

    private void RollBack()
    {
        foreach (var statement in _statements.Values) statement.Reset();
        // A full disk or a failed write may have rolled back already.
        if (raw.sqlite3_get_autocommit(_connection.Handle!) == 0) Prepare("ROLLBACK").Run();
    }

    public void Dispose()
    {
        foreach (var statement in _statements.Values) statement.Dispose();
        _connection.Dispose();
    }
}
