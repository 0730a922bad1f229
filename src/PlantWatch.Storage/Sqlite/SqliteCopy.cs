using System.Diagnostics;

namespace PlantWatch.Storage.Sqlite;

/// <summary>A copy of a record that a server may be writing: a file of its own, as it stood at one moment, flushed to disk.</summary>
public static class SqliteCopy
{
    /// <summary>Pages of 4 KiB copied between two rests, usually.</summary>
    public const int PagesAStep = 256;

    /// <summary>Copies a record. Takes no lock that a writer would wait for, and rests as long as it works.</summary>
    /// <param name="from">Path of the record; it is only read.</param>
    /// <param name="to">Path of the copy; there must be no file yet.</param>
    /// <param name="progress">Told after each step how many bytes are copied, of how many.</param>
    /// <param name="cancellation">Stops between two steps.</param>
    /// <param name="pagesAStep">Pages copied between two rests.</param>
    /// <exception cref="UnusableDatabaseException">The record belongs to another program or to a newer PlantWatch.</exception>
    /// <exception cref="StorageException">It cannot be read, or the copy not written; what there is of the copy is of no use.</exception>
    public static void Make(string from, string to, Action<long, long>? progress, CancellationToken cancellation, int pagesAStep = PagesAStep)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(to);
        if (File.Exists(to)) throw new StorageException($"{to} is there already", mayPass: false);
        using (var source = Session.OpenArchive(from))
        {
            Migrations.RefuseOldEngine(source);
            Migrations.RefuseNewer(source, from);
            using var target = Session.OpenCopy(to);
            Copy(source, target, pagesAStep, progress, cancellation);
        }

        using var whole = Session.OpenCopy(to);
        // A file by itself, that can be read where nothing can be written; who writes it again turns the log on again. It waits for the disk.
        whole.Script("PRAGMA journal_mode = DELETE");
    }

    private static void Copy(Session source, Session target, int pagesAStep, Action<long, long>? progress, CancellationToken cancellation)
    {
        var pageSize = source.Prepare("PRAGMA page_size").Scalar() ?? 0;
        using var copy = new PageCopy(source, target);
        while (true)
        {
            cancellation.ThrowIfCancellationRequested();
            var began = Stopwatch.GetTimestamp();
            if (!copy.Step(pagesAStep)) break;
            var worked = Stopwatch.GetElapsedTime(began);
            progress?.Invoke(copy.Done * pageSize, copy.Whole * pageSize);
            cancellation.WaitHandle.WaitOne(worked);
        }

        progress?.Invoke(copy.Whole * pageSize, copy.Whole * pageSize);
    }
}
