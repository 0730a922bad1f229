using System.Diagnostics;
using System.Globalization;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>A real InfluxDB 1.x server, started here and ended by process id.</summary>
internal sealed class Influxd : IAsyncDisposable
{
    private readonly Process _server;
    private readonly HttpClient _http = new();

    private Influxd(Process server, int port) => (_server, Url) = (server, new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}")));

    public Uri Url { get; }

    /// <summary>The processor time it has used.</summary>
    public TimeSpan Processor
    {
        get
        {
            _server.Refresh();
            return _server.TotalProcessorTime;
        }
    }

    public static async Task<Influxd> StartAsync(string folder)
    {
        var (port, inner) = (Mosquitto.FreePort(), Mosquitto.FreePort());
        var configuration = Path.Combine(folder, "influxd.conf");
        await File.WriteAllTextAsync(configuration, string.Create(CultureInfo.InvariantCulture, $"""
            reporting-disabled = true
            bind-address = "127.0.0.1:{inner}"
            [meta]
              dir = "{folder}/meta"
            [data]
              dir = "{folder}/data"
              wal-dir = "{folder}/wal"
              query-log-enabled = false
            [monitor]
              store-enabled = false
            [http]
              bind-address = "127.0.0.1:{port}"
              log-enabled = false
            [logging]
              level = "error"

            """));
        var start = new ProcessStartInfo("/usr/bin/influxd", ["-config", configuration]) { RedirectStandardError = true, RedirectStandardOutput = true };
        var process = Process.Start(start) ?? throw new InvalidOperationException("influxd did not start");
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        var influxd = new Influxd(process, port);
        await Wait.UntilAsync(influxd.Answers, TimeSpan.FromSeconds(30), "influxd answers");
        return influxd;
    }

    public async Task MakeAsync(string database)
    {
        using var answer = await _http.PostAsync(new Uri(Url, "/query"), new FormUrlEncodedContent([new("q", $"CREATE DATABASE {database}")]));
        answer.EnsureSuccessStatusCode();
    }

    public async ValueTask DisposeAsync()
    {
        _http.Dispose();
        if (!_server.HasExited) _server.Kill();
        await _server.WaitForExitAsync();
        _server.Dispose();
    }

    private bool Answers()
    {
        try
        {
            using var answer = _http.Send(new HttpRequestMessage(HttpMethod.Get, new Uri(Url, "/ping")));
            return answer.IsSuccessStatusCode;
        }
        catch (HttpRequestException)
        {
            return false;
        }
    }
}
