using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>A real broker and its publishers, started here and ended by process id.</summary>
internal sealed class Mosquitto : IAsyncDisposable
{
    private readonly Process _broker;

    private Mosquitto(Process broker, int port) => (_broker, Port) = (broker, port);

    public int Port { get; }

    public static async Task<Mosquitto> StartAsync(string folder)
    {
        var port = FreePort();
        var configuration = Path.Combine(folder, "mosquitto.conf");
        // Nothing of the broker's own stands in the way: no log, no limit of the queue, no disk.
        await File.WriteAllTextAsync(configuration, $"""
            listener {port} 127.0.0.1
            allow_anonymous true
            log_dest none
            persistence false
            max_queued_messages 0
            max_inflight_messages 2000
            set_tcp_nodelay true

            """);
        var mosquitto = new Mosquitto(Start(Find("mosquitto"), "-c", configuration), port);
        await Wait.UntilAsync(() => Answers(port), TimeSpan.FromSeconds(10), "mosquitto answers");
        return mosquitto;
    }

    /// <summary>Starts publishers, one a topic, each sending the lines of a file as messages of their own at QoS 1 as fast as it can.</summary>
    public IReadOnlyList<Process> Publish(IEnumerable<string> topics, string file) =>
        [.. topics.Select(topic => Start("/bin/sh", "-c", $"exec '{Find("mosquitto_pub")}' -h 127.0.0.1 -p {Port} -q 1 -t '{topic}' -l < '{file}'"))];

    /// <summary>Writes a file of lines that read as pH values.</summary>
    public static async Task<string> LinesAsync(string folder, int count)
    {
        var path = Path.Combine(folder, $"{count}.lines");
        if (!File.Exists(path)) await File.WriteAllLinesAsync(path, Enumerable.Range(0, count).Select(i => (7.2 + (i % 37 / 100.0)).ToString("F2", CultureInfo.InvariantCulture)));
        return path;
    }

    public static async Task EndedAsync(IEnumerable<Process> publishers)
    {
        foreach (var publisher in publishers)
        {
            using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(3));
            await publisher.WaitForExitAsync(patience.Token);
            if (publisher.ExitCode != 0) throw new InvalidOperationException($"mosquitto_pub ended with {publisher.ExitCode}");
            publisher.Dispose();
        }
    }

    public static string Version()
    {
        try
        {
            using var help = Process.Start(new ProcessStartInfo(Find("mosquitto"), "-h") { RedirectStandardOutput = true, RedirectStandardError = true });
            return help?.StandardOutput.ReadLine() ?? "unknown";
        }
        catch (FileNotFoundException)
        {
            return "not installed";
        }
    }

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        if (!_broker.HasExited) _broker.Kill();
        await _broker.WaitForExitAsync();
        _broker.Dispose();
    }

    private static Process Start(string program, params string[] arguments) =>
        Process.Start(new ProcessStartInfo(program, arguments)) ?? throw new InvalidOperationException($"{program} did not start");

    private static string Find(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Concat(["/usr/sbin", "/usr/local/sbin"]).Select(f => Path.Combine(f, program)).FirstOrDefault(File.Exists)
        ?? throw new FileNotFoundException($"{program} is not installed");

    private static bool Answers(int port)
    {
        try
        {
            using var client = new TcpClient("127.0.0.1", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
