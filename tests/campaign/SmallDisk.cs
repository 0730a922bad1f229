using System.Diagnostics;

namespace PlantWatch.Campaign;

/// <summary>A disk of a few megabytes that can be filled and cleared: a memory file system, where this process may mount one.</summary>
internal sealed class SmallDisk : IDisposable
{
    private readonly string _filler;

    private SmallDisk(string folder) => (Folder, _filler) = (folder, Path.Combine(folder, "filler"));

    public string Folder { get; }

    /// <summary>Bytes left for a file.</summary>
    public long Room => new DriveInfo(Folder).AvailableFreeSpace;

    /// <summary>Mounts one; null where that is not allowed.</summary>
    public static SmallDisk? Mount(int megabytes)
    {
        var folder = Directory.CreateTempSubdirectory("plantwatch-disk-").FullName;
        if (Run("mount", "-t", "tmpfs", "-o", $"size={megabytes}m", "none", folder)) return new SmallDisk(folder);
        Directory.Delete(folder);
        return null;
    }

    /// <summary>Writes until nothing more goes in.</summary>
    public void Fill()
    {
        using var file = new FileStream(_filler, FileMode.Append, FileAccess.Write, FileShare.Read, bufferSize: 0);
        var block = new byte[4096];
        try
        {
            while (true) file.Write(block);
        }
        catch (IOException)
        {
            // Full, which was wanted.
        }
    }

    /// <summary>Gives the room back.</summary>
    public void Clear() => File.Delete(_filler);

    public void Dispose()
    {
        Run("umount", Folder);
        Directory.Delete(Folder);
    }

    private static bool Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardError = true, RedirectStandardOutput = true };
        try
        {
            using var process = Process.Start(start)!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
