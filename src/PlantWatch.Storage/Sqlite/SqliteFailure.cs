using SQLitePCL;

namespace PlantWatch.Storage.Sqlite;

/// <summary>The engine's error codes as failures of the port.</summary>
internal static class SqliteFailure
{
    public static StorageException Of(sqlite3 database, int code)
    {
        var words = $"SQLite error {raw.sqlite3_extended_errcode(database)}: {raw.sqlite3_errmsg(database).utf8_to_string()}";
        return (code & 0xFF) == raw.SQLITE_NOTADB ? new UnusableDatabaseException(words) : new StorageException(words, MayPass(code & 0xFF));
    }

    private static bool MayPass(int code) =>
        code is raw.SQLITE_BUSY or raw.SQLITE_LOCKED or raw.SQLITE_FULL or raw.SQLITE_IOERR or raw.SQLITE_NOMEM or raw.SQLITE_INTERRUPT or raw.SQLITE_CANTOPEN;
}
