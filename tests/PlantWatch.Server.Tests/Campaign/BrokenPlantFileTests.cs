using PlantWatch.Campaign;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Campaign;

/// <summary>Killed, and somebody broke the plant file before it was started again.</summary>
public sealed class BrokenPlantFileTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-broken-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [PeerFact("mosquitto_pub", "stdbuf")]
    public async Task It_goes_on_with_the_plant_file_that_was_last_in_force_and_what_was_not_acknowledged_comes_again()
    {
        var port = Programs.FreePort();
        await using var server = new ServerProcess(_folder, BrokerMode.Embedded, port);
        await File.WriteAllTextAsync(server.PlantFile, new NumberPlant(2).Yaml());
        server.Start();
        Assert.True(await Programs.ComesAboutAsync(server.IsReadyAsync, Patience));
        await using var device = new Device(0, port);
        await device.SayAsync(1000);
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(device.Acknowledged > 0), Patience));

        await server.KillAsync();
        await File.WriteAllTextAsync(server.PlantFile, "circuits: [");
        server.Start();

        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(device.Acknowledged == device.Said), Patience), string.Join('\n', server.Said));
        server.AskToEnd();
        Assert.True(await server.EndsAsync(Patience));
        await File.WriteAllTextAsync(server.PlantFile, new NumberPlant(2).Yaml());
        var record = new PlantWatch.Campaign.Record(Path.Combine(server.Data, "record.db"), server.PlantFile);
        Assert.Equal(default, Tally.Of(record.Values(NumberPlant.Circuit(0), NumberPlant.Probe(0)), device.Said, device.IsAcknowledged));
        Assert.Equal(0, (await record.SumsAsync()).Refused);
    }
}
