using System.Globalization;
using System.Net.Sockets;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Tests.Whole;

namespace PlantWatch.Server.Tests.Deploy;

/// <summary>The configuration of a broker beside the devices, run by a real mosquitto before another one. Only places and the address of the upper one are exchanged.</summary>
public sealed class BridgeConfigurationTests : IAsyncLifetime
{
    private const int Before = 10, Meanwhile = 500;
    private readonly string _folder = Directory.CreateTempSubdirectory("edge-").FullName;
    private readonly int _port = Peer.FreePort();
    private Peer? _edge;

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        if (_edge is { } edge) await edge.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task What_devices_say_while_the_line_is_cut_and_over_a_restart_of_the_broker_beside_them_is_in_the_record_once()
    {
        using var authority = new Authority(_folder);
        File.Move(authority.File, In("ca.crt"));
        var (certificate, key) = authority.Issue("broker", ["127.0.0.1"]);
        authority.Issue("edge-1", []);
        authority.Issue("plantwatch", []);
        await using var upper = await Mosquitto.StartAsync(extra: $"cafile {In("ca.crt")}\ncertfile {certificate}\nkeyfile {key}\nrequire_certificate true\nuse_identity_as_username true");
        await using var server = await WholeServer.StartAsync(plant: WholeServer.Plant.Replace("topic: hall/ph", "topic: edge-1/hall/ph", StringComparison.Ordinal), set: o =>
        {
            (o.Broker.Mode, o.Broker.Port) = (BrokerMode.External, upper.Port);
            o.Broker.Tls = new() { On = true, CaFile = In("ca.crt"), CertificateFile = In("plantwatch.crt"), KeyFile = In("plantwatch.key") };
        });
        await StartEdgeAsync(upper.Port);
        await PublishAsync(Before);
        await StoredAsync(server, Before);

        await upper.KillAsync();
        await PublishAsync(Meanwhile);
        await _edge!.StopAsync();
        await StartEdgeAsync(upper.Port);
        Assert.Equal(Before, (await server.SumsAsync()).Stored);
        await upper.StartAsync();

        await StoredAsync(server, Before + Meanwhile);
        var sums = await server.SumsAsync();
        Assert.Equal((Before + Meanwhile, Before + Meanwhile, 0), (sums.Received, sums.Stored, sums.Refused));
    }

    private static async Task StoredAsync(WholeServer server, int count)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        long stored;
        while ((stored = (await server.SumsAsync()).Stored) < count)
        {
            Assert.False(patience.IsCancellationRequested, $"{count} are stored; {stored} were");
            await Task.Delay(50);
        }
    }

    private async Task PublishAsync(int count)
    {
        await using var device = Peer.Start("mosquitto_pub", "-h", "127.0.0.1", "-p", Text(_port), "-q", "1", "-t", "hall/ph", "-l");
        for (var i = 1; i <= count; i++) await device.Input.WriteLineAsync((7 + (i / 1000.0)).ToString("0.000", CultureInfo.InvariantCulture));
        device.Input.Close();
        Assert.Equal(0, await device.ExitAsync());
    }

    private async Task StartEdgeAsync(int upper)
    {
        var text = Repository.ReadText("src", "PlantWatch.Server", "Deploy", "mosquitto.bridge.conf");
        (string From, string To)[] exchanged =
            [("listener 1883 127.0.0.1", $"listener {Text(_port)} 127.0.0.1"), ("address broker.bramble.example:8883", $"address 127.0.0.1:{Text(upper)}"), ("/mosquitto/config/", $"{_folder}/"), ("/mosquitto/data/", $"{_folder}/")];
        foreach (var (from, to) in exchanged)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }
        // Started by root it would change to another user, who may not write into the test's folder.
        await File.WriteAllTextAsync(In("mosquitto.conf"), text + "user root\n");
        if (_edge is { } old) await old.DisposeAsync();
        _edge = Peer.Start("mosquitto", "-c", In("mosquitto.conf"));
        await Peer.UntilAsync(Answers, $"mosquitto answers; it says: {_edge.Output}");
    }

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

    private string In(string file) => Path.Combine(_folder, file);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
