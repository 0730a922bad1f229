using System.Net;
using System.Net.Sockets;

namespace PlantWatch.Campaign;

/// <summary>Where things lie and which ports are free.</summary>
internal static class Programs
{
    /// <summary>The server as it was built beside this program.</summary>
    public static string ServerAssembly => Path.Combine(AppContext.BaseDirectory, "PlantWatch.Server.dll");

    /// <summary>The root of the repository.</summary>
    public static string Repository
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "PlantWatch.sln"))) folder = folder.Parent;
            return folder?.FullName ?? throw new DirectoryNotFoundException("this is not run from inside the repository");
        }
    }

    /// <summary>Where a program lies. Daemons hide in sbin, which is often not on the path.</summary>
    public static string Find(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Concat(["/usr/sbin", "/usr/local/sbin", "/usr/bin"])
            .Select(folder => Path.Combine(folder, program)).FirstOrDefault(File.Exists) ?? throw new FileNotFoundException("not installed", program);

    /// <summary>A port that was free a moment ago, below those that the system gives to outgoing connections: one of these could take it meanwhile, or even connect to itself.</summary>
    public static int FreePort()
    {
        while (true)
        {
            var port = Random.Shared.Next(10_000, 32_000);
            try
            {
                using var listener = new TcpListener(IPAddress.Loopback, port);
                listener.Start();
                return port;
            }
            catch (SocketException)
            {
                // Taken: another one.
            }
        }
    }

    /// <summary>Waits until something holds; false when it does not within the time.</summary>
    public static async Task<bool> ComesAboutAsync(Func<Task<bool>> holds, TimeSpan within)
    {
        var deadline = System.Diagnostics.Stopwatch.StartNew();
        while (!await holds())
        {
            if (deadline.Elapsed > within) return false;
            await Task.Delay(20);
        }
        return true;
    }
}
