using System.Net;

namespace PlantWatch.Server.Tests.Peers;

/// <summary>An InfluxDB 1.x server of the test's own: a folder, a free port on loopback, what it holds kept over a restart.</summary>
public sealed class Influxd : IAsyncDisposable
{
    public const string Database = "plantwatch";

    private readonly string _folder = Directory.CreateTempSubdirectory("influxd-").FullName;
    private readonly int _innerPort = Peer.FreePort();
    private readonly HttpClient _http = new();
    private Peer? _server;

    private Influxd(int port) => Port = port;

    public int Port { get; }

    public Uri Url => new($"http://127.0.0.1:{Port}");

    /// <summary>Starts one with an empty database.</summary>
    public static async Task<Influxd> StartAsync()
    {
        var influxd = NotYetStarted();
        await influxd.StartAgainAsync();
        await influxd.AskAsync($"CREATE DATABASE {Database}");
        return influxd;
    }

    /// <summary>One that has its port and does not answer there yet.</summary>
    public static Influxd NotYetStarted() => new(Peer.FreePort());

    /// <summary>Starts it, on what it holds.</summary>
    /// <param name="asksWho">Wants user and password.</param>
    public async Task StartAgainAsync(bool asksWho = false)
    {
        var configuration = Path.Combine(_folder, "influxd.conf");
        await File.WriteAllTextAsync(configuration, $"""
            reporting-disabled = true
            bind-address = "127.0.0.1:{_innerPort}"
            [meta]
              dir = "{_folder}/meta"
            [data]
              dir = "{_folder}/data"
              wal-dir = "{_folder}/wal"
              query-log-enabled = false
            [monitor]
              store-enabled = false
            [http]
              bind-address = "127.0.0.1:{Port}"
              auth-enabled = {(asksWho ? "true" : "false")}
              log-enabled = false

            """);
        _server = Peer.Start("influxd", "-config", configuration);
        await Peer.UntilAsync(Answers, $"influxd answers on port {Port}; it says: {_server.Output}");
    }

    /// <summary>Ends it as a power cut would.</summary>
    public async Task KillAsync()
    {
        if (_server is { } server) await server.KillAsync();
    }

    /// <summary>Asks in its own language, past everything of ours.</summary>
    public async Task<string> AskAsync(string query)
    {
        using var answer = await _http.PostAsync(new Uri(Url, $"/query?db={Database}&epoch=u"), new FormUrlEncodedContent([new("q", query)]));
        return await answer.Content.ReadAsStringAsync();
    }

    /// <summary>Writes as another program would.</summary>
    public async Task WriteAsync(string lines)
    {
        using var answer = await _http.PostAsync(new Uri(Url, $"/write?db={Database}&precision=u"), new StringContent(lines));
        Assert.True(answer.StatusCode == HttpStatusCode.NoContent, await answer.Content.ReadAsStringAsync());
    }

    public async ValueTask DisposeAsync()
    {
        _http.Dispose();
        if (_server is { } server) await server.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
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
