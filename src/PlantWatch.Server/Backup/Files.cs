using System.Globalization;

namespace PlantWatch.Server.Backup;

/// <summary>Copies of files and folders, and their sizes in words.</summary>
internal static class Files
{
    /// <summary>Copies a file, or a folder with all in it; nothing where there is neither.</summary>
    public static void CopyAll(string from, string to)
    {
        if (File.Exists(from)) Copy(from, to);
        if (!Directory.Exists(from)) return;
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories)) Copy(file, Path.Combine(to, Path.GetRelativePath(from, file)));
    }

    /// <summary>Copies a file; on disk when this returns.</summary>
    public static void Copy(string from, string to)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(to)!);
        using var source = new FileStream(from, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var target = new FileStream(to, FileMode.CreateNew, FileAccess.Write);
        source.CopyTo(target, 1 << 20);
        target.Flush(flushToDisk: true);
    }

    /// <summary>A size for people, in powers of ten.</summary>
    public static string Size(long bytes) => bytes switch
    {
        >= 1_000_000_000 => string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e9:0.0} GB"),
        >= 1_000_000 => string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e6:0.0} MB"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{bytes / 1e3:0.0} kB"),
    };
}
