using System.Security.Cryptography;

namespace PlantWatch.Server.Backup;

/// <summary>SHA-256 of every file of a backup, in the form that <c>sha256sum --check</c> reads, so that a backup can be checked without PlantWatch.</summary>
internal static class CheckSums
{
    /// <summary>Name of the list.</summary>
    public const string File = "SHA256SUMS";

    /// <summary>Writes the list of all files below a folder.</summary>
    public static void Write(string folder)
    {
        var lines = Names(folder).Where(n => n != File).Select(name => $"{Of(Path.Combine(folder, name))}  {name}\n");
        using var list = new FileStream(Path.Combine(folder, File), FileMode.CreateNew, FileAccess.Write);
        list.Write(System.Text.Encoding.UTF8.GetBytes(string.Concat(lines)));
        list.Flush(flushToDisk: true);
    }

    /// <summary>The files of the list with what they should be; null when the list is not there or not one.</summary>
    public static IReadOnlyList<(string Name, string Sum)>? Read(string folder)
    {
        var path = Path.Combine(folder, File);
        if (!System.IO.File.Exists(path)) return null;
        var files = new List<(string, string)>();
        foreach (var line in System.IO.File.ReadLines(path))
        {
            if (line.Length < 67 || line[64..66] != "  " || !IsInside(folder, line[66..])) return null;
            files.Add((line[66..], line[..64]));
        }

        return files.Any(f => f.Item1 == BackupFolder.Record) && files.Any(f => f.Item1 == BackupFolder.Manifest) ? files : null;
    }

    /// <summary>Hash of a file, in hexadecimal digits as the list has them.</summary>
    public static string Of(string path)
    {
        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, 1 << 20, FileOptions.SequentialScan);
        return Convert.ToHexStringLower(SHA256.HashData(file));
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(p => Path.GetRelativePath(folder, p).Replace('\\', '/')).Order(StringComparer.Ordinal);

    // A list from elsewhere must not lead out of its folder.
    private static bool IsInside(string folder, string name) =>
        Path.GetFullPath(Path.Combine(folder, name)).StartsWith(Path.GetFullPath(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal);
}
