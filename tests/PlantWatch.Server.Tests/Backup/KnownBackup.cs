using PlantWatch.Core.Quantities;
using PlantWatch.Server.Backup;
using PlantWatch.Server.Tests.Commands;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Backup;

/// <summary>A data folder as a server left it, and a backup of it, in a folder of their own.</summary>
internal sealed class KnownBackup : IDisposable
{
    public static readonly Instant At = Instant.FromUtc(2026, 3, 2, 12);

    private KnownBackup()
    {
    }

    public string Root { get; } = Directory.CreateTempSubdirectory("plantwatch-backup-").FullName;

    public string Data => Path.Combine(Root, "data");

    public string Into => Path.Combine(Root, "backups");

    public string Folder => Path.Combine(Into, BackupFolder.NameOf(At));

    public string Record => Path.Combine(Folder, BackupFolder.Record);

    /// <summary>Two hours of pH every ten seconds and a test.</summary>
    public static async Task<KnownBackup> MakeAsync(bool backUp = true)
    {
        var made = new KnownBackup();
        await new LivedRecord(made.Data, WholeServer.Plant).LiveAsync(2, _ => 7.3, (1, 7.3));
        Directory.CreateDirectory(Path.Combine(made.Data, "plant-files"));
        await File.WriteAllTextAsync(Path.Combine(made.Data, "plant-files", "older.yaml"), "an older one");
        if (backUp) BackupMaker.Make(made.Data, made.Into, At, null, default);
        return made;
    }

    /// <summary>Makes the list of hashes anew, so that only what lies deeper can find out.</summary>
    public void Sign()
    {
        File.Delete(Path.Combine(Folder, CheckSums.File));
        CheckSums.Write(Folder);
    }

    public void Dispose() => Directory.Delete(Root, recursive: true);
}
