using PlantWatch.Server.Hosting;

namespace PlantWatch.Server.Backup;

/// <summary>Puts a backup into an empty data folder. The record gets its name last: a server finds either all of it or nothing.</summary>
internal static class BackupRestore
{
    /// <summary>Proves the backup, copies it and proves the copy.</summary>
    /// <exception cref="BackupException">The backup is not whole, or the folder is not empty; nothing was changed then.</exception>
    public static BackupManifest Into(string data, string backup, BackupCheck check, Action<string> say)
    {
        if (Directory.Exists(data) && Directory.EnumerateFileSystemEntries(data).Any())
            throw new BackupException($"{Path.GetFullPath(data)} is not empty: a backup is put into a folder of its own, and what is there is never written over");
        var manifest = check.Prove(backup);
        using (RecordLock.Take(data)) Copy(backup, data, CheckSums.Read(backup)!);
        say($"copied to {Path.GetFullPath(data)}, every file again as it was written");
        return manifest;
    }

    private static void Copy(string backup, string data, IReadOnlyList<(string Name, string Sum)> files)
    {
        foreach (var (name, sum) in files.Where(f => f.Name != BackupFolder.Manifest))
        {
            var target = Path.Combine(data, name) + BackupFolder.Unfinished;
            Files.Copy(Path.Combine(backup, name), target);
            if (CheckSums.Of(target) != sum) throw new BackupException($"{name} did not arrive as it was: the disk of {Path.GetFullPath(data)} is not to be trusted");
        }

        foreach (var (name, _) in files.Where(f => f.Name != BackupFolder.Manifest).OrderBy(f => f.Name == BackupFolder.Record))
            File.Move(Path.Combine(data, name) + BackupFolder.Unfinished, Path.Combine(data, name));
    }
}
