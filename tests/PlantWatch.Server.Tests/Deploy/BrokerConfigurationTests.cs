using System.Globalization;
using System.Net.Sockets;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Deploy;

/// <summary>The configuration that the containers use, run by a real mosquitto. Only where it listens and where it keeps its files is exchanged.</summary>
public sealed class BrokerConfigurationTests : IAsyncLifetime
{
    private const int Messages = 3000; // three times what mosquitto keeps by default
    private const int Window = 200; // autosave_interval
    private readonly string _folder = Directory.CreateTempSubdirectory("broker-").FullName;
    private readonly int _port = Peer.FreePort();
    private Peer? _broker;

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        if (_broker is { } broker) await broker.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [PeerFact("mosquitto", "mosquitto_pub", "mosquitto_sub")]
    public async Task What_came_while_the_server_was_away_waits_for_it_also_over_a_restart_of_the_broker()
    {
        await StartAsync();
        await TheServerGoesAwayAsync();
        await PublishAsync();
        await _broker!.StopAsync();
        await StartAsync();
        Assert.Equal(Enumerable.Range(1, Messages), await TheServerComesBackAsync(Messages));
    }

    [PeerFact("mosquitto", "mosquitto_pub", "mosquitto_sub")]
    public async Task A_broker_that_is_killed_loses_no_more_than_the_window_that_its_configuration_names()
    {
        await StartAsync();
        await TheServerGoesAwayAsync();
        await PublishAsync();
        await _broker!.KillAsync();
        await StartAsync();
        var kept = await TheServerComesBackAsync(Messages - Window);
        Assert.Equal(Enumerable.Range(1, kept.Count), kept);
        Assert.InRange(kept.Count, Messages - Window, Messages);
    }

    [PeerFact("mosquitto", "mosquitto_pub", "mosquitto_sub")]
    public async Task A_reading_published_at_QoS_0_waits_as_well()
    {
        await StartAsync();
        await TheServerGoesAwayAsync();
        await using (var publisher = Client("mosquitto_pub", "-q", "0", "-t", "pool/ph", "-m", "1"))
            Assert.Equal(0, await publisher.ExitAsync());
        Assert.Equal([1], await TheServerComesBackAsync(1));
    }

    private async Task StartAsync()
    {
        string[] lines = Repository.ReadText("src", "PlantWatch.Server", "Deploy", "mosquitto.conf").Split('\n');
        Assert.Single(lines, "listener 1883");
        Assert.Single(lines, "persistence_location /mosquitto/data/");
        var file = Path.Combine(_folder, "mosquitto.conf");
        // Started by root it would change to another user, who may not write into the test's folder.
        string[] exchanged = [.. lines.Select(l => l switch { "listener 1883" => $"listener {_port} 127.0.0.1", "persistence_location /mosquitto/data/" => $"persistence_location {_folder}/", _ => l }), "user root"];
        await System.IO.File.WriteAllLinesAsync(file, exchanged);
        if (_broker is { } old) await old.DisposeAsync();
        _broker = Peer.Start("mosquitto", "-c", file);
        await Peer.UntilAsync(Answers, $"mosquitto answers; it says: {_broker.Output}");
    }

    private async Task TheServerGoesAwayAsync()
    {
        // It subscribes as PlantWatch does (MQTT 5, session that does not expire) and is gone.
        await using var server = Server("-E");
        Assert.Equal(0, await server.ExitAsync());
    }

    private async Task PublishAsync()
    {
        await using var probe = Client("mosquitto_pub", "-q", "1", "-t", "pool/ph", "-l");
        for (var i = 1; i <= Messages; i++) await probe.Input.WriteLineAsync(i.ToString(CultureInfo.InvariantCulture));
        probe.Input.Close();
        Assert.Equal(0, await probe.ExitAsync());
    }

    /// <summary>Everything that had waited, at least so much of it.</summary>
    private async Task<List<int>> TheServerComesBackAsync(int atLeast)
    {
        await using var server = Server();
        // A last message marks the end: what waited comes before it.
        await Peer.UntilAsync(() => server.Lines.Count >= atLeast, $"{atLeast} messages come; {server.Lines.Count} did");
        await using (var last = Client("mosquitto_pub", "-q", "1", "-t", "pool/ph", "-m", "0")) Assert.Equal(0, await last.ExitAsync());
        await Peer.UntilAsync(() => server.Lines is [.., "0"], "the last message comes");
        return [.. server.Lines.SkipLast(1).Select(l => int.Parse(l, CultureInfo.InvariantCulture))];
    }

    private Peer Server(params string[] more) => Client("mosquitto_sub", ["-V", "5", "-c", "-i", "plantwatch", "-x", "4294967295", "-q", "1", "-t", "#", .. more]);

    private Peer Client(string program, params string[] arguments) => Peer.Start(program, ["-h", "127.0.0.1", "-p", _port.ToString(CultureInfo.InvariantCulture), .. arguments]);

    private bool Answers()
    {
        try
        {
            using var client = new TcpClient("127.0.0.1", _port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
