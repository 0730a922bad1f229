using Microsoft.Data.Sqlite;
using PlantWatch.Core.Quantities;
using SQLitePCL;

namespace PlantWatch.Storage.Sqlite;

/// <summary>One prepared statement, reused for the life of its session. Bound values stay until bound again.</summary>
/// <remarks>Speaks to the engine directly: a command object with boxed parameters costs more than the insert itself.</remarks>
internal sealed class Statement : IDisposable
{
    private readonly sqlite3 _database;
    private readonly sqlite3_stmt _handle;

    public Statement(SqliteConnection connection, string sql)
    {
        _database = connection.Handle ?? throw new InvalidOperationException("the connection is not open");
        Check(raw.sqlite3_prepare_v3(_database, sql, raw.SQLITE_PREPARE_PERSISTENT, out _handle));
    }

    public Statement Bind(int index, long value)
    {
        Check(raw.sqlite3_bind_int64(_handle, index, value));
        return this;
    }

    public Statement Bind(int index, double value)
    {
        Check(raw.sqlite3_bind_double(_handle, index, value));
        return this;
    }

    public Statement Bind(int index, string value)
    {
        Check(raw.sqlite3_bind_text(_handle, index, value));
        return this;
    }

    public Statement Bind(int index, ReadOnlySpan<byte> value)
    {
        // A null pointer would bind NULL: an empty payload is a payload.
        Check(value.IsEmpty ? raw.sqlite3_bind_zeroblob(_handle, index, 0) : raw.sqlite3_bind_blob(_handle, index, value));
        return this;
    }

    public Statement Bind(int index, Guid value)
    {
        Span<byte> bytes = stackalloc byte[16];
        value.TryWriteBytes(bytes, bigEndian: true, out _);
        return Bind(index, bytes);
    }

    /// <summary>Runs to the end and makes ready for the next run. Returns the rows changed.</summary>
    public int Run()
    {
        while (Next()) { }
        return raw.sqlite3_changes(_database);
    }

    /// <summary>Goes to the next row; after the last one it is ready to run again.</summary>
    public bool Next()
    {
        var code = raw.sqlite3_step(_handle);
        if (code == raw.SQLITE_ROW) return true;
        if (code == raw.SQLITE_DONE)
        {
            Reset();
            return false;
        }
        var failure = SqliteFailure.Of(_database, code);
        Reset();
        throw failure;
    }

    /// <summary>Leaves the rows that were not read.</summary>
    public void Reset() => _ = raw.sqlite3_reset(_handle);

    public long Int64(int column) => raw.sqlite3_column_int64(_handle, column);

    public Instant Instant(int column) => Core.Quantities.Instant.FromUnixMicroseconds(Int64(column));

    public double Double(int column) => raw.sqlite3_column_double(_handle, column);

    public string Text(int column) => raw.sqlite3_column_text(_handle, column).utf8_to_string();

    public byte[] Blob(int column) => raw.sqlite3_column_blob(_handle, column).ToArray();

    public Guid Guid(int column) => new(raw.sqlite3_column_blob(_handle, column), bigEndian: true);

    /// <summary>The first column of the only row; null when there is no row.</summary>
    public long? Scalar()
    {
        long? found = Next() ? Int64(0) : null;
        Reset();
        return found;
    }

    public void Dispose() => _handle.Dispose();

    private void Check(int code)
    {
        if (code != raw.SQLITE_OK) throw SqliteFailure.Of(_database, code);
    }
}
