using System.Text.Json;
using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Backup;

/// <summary>What a backup holds, written down when it was made.</summary>
/// <param name="MadeAt">When it was begun: what came later is not in it.</param>
/// <param name="Version">Form of the record: number of its last migration.</param>
/// <param name="FoldVersion">Fold that the program had which made the backup.</param>
/// <param name="Bytes">Size of the copy of the record.</param>
/// <param name="Partitions">What it holds of each circuit, and of the place for strays.</param>
internal sealed record BackupManifest(Instant MadeAt, long Version, int FoldVersion, long Bytes, IReadOnlyList<PartitionSums> Partitions)
{
    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web) { WriteIndented = true, IgnoreReadOnlyProperties = true, RespectNullableAnnotations = true };

    /// <summary>Raw readings of all partitions.</summary>
    public long Readings => Partitions.Sum(p => p.Readings);

    /// <summary>Writes it into the folder of a backup.</summary>
    public void Write(string folder)
    {
        using var file = new FileStream(Path.Combine(folder, BackupFolder.Manifest), FileMode.CreateNew, FileAccess.Write);
        JsonSerializer.Serialize(file, this, Form);
        file.Flush(flushToDisk: true);
    }

    /// <summary>Reads the one of a backup.</summary>
    /// <exception cref="JsonException">It says something else.</exception>
    public static BackupManifest Read(string folder) =>
        JsonSerializer.Deserialize<BackupManifest>(File.ReadAllBytes(Path.Combine(folder, BackupFolder.Manifest)), Form) ?? throw new JsonException("the manifest is empty");
}
