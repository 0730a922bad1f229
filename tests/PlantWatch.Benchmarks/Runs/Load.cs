using System.Diagnostics;
using System.Globalization;
using PlantWatch.Benchmarks.Kit;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>A thousand probes on one machine: memory and processor of the server in a process of its own.</summary>
internal sealed class Load : IBenchmark
{
    private const int Devices = 100;
    private const int ProbesEach = 10;
    private const int Browsers = 20;

    public string Name => "load";

    public string Title => "1,000 probes at 1 Hz";

    public string Method =>
        "The server as a process of its own with its embedded broker; a hundred devices with ten probes each publish a reading a probe a second, QoS 1. Memory is resident set, processor is user and system time of that process alone. "
        + "Baseline: the same process idle, with its plant loaded.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        await using var server = await ServerProcess.StartAsync(bench.NewFolder("server"), Plants.File(Devices * ProbesEach, only: "conductivity"));
        // The first seconds belong to the compiler of the runtime.
        await Task.Delay(TimeSpan.FromSeconds(bench.Of(10, 2)));
        var idle = await server.WatchAsync(() => Task.Delay(TimeSpan.FromSeconds(bench.Of(10, 3))));
        await using var load = await PubackLoad.ConnectAsync(server.MqttPort, Devices);
        var devices = new PacedDevices(load, Devices, ProbesEach, aSecondEach: ProbesEach);
        var busy = await server.WatchAsync(() => devices.RunAsync(TimeSpan.FromSeconds(bench.Of(60, 8)), (_, _) => { }));
        var (sent, missed, acknowledged) = (devices.Acknowledged.Count, devices.Missed, devices.Acknowledged);

        var pages = new List<PageWatch>();
        for (var i = 0; i < Browsers; i++) pages.Add(await PageWatch.ConnectAsync(server.Address));
        var watched = await server.WatchAsync(() => devices.RunAsync(TimeSpan.FromSeconds(bench.Of(30, 8)), pages[0].Note));
        await Task.Delay(300);
        var seen = pages[0].Milliseconds;
        foreach (var page in pages) await page.DisposeAsync();
        return [
            Row("no browser", busy, idle),
            new Row("PUBACK, no browser, ms", $"{Say.Tails(acknowledged)}; {sent:#,0} sent, {missed:#,0} late"),
            Row($"{Browsers} live clients", watched, idle, "≤ 1 core, ≤ 250 MB"),
            new Row($"Publish to page with {Browsers} live clients, ms", Say.Tails(seen), "", "", "p99 ≤ 250 ms"),
        ];
    }

    private static Row Row(string what, Watched busy, Watched idle, string toReach = "") => new(
        $"Processor and memory, {what}", $"{Say.Number(busy.Cores)} cores, {Say.Number(busy.Megabytes)} MB (at most {Say.Number(busy.MostMegabytes)})",
        $"{Say.Number(idle.Cores)} cores, {Say.Number(idle.Megabytes)} MB", "", toReach);

    private sealed record Watched(double Cores, double Megabytes, double MostMegabytes);

    private sealed class ServerProcess(Process process, int mqttPort, Uri address) : IAsyncDisposable
    {
        public int MqttPort => mqttPort;

        public Uri Address => address;

        public static async Task<ServerProcess> StartAsync(string folder, string plant)
        {
            var file = Path.Combine(folder, "plant.yaml");
            await File.WriteAllTextAsync(file, plant);
            var (mqtt, http) = (Mosquitto.FreePort(), Mosquitto.FreePort());
            var start = new ProcessStartInfo(
                Environment.ProcessPath is { } path && Path.GetFileNameWithoutExtension(path) == "dotnet" ? path : "dotnet",
                ["exec", Path.Combine(AppContext.BaseDirectory, "PlantWatch.Server.dll"), $"--PlantWatch:PlantFile={file}", $"--PlantWatch:Data={Path.Combine(folder, "data")}",
                    $"--PlantWatch:Broker:Port={mqtt}", $"--urls=http://127.0.0.1:{http}"]);
            start.Environment["Serilog__MinimumLevel__Default"] = "Warning";
            start.Environment["Serilog__MinimumLevel__Override__Microsoft.Hosting.Lifetime"] = "Warning";
            var server = new ServerProcess(Process.Start(start) ?? throw new InvalidOperationException("the server did not start"), mqtt, new Uri($"http://127.0.0.1:{http}"));
            using var client = new HttpClient();
            await Wait.UntilAsync(() => server.Answers(client), TimeSpan.FromSeconds(30), "the server answers");
            return server;
        }

        /// <summary>What the process uses while something goes on; memory is the median of samples.</summary>
        public async Task<Watched> WatchAsync(Func<Task> meanwhile)
        {
            process.Refresh();
            var (start, cpu, samples) = (Stopwatch.GetTimestamp(), process.TotalProcessorTime, new List<double>());
            var going = meanwhile();
            while (!going.IsCompleted)
            {
                samples.Add(Megabytes());
                await Task.WhenAny(going, Task.Delay(500));
            }

            await going;
            process.Refresh();
            return new Watched((process.TotalProcessorTime - cpu) / Stopwatch.GetElapsedTime(start), Percentile.Median(samples), samples.Max());
        }

        public async ValueTask DisposeAsync()
        {
            if (!process.HasExited) process.Kill();
            await process.WaitForExitAsync();
            process.Dispose();
        }

        private bool Answers(HttpClient client)
        {
            try
            {
                using var answer = client.GetAsync(new Uri(address, "/api/v1/site")).GetAwaiter().GetResult();
                return answer.IsSuccessStatusCode;
            }
            catch (HttpRequestException)
            {
                if (process.HasExited) throw new InvalidOperationException($"the server ended with {process.ExitCode}");
                return false;
            }
        }

        private double Megabytes()
        {
            var line = File.ReadLines($"/proc/{process.Id}/status").First(l => l.StartsWith("VmRSS", StringComparison.Ordinal));
            return long.Parse(line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture) / 1024.0;
        }
    }
}
