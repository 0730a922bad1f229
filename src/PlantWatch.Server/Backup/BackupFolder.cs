using System.Globalization;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Backup;

/// <summary>A backup is a folder named by the moment it was begun; until it is whole its name ends in ".part".</summary>
internal static class BackupFolder
{
    /// <summary>The copy of the record in it.</summary>
    public const string Record = "record.db";

    /// <summary>What the copy holds, counted.</summary>
    public const string Manifest = "manifest.json";

    /// <summary>End of the name of one that is not whole yet.</summary>
    public const string Unfinished = ".part";

    private const string Prefix = "plantwatch-";
    private const string Moment = "yyyyMMdd'T'HHmmss'Z'";

    /// <summary>Name of a backup begun at a moment, whole seconds of UTC.</summary>
    public static string NameOf(Instant at) => Prefix + at.ToDateTimeOffset().ToString(Moment, CultureInfo.InvariantCulture);

    /// <summary>When the backup of a name was begun; null when this is no name of a whole backup.</summary>
    public static Instant? TimeOf(string name) =>
        name.StartsWith(Prefix, StringComparison.Ordinal)
        && DateTimeOffset.TryParseExact(name[Prefix.Length..], Moment, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at)
            ? Instant.From(at) : null;

    /// <summary>Whole backups in a folder, newest first. Anything else that lies there is not looked at.</summary>
    public static IReadOnlyList<(Instant At, string Path)> In(string folder) => !Directory.Exists(folder) ? [] :
    [
        .. from path in Directory.EnumerateDirectories(folder)
           let at = TimeOf(Path.GetFileName(path))
           where at is not null && File.Exists(Path.Combine(path, CheckSums.File))
           orderby at descending
           select (at.Value, path),
    ];

    /// <summary>What begun backups left that never became whole.</summary>
    public static IEnumerable<string> Leftovers(string folder) => !Directory.Exists(folder) ? [] :
        Directory.EnumerateDirectories(folder, Prefix + "*" + Unfinished).Where(p => TimeOf(Path.GetFileNameWithoutExtension(p)) is not null);

    /// <summary>The backup that somebody means who names its folder or a file in it.</summary>
    public static string Meant(string path) => Path.GetFullPath(System.IO.File.Exists(path) ? Path.GetDirectoryName(Path.GetFullPath(path))! : path);
}
