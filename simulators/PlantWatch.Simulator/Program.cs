using PlantWatch.Simulator.Plant;
using PlantWatch.Simulator.Setup;
using PlantWatch.Simulator.Wire;

namespace PlantWatch.Simulator;

/// <summary>The simulator on its own.</summary>
internal static class SimulatorProgram
{
    private static async Task<int> Main(string[] args)
    {
        if (args is ["--help" or "-h", ..]) return Say(0, RunOptions.Usage);
        var (options, error) = RunOptions.Read(args);
        if (options is null) return Say(2, error + Environment.NewLine + RunOptions.Usage);
        try
        {
            return await RunAsync(options).ConfigureAwait(false);
        }
        catch (ScenarioException e)
        {
            return Say(2, e.Message);
        }
    }

    private static async Task<int> RunAsync(RunOptions options)
    {
        var scenario = ScenarioFile.Load(options.Scenario);
        using var stop = new CancellationTokenSource();
        Console.CancelKeyPress += (_, e) =>
        {
            e.Cancel = true;
            stop.Cancel();
        };
        var plant = new SimulatedPlant(scenario, options.From ?? DateTimeOffset.UtcNow);
        if (options.Speed > 10) plant.Cadence = Cadence.Live with { PackedEvery = TimeSpan.FromSeconds(30), PackSpan = TimeSpan.FromSeconds(30), PlainEvery = TimeSpan.FromSeconds(30), PumpLook = TimeSpan.FromSeconds(30) };
        Say(0, $"{scenario.Name}: {scenario.About} Broker {options.Host}:{options.Port}, checks {options.Api?.ToString() ?? "none"}, speed {options.Speed}, from {plant.Now:u}. Ctrl+C ends.");
        await using var gateways = new Gateways(options.Host, options.Port);
        using var http = new HttpClient { BaseAddress = options.Api };
        try
        {
            await new Runner(plant, gateways, options.Api is null ? null : new CheckDesk(http), Console.WriteLine).RunAsync(options.Speed, stop.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            Say(0, $"{gateways.Acknowledged} messages acknowledged over {gateways.Count} connections, {gateways.Retries} sent again.");
        }
        return 0;
    }

    private static int Say(int code, string words)
    {
        (code == 0 ? Console.Out : Console.Error).WriteLine(words);
        return code;
    }
}
