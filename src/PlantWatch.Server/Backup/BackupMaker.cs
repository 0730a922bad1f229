using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Backup;

/// <summary>Makes a backup of a data folder whose server may go on writing: one moment of the record, and the files that belong to it.</summary>
internal static class BackupMaker
{
    // Counting, hashing and the last flush need a little more than the copy itself.
    private const long Spare = 64 << 20;

    /// <summary>Files of a data folder that go with the record, where they are there: the plant file in force, its packs, the versions that were replaced, and the session at an external broker, under whose name the broker keeps what was not fetched.</summary>
    private static readonly string[] Companions = ["plant.in-force.yaml", "plant.in-force.packs", "plant-files", "broker-session.json"];

    /// <summary>Makes one. The record is copied, looked through by the engine and counted; then the folder gets its name.</summary>
    /// <param name="data">Data folder.</param>
    /// <param name="into">Folder in which the backup is made as a folder of its own.</param>
    /// <param name="at">Now.</param>
    /// <param name="progress">Told how many bytes of the record are copied, of how many.</param>
    /// <param name="cancellation">Ends it; nothing is left behind.</param>
    /// <param name="pagesAStep">Pages copied between two rests.</param>
    /// <returns>The folder of the backup, and what is in it.</returns>
    /// <exception cref="BackupException">There is no record, no room, or the copy is damaged.</exception>
    public static (string Folder, BackupManifest Manifest) Make(string data, string into, Instant at, Action<long, long>? progress, CancellationToken cancellation, int pagesAStep = SqliteCopy.PagesAStep)
    {
        var record = Path.Combine(data, BackupFolder.Record);
        if (!File.Exists(record)) throw new BackupException($"there is no record in {Path.GetFullPath(data)}");
        var whole = Path.Combine(Path.GetFullPath(into), BackupFolder.NameOf(at));
        if (Directory.Exists(whole)) throw new BackupException($"{whole} is there already");
        Directory.CreateDirectory(into);
        RefuseWithoutRoom(record, into);
        var part = whole + BackupFolder.Unfinished;
        try
        {
            Directory.CreateDirectory(part);
            var manifest = Fill(data, part, at, (to, from) => SqliteCopy.Make(from, to, progress, cancellation, pagesAStep));
            cancellation.ThrowIfCancellationRequested();
            Directory.Move(part, whole);
            return (whole, manifest);
        }
        catch
        {
            if (Directory.Exists(part)) Directory.Delete(part, recursive: true);
            throw;
        }
    }

    private static BackupManifest Fill(string data, string part, Instant at, Action<string, string> copyTo)
    {
        var copy = Path.Combine(part, BackupFolder.Record);
        copyTo(copy, Path.Combine(data, BackupFolder.Record));
        // A plant file may be replaced at any time; the journal of the copy names the plan itself, so this one is for people.
        foreach (var name in Companions) Files.CopyAll(Path.Combine(data, name), Path.Combine(part, name));
        var manifest = Count(copy, at);
        manifest.Write(part);
        CheckSums.Write(part);
        return manifest;
    }

    private static BackupManifest Count(string copy, Instant at)
    {
        // A copy of a damaged record must not push the older, good ones out.
        try
        {
            using var archive = SqliteArchive.OpenOfAnyAge(copy);
            if (archive.Damage(quick: true) is [var first, ..]) throw Damaged(first);
            return new BackupManifest(at, archive.Version, CircuitState.CurrentFoldVersion, new FileInfo(copy).Length, archive.Sums());
        }
        catch (StorageException fault) when (!fault.MayPass)
        {
            throw Damaged(fault.Message);
        }
    }

    private static BackupException Damaged(string why) => new($"the record is damaged and its copy was thrown away: {why}");

    private static void RefuseWithoutRoom(string record, string into)
    {
        var log = new FileInfo(record + "-wal");
        var needed = new FileInfo(record).Length + (log.Exists ? log.Length : 0) + Spare;
        var free = new DriveInfo(Path.GetFullPath(into)).AvailableFreeSpace;
        if (free < needed) throw new BackupException($"a backup needs {Files.Size(needed)}, {Files.Size(free)} are free in {Path.GetFullPath(into)}");
    }
}
