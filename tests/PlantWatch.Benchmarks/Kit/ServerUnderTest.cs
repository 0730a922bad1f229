using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using PlantWatch.Core.Plant;
using PlantWatch.Server;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Loop;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>The whole server as it runs at a plant, in this process: broker side, loop, record on disk with FULL commits, interface, live hub. Loopback and free ports.</summary>
internal sealed class ServerUnderTest : IAsyncDisposable
{
    private readonly WebApplication _app;

    private ServerUnderTest(WebApplication app) => _app = app;

    public PlantHost Host => _app.Services.GetRequiredService<PlantHost>();

    public IBrokerStatus Broker => _app.Services.GetRequiredService<IBrokerStatus>();

    public int MqttPort => _app.Services.GetRequiredService<EmbeddedBroker>().Port;

    public Uri Address => new(_app.Urls.First());

    /// <summary>Called with what each commit made durable.</summary>
    public Action<StepResult> OnCommit { get; set; } = _ => { };

    /// <summary>Called with the time of each transaction.</summary>
    public Action<TimeSpan> OnTransaction { get; set; } = _ => { };

    /// <param name="folder">Plant file and record; what is there already is gone on with.</param>
    /// <param name="plant">Text of the plant file.</param>
    /// <param name="externalPort">Port of a broker on this machine; 0 makes the server its own broker.</param>
    /// <param name="started">Called before anything can come in.</param>
    public static async Task<ServerUnderTest> StartAsync(string folder, string plant, int externalPort = 0, Action<ServerUnderTest>? started = null)
    {
        var file = Path.Combine(folder, "plant.yaml");
        await File.WriteAllTextAsync(file, plant);
        var options = new PlantWatchOptions
        {
            PlantFile = file, Data = Path.Combine(folder, "data"), Broker = { Mode = externalPort == 0 ? BrokerMode.Embedded : BrokerMode.External, Port = externalPort },
        };
        var app = PlantWatchServer.Build(options, TimeProvider.System, "http://127.0.0.1:0", Quietly);
        var server = new ServerUnderTest(app);
        started?.Invoke(server);
        server.Host.Committed += (_, result) => server.OnCommit(result);
        app.Services.GetRequiredService<Committer>().Took += (time, _) => server.OnTransaction(time);
        await app.StartAsync();
        if (externalPort != 0) await Wait.UntilAsync(() => server.Broker.State.Word == BrokerWord.Connected, TimeSpan.FromSeconds(20), "the server is connected to its broker");
        return server;
    }

    private static void Quietly(WebApplicationBuilder builder)
    {
        builder.Configuration["Serilog:MinimumLevel:Default"] = "Warning";
        builder.Configuration["Serilog:MinimumLevel:Override:Microsoft.Hosting.Lifetime"] = "Warning";
    }

    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
    }
}
