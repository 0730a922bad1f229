using PlantWatch.Server;
using PlantWatch.Server.Commands;
using PlantWatch.Server.Hosting;

if (CommandLine.Run(args, Console.Out, Console.Error) is { } answer) return answer;

var configuration = new ConfigurationBuilder()
    .AddJsonFile(Path.Combine(AppContext.BaseDirectory, "appsettings.json"), optional: true)
    .AddEnvironmentVariables()
    .AddCommandLine(args)
    .Build();
var options = configuration.GetSection("PlantWatch").Get<PlantWatchOptions>() ?? new PlantWatchOptions();
try
{
    await using var app = PlantWatchServer.Build(options, TimeProvider.System, configuration["urls"] ?? "http://127.0.0.1:5080");
    await app.RunAsync();
    return 0;
}
catch (Exception fault) when (StartFailure.Explain(fault) is { } words)
{
    await Console.Error.WriteLineAsync($"PlantWatch did not start: {words}");
    return 1;
}
