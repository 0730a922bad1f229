using System.Diagnostics;
using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>Where the figures come from. Without it a figure says nothing.</summary>
internal static class Machine
{
    public static string Load() => File.Exists("/proc/loadavg") ? string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ').Take(3)) : "unknown";

    public static IEnumerable<(string What, string Which)> Describe(string folder)
    {
        yield return ("Processor", $"{Field("/proc/cpuinfo", "model name") ?? RuntimeInformation.ProcessArchitecture.ToString()}, {Environment.ProcessorCount} cores");
        yield return ("Memory", Memory());
        yield return ("System", $"{Field("/etc/os-release", "PRETTY_NAME")?.Trim('"') ?? RuntimeInformation.OSDescription}, kernel {FirstLine("/proc/sys/kernel/osrelease")}");
        yield return ("Disk", Disk(folder));
        yield return (".NET", $"{Environment.Version}, {(System.Runtime.GCSettings.IsServerGC ? "server" : "workstation")} garbage collection");
        yield return ("SQLite", Sqlite());
        yield return ("mosquitto", Mosquitto.Version());
    }

    /// <summary>Milliseconds of a 4 KiB append with fsync, as a commit must wait for at least.</summary>
    public static IReadOnlyList<double> Fsync(string folder, int times)
    {
        var path = Path.Combine(folder, "fsync.probe");
        var (block, found) = (new byte[4096], new List<double>(times));
        using (var file = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, 0))
            for (var i = 0; i < times; i++)
            {
                var start = Stopwatch.GetTimestamp();
                file.Write(block);
                file.Flush(flushToDisk: true);
                found.Add(Stopwatch.GetElapsedTime(start).TotalMilliseconds);
            }

        File.Delete(path);
        return found;
    }

    private static string Sqlite()
    {
        using var connection = new SqliteConnection("Data Source=:memory:");
        connection.Open();
        return connection.ServerVersion;
    }

    private static string Memory() =>
        Field("/proc/meminfo", "MemTotal") is { } text && long.TryParse(text.Split(' ')[0], out var kilobytes) ? $"{kilobytes / 1048576.0:F1} GiB" : "unknown";

    private static string Disk(string folder)
    {
        if (!File.Exists("/proc/mounts")) return "unknown";
        var mount = File.ReadLines("/proc/mounts").Select(l => l.Split(' ')).Where(m => folder.StartsWith(m[1], StringComparison.Ordinal)).MaxBy(m => m[1].Length);
        return mount is null ? "unknown" : $"{mount[2]} on {mount[0]}";
    }

    private static string FirstLine(string path) => File.Exists(path) ? File.ReadLines(path).FirstOrDefault() ?? "" : "unknown";

    private static string? Field(string path, string key) =>
        !File.Exists(path) ? null : File.ReadLines(path).FirstOrDefault(l => l.StartsWith(key, StringComparison.Ordinal)) is { } line ? line[(line.IndexOfAny([':', '=']) + 1)..].Trim() : null;
}
