using PlantWatch.Core.Quantities;
using PlantWatch.Server.Backup;
using PlantWatch.Server.Commands.Replay;
using PlantWatch.Server.Hosting;
using PlantWatch.Storage;

namespace PlantWatch.Server.Commands.Backups;

/// <summary>Backup, proof and restore from the command line. 0 when it is well, 1 when a backup could not be made or is not what it should be.</summary>
internal static class BackupCommands
{
    /// <summary>Makes a backup of a data folder, whose server may be running.</summary>
    public static int Make(string data, string into, TextWriter output, TextWriter complaints) => Run(complaints, () =>
    {
        var copying = new Shown(output);
        var (folder, manifest) = BackupMaker.Make(data, into, Instant.From(TimeProvider.System.GetUtcNow()), copying.Tell, CancellationToken.None);
        copying.End();
        output.WriteLine($"{folder}: {Files.Size(manifest.Bytes)}, {manifest.Readings} readings, {string.Join(", ", manifest.Partitions.Select(p => $"{p.Partition} up to batch {p.LastSeq}"))}");
    });

    /// <summary>Proves a backup; it is only read.</summary>
    public static int Verify(string path, TextWriter output, TextWriter complaints) => Run(complaints, () =>
    {
        var manifest = Check(output).Prove(BackupFolder.Meant(path));
        output.WriteLine($"good: the record as it stood on {manifest.MadeAt}");
    });

    /// <summary>Puts a backup into an empty data folder.</summary>
    public static int Restore(string path, string data, TextWriter output, TextWriter complaints) => Run(complaints, () =>
    {
        var manifest = BackupRestore.Into(data, BackupFolder.Meant(path), Check(output), output.WriteLine);
        output.WriteLine($"restored: the record as it stood on {manifest.MadeAt}. Start the server with PlantWatch__Data={Path.GetFullPath(data)}; the plant file that was in force is {LastGoodPlan.PathIn(Path.GetFullPath(data))}");
    });

    private static BackupCheck Check(TextWriter output) => new(output.WriteLine, new Shown(output).Tell);

    private static int Run(TextWriter complaints, Action work)
    {
        try
        {
            work();
            return 0;
        }
        catch (Exception fault) when (fault is BackupException or StorageException or IOException or UnauthorizedAccessException or RecordInUseException)
        {
            complaints.WriteLine(fault.Message);
            return 1;
        }
    }

    /// <summary>Shows how far something is whose size is known only when it has begun. What begins anew is shown anew.</summary>
    private sealed class Shown(TextWriter output)
    {
        private Progress? _progress;
        private long _done;

        public void Tell(long done, long whole)
        {
            if (done < _done) End();
            _progress ??= new Progress(output, output == Console.Out && !Console.IsOutputRedirected, whole);
            _progress.Add(done - _done);
            _done = done;
            if (done >= whole) End();
        }

        public void End()
        {
            _progress?.End();
            (_progress, _done) = (null, 0);
        }
    }
}
