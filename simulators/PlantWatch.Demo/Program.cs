using System.Diagnostics;
using System.Globalization;
using PlantWatch.Server;
using PlantWatch.Simulator;
using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Wire;

namespace PlantWatch.Demo;

/// <summary>Server and simulator in one process, talking through MQTT and HTTP like strangers.</summary>
internal static class DemoProgram
{
    private static async Task<int> Main(string[] args)
    {
        if (DemoOptions.Read(args) is not { } options)
        {
            Console.Error.WriteLine(DemoOptions.Usage);
            return 2;
        }
        var folder = options.Data ?? Directory.CreateTempSubdirectory("plantwatch-demo-").FullName;
        try
        {
            await RunAsync(options, folder);
        }
        finally
        {
            if (options.Data is null) Directory.Delete(folder, recursive: true);
        }
        return 0;
    }

    private static async Task RunAsync(DemoOptions options, string folder)
    {
        var now = DateTimeOffset.UtcNow;
        // On a whole stride, so that samples fall on round times.
        var start = new DateTimeOffset(now.UtcTicks - (now.UtcTicks % Feed.Stride.Ticks), TimeSpan.Zero).AddDays(-options.Days);
        var known = Directory.Exists(folder) && Directory.EnumerateFiles(folder, "*.db").Any();
        var clock = new DemoClock(known ? now : start);
        var (broker, web) = (FreePort.From(1883), FreePort.From(5080));
        var address = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{web}");

        await using var app = PlantWatchServer.Build(Settings(folder, broker), clock, address);
        await app.StartAsync();
        Console.WriteLine($"PlantWatch is at {address}   (MQTT broker 127.0.0.1:{broker}, record in {folder})");
        // Ctrl+C and a polite kill are heard by the host; plant and people stop first, then the server.
        var stopping = app.Lifetime.ApplicationStopping;
        try
        {
            await using var gateways = new Gateways("127.0.0.1", broker);
            await using var echo = new AlarmEcho(line =>
            {
                // Of the history only the landmarks are printed.
                if (clock.IsLive) Console.WriteLine(line);
            });
            await echo.ListenAsync(broker, stopping);
            using var http = new HttpClient { BaseAddress = new Uri(address) };
            await PlayAsync(new SimulatedPlant(ScenarioFile.Load("demo"), start), clock, gateways, http, known, stopping);
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            Console.WriteLine("The plant stands still.");
        }
        finally
        {
            await app.StopAsync(CancellationToken.None);
        }
    }

    private static PlantWatchOptions Settings(string folder, int broker) => new()
    {
        PlantFile = PlantFileIn(folder),
        Data = folder,
        Broker = new BrokerOptions { Mode = BrokerMode.Embedded, Port = broker },
    };

    // A copy: what is saved on the page goes with the folder, and stays with it where the record is kept.
    private static string PlantFileIn(string folder)
    {
        var copy = Path.Combine(Directory.CreateDirectory(folder).FullName, "plant.yaml");
        if (!File.Exists(copy)) File.Copy(Path.Combine(AppContext.BaseDirectory, "plant.yaml"), copy);
        return copy;
    }

    private static async Task PlayAsync(SimulatedPlant plant, DemoClock clock, Gateways gateways, HttpClient http, bool known, CancellationToken cancellation)
    {
        var api = new PublicApi(http);
        var history = true;
        // Of the history only the landmarks are printed; live everything is.
        void Print(string line)
        {
            if (!history) Console.WriteLine(line);
        }
        var feed = new Feed(plant, clock, new Runner(plant, gateways, new CheckDesk(http), Print), new Staff(api, line => Console.WriteLine("  " + line)));
        if (known)
        {
            Console.WriteLine("There is a record already: going on live.");
            feed.PassInSilence();
        }
        else
        {
            var took = Stopwatch.StartNew();
            await feed.CatchUpAsync(new Progress(plant).Show, cancellation);
            Console.WriteLine(await Closing.WordsAsync(api, gateways, took.Elapsed, cancellation));
        }
        history = false;
        Console.WriteLine("Live now. In a few minutes the therapy pool's hypochlorite pump will fail. Ctrl+C ends.");
        await feed.LiveAsync(cancellation);
    }
}
