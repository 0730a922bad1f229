using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Api;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Storage;

namespace PlantWatch.Server.Tests.Whole;

/// <summary>The whole server as it runs at a plant: embedded broker, record on disk, interface, live hub; on loopback and free ports.</summary>
internal sealed class WholeServer : IAsyncDisposable
{
    public const string Plant = """
        site:
          name: Bramble Street Baths
          time_zone: Europe/London
        products:
          - id: acid
            name: Hydrochloric acid
            kind: hydrochloric_acid
            strength_percent: 10
        circuits:
          - id: hall
            name: Hall
            pools:
              - id: main
                name: Main pool
                kind: swimming
                setting: indoor
                disinfectant: chlorine
                volume_m3: 400
                limits:
                  - measurand: ph
                    low: 7.2
                    high: 7.6
                    source: test
            probes:
              - id: ph
                name: pH
                pool: main
                measurand: ph
                origin: raw
                topic: hall/ph
                format: number
                range: [0, 14]
                every_seconds: 1
              - id: water
                name: Temperature
                pool: main
                measurand: temperature
                origin: raw
                topic: hall/pack
                format: senml_json
                record: "urn:dev:ops:hall:temperature"
                range: [0, 60]
                every_seconds: 1
              - id: panel-ph
                name: pH on the panel
                pool: main
                measurand: ph
                origin: panel_scaled
                topic: hall/panel
                format: number
                range: [0, 14]
                every_seconds: 1
            pumps:
              - id: acid-pump
                name: Acid pump
                pool: main
                product: acid
                state_topic: hall/acid/state
                tank_topic: hall/acid/tank
                tank_litres: 100
        """;

    private readonly WebApplication _app;

    private WholeServer(WebApplication app, string folder)
    {
        (_app, Folder, Address) = (app, folder, new Uri(app.Urls.First()));
        Http = new HttpClient { BaseAddress = Address };
        MqttPort = app.Services.GetService<EmbeddedBroker>()?.Port ?? app.Services.GetRequiredService<PlantWatchOptions>().Broker.Port;
    }

    public string Folder { get; }
    public HttpClient Http { get; }
    public int MqttPort { get; }
    public Uri Address { get; }
    public int Port => Address.Port;
    public PlantHost Host => _app.Services.GetRequiredService<PlantHost>();
    public Server.Paper.PaperTurn PaperTurn => _app.Services.GetRequiredService<Server.Paper.PaperTurn>();
    public Server.Paper.PaperDesk PaperDesk => _app.Services.GetRequiredService<Server.Paper.PaperDesk>();
    public Server.Api.ExportTurn ExportTurn => _app.Services.GetRequiredService<Server.Api.ExportTurn>();
    public IRecordStore Record => _app.Services.GetRequiredService<IRecordStore>();
    public ISeriesStore Series => _app.Services.GetRequiredService<ISeriesStore>();

    /// <summary>Starts it.</summary>
    /// <param name="folder">Where its record lies; null for a fresh one.</param>
    /// <param name="plant">The plant file, where the folder has none yet.</param>
    /// <param name="port">Port of the page and the interface; 0 for a free one.</param>
    /// <param name="set">Sets further options.</param>
    /// <param name="clock">Its clock; null for the real one.</param>
    public static async Task<WholeServer> StartAsync(string? folder = null, string plant = Plant, int port = 0, Action<PlantWatchOptions>? set = null, TimeProvider? clock = null)
    {
        folder ??= Directory.CreateTempSubdirectory("plantwatch-whole-").FullName;
        var file = Path.Combine(folder, "plant.yaml");
        if (!File.Exists(file)) await File.WriteAllTextAsync(file, plant);
        var options = new PlantWatchOptions { PlantFile = file, Data = Path.Combine(folder, "data"), Broker = { Port = 0 } };
        set?.Invoke(options);
        var app = PlantWatchServer.Build(options, clock ?? TimeProvider.System, $"http://127.0.0.1:{port}");
        await app.StartAsync();
        return new WholeServer(app, folder);
    }

    /// <summary>Stops it and starts it again on the same record and the same port.</summary>
    public async Task<WholeServer> RestartAsync()
    {
        await StopAsync();
        return await StartAsync(Folder, port: Port);
    }

    public async Task StopAsync()
    {
        Http.Dispose();
        await _app.StopAsync();
        await _app.DisposeAsync();
    }

    public async Task PublishAsync(string topic, string payload, int qos = 1) => await PublishAsync(topic, Encoding.UTF8.GetBytes(payload), qos);

    /// <summary>Publishes with mosquitto's own client, which ends when the broker has acknowledged.</summary>
    public async Task PublishAsync(string topic, byte[] payload, int qos = 1, params string[] more)
    {
        await using var client = Peer.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", $"{MqttPort}", "-q", $"{qos}", "-t", topic, "-s", .. more]);
        await client.Input.BaseStream.WriteAsync(payload);
        client.Input.Close();
        await client.ExitAsync();
    }

    /// <summary>One client that publishes each line as a message of its own.</summary>
    public async Task PublishLinesAsync(string topic, IEnumerable<string> lines)
    {
        await using var client = Peer.Start("mosquitto_pub", "-h", "127.0.0.1", "-p", $"{MqttPort}", "-q", "1", "-t", topic, "-l");
        foreach (var line in lines) await client.Input.WriteLineAsync(line);
        client.Input.Close();
        await client.ExitAsync();
    }

    public async Task<T> GetAsync<T>(string path) => await Http.GetFromJsonAsync<T>(path, PlantJson.Options) ?? throw new InvalidOperationException(path);

    public Task<LedgerView> SumsAsync() => GetAsync<HealthView>("/api/v1/health-view").ContinueWith(h => h.Result.Ledger, TaskScheduler.Default);

    public async Task<HttpResponseMessage> PutAsync(string path, object body) => await Http.PutAsync(path, Json(body));

    public async Task<HttpResponseMessage> PostAsync(string path, object body) => await Http.PostAsync(path, Json(body));

    public static async Task<T> ReadAsync<T>(HttpResponseMessage response)
    {
        Assert.True(response.IsSuccessStatusCode, $"{response.StatusCode}: {await response.Content.ReadAsStringAsync()}");
        return await response.Content.ReadFromJsonAsync<T>(PlantJson.Options) ?? throw new InvalidOperationException("empty answer");
    }

    public static CheckRequest Check(Instant sampledAt, params PlantWatch.Core.Readings.TestResult[] results) => new()
    {
        PoolId = "main", SampledAt = sampledAt, EnteredAt = sampledAt, Who = "R. Castellan", Point = PlantWatch.Core.Readings.SamplePoint.Pool, Results = results,
    };

    public static Instant Now => Instant.From(TimeProvider.System.GetUtcNow());

    public async ValueTask DisposeAsync()
    {
        await StopAsync();
        Directory.Delete(Folder, recursive: true);
    }

    private static StringContent Json(object body) => new(JsonSerializer.Serialize(body, body.GetType(), PlantJson.Options), Encoding.UTF8, "application/json");
}
