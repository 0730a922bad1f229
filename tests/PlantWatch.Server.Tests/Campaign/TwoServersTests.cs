using System.Net;
using System.Net.Sockets;
using PlantWatch.Campaign;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Campaign;

/// <summary>Two servers on one record: the second refuses, the first goes on as if nothing had been.</summary>
public sealed class TwoServersTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-two-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [PeerFact("mosquitto_pub", "stdbuf")]
    public async Task The_second_server_on_a_record_refuses_with_a_sentence_and_the_first_loses_nothing()
    {
        var port = Programs.FreePort();
        await using var first = new ServerProcess(_folder, BrokerMode.Embedded, port);
        await File.WriteAllTextAsync(first.PlantFile, new NumberPlant(2).Yaml());
        first.Start();
        Assert.True(await Programs.ComesAboutAsync(first.IsReadyAsync, Patience));
        await using var device = new Device(0, port);
        await device.SayAsync(100);

        await using var second = new ServerProcess(_folder, BrokerMode.Embedded, Programs.FreePort());
        second.Start();
        Assert.True(await second.EndsAsync(Patience));
        Assert.Equal(1, second.ExitCode);
        Assert.Contains(second.Said, line => line.StartsWith("PlantWatch did not start:", StringComparison.Ordinal) && line.Contains(first.Data, StringComparison.Ordinal));

        await device.SayAsync(100);
        Assert.True(await Programs.ComesAboutAsync(() => Task.FromResult(device.Acknowledged == 200), Patience));
        first.AskToEnd();
        Assert.True(await first.EndsAsync(Patience));
        Assert.Equal(200, new PlantWatch.Campaign.Record(Path.Combine(first.Data, "record.db"), first.PlantFile).Rows());
    }

    [PeerFact("stdbuf")]
    public async Task Where_the_pages_port_is_taken_one_sentence_says_so_and_what_had_begun_ends_in_order()
    {
        var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        await using var server = new ServerProcess(_folder, BrokerMode.Embedded, Programs.FreePort());
        await File.WriteAllTextAsync(server.PlantFile, new NumberPlant(2).Yaml());
        server.Start($"export urls=http://{taken.LocalEndpoint}");
        Assert.True(await server.EndsAsync(Patience));
        taken.Stop();
        Assert.Equal(1, server.ExitCode);
        Assert.Single(server.Said, line => line.StartsWith("PlantWatch did not start: the page's port is taken", StringComparison.Ordinal));
        Assert.DoesNotContain(server.Said, line => line.StartsWith("   at ", StringComparison.Ordinal) || line.Contains(" WRN ", StringComparison.Ordinal) || line.Contains(" ERR ", StringComparison.Ordinal));
    }

    [PeerFact("stdbuf")]
    public async Task A_killed_server_leaves_no_lock_that_keeps_the_next_one_out()
    {
        await using var server = new ServerProcess(_folder, BrokerMode.Embedded, Programs.FreePort());
        await File.WriteAllTextAsync(server.PlantFile, new NumberPlant(2).Yaml());
        server.Start();
        Assert.True(await Programs.ComesAboutAsync(server.IsReadyAsync, Patience));
        await server.KillAsync();
        Assert.True(File.Exists(Path.Combine(server.Data, "record.lock")));

        server.Start();
        Assert.True(await Programs.ComesAboutAsync(server.IsReadyAsync, Patience));
    }
}
