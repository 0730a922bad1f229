using SQLitePCL;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Copies a database page by page as it stood when the copying began, however much is written meanwhile.</summary>
/// <remarks>
/// The engine begins such a copy anew whenever another connection has written, unless the source is held in a read transaction: then all steps see one moment, and
/// the writer goes on in its log, which cannot be folded in until the copy is done.
/// </remarks>
internal sealed class PageCopy : IDisposable
{
    private readonly Session _from;
    private readonly Session _to;
    private readonly sqlite3_backup _copy;

    public PageCopy(Session from, Session to)
    {
        (_from, _to) = (from, to);
        from.Script("BEGIN");
        _ = from.Prepare("SELECT count(*) FROM sqlite_schema").Scalar();
        _copy = raw.sqlite3_backup_init(to.Handle, "main", from.Handle, "main");
        if (_copy is null || _copy.IsInvalid) throw SqliteFailure.Of(to.Handle, raw.sqlite3_errcode(to.Handle));
    }

    /// <summary>Pages of the source; known after the first step.</summary>
    public long Whole => raw.sqlite3_backup_pagecount(_copy);

    /// <summary>Pages that are copied.</summary>
    public long Done => Whole - raw.sqlite3_backup_remaining(_copy);

    /// <summary>Copies some pages more; false when all are there.</summary>
    public bool Step(int pages)
    {
        var code = raw.sqlite3_backup_step(_copy, pages);
        if (code == raw.SQLITE_OK) return true;
        if (code == raw.SQLITE_DONE) return false;
        throw SqliteFailure.Of(_to.Handle, code);
    }

    public void Dispose()
    {
        _copy?.Dispose();
        if (raw.sqlite3_get_autocommit(_from.Handle) == 0) _from.Script("ROLLBACK");
    }
}
