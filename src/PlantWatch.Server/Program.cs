using PlantWatch.Server;
using PlantWatch.Server.Commands;
using PlantWatch.Server.Hosting;

if (CommandLine.Run(args, Console.Out, Console.Error) is { } answer) return answer;

var configuration = Settings.Read(args);
var options = Settings.Of(configuration);
try
{
    await using var app = PlantWatchServer.Build(options, TimeProvider.System, configuration["urls"] ?? "http://127.0.0.1:5080");
    await RunAsync(app);
    return 0;
}
catch (Exception fault) when (StartFailure.Explain(fault) is { } words)
{
    await Console.Error.WriteLineAsync($"PlantWatch did not start: {words}");
    return 1;
}

static async Task RunAsync(WebApplication app)
{
    try
    {
        await app.StartAsync();
    }
    catch
    {
        // What has begun is ended in order, with its last batch and snapshots, before the record is closed. Why it did not start is what counts.
        await app.StopAsync().ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        throw;
    }

    await app.WaitForShutdownAsync();
}
