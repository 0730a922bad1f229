using System.Globalization;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Telling;
using PlantWatch.Server.Tests.House;
using PlantWatch.Server.Tests.Ingest;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Deploy;

/// <summary>The configuration with TLS, accounts and access list, run by a real mosquitto. Only where it listens and where its files lie is exchanged.</summary>
public sealed partial class TlsConfigurationTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("broker-").FullName;
    private readonly int _byCertificate = Peer.FreePort(), _byPassword = Peer.FreePort();
    private readonly FakeDoor _door = new() { CommitsByItself = true };
    private Peer? _broker;

    public Task InitializeAsync() => Task.CompletedTask;

    public async Task DisposeAsync()
    {
        if (_broker is { } broker) await broker.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [PeerFact("mosquitto", "mosquitto_pub", "mosquitto_passwd")]
    public async Task A_device_is_heard_below_its_own_name_and_nowhere_else_by_certificate_and_by_password()
    {
        await MakeFilesAsync();
        await StartAsync();
        await using var ours = await ServerAsync();

        await PublishAsync("hall-panel", "hall-panel/ph", "7.1");
        await PublishAsync("hall-panel", "spa-panel/ph", "9.9");
        await PublishAsync("hall-panel", "plantwatch/alarms/hall/state", "forged");
        await PublishAsync("spa-panel", "spa-panel/ph", "7.2", password: "of the spa");
        await Peer.UntilAsync(() => _door.Messages.Count >= 2, "what is allowed comes");
        Assert.Equal(["hall-panel/ph", "spa-panel/ph"], _door.Messages.Select(m => m.Topic));
    }

    [PeerFact("mosquitto", "mosquitto_pub", "mosquitto_sub", "mosquitto_passwd")]
    public async Task Nobody_comes_in_without_a_certificate_of_the_plant_or_a_password_and_a_device_reads_nothing()
    {
        await MakeFilesAsync();
        using var stranger = new Authority(_folder, "Somebody else");
        stranger.Issue("stranger", []);
        await StartAsync();
        await using var ours = await ServerAsync();

        Assert.NotEqual(0, await ExitAsync(Client("mosquitto_pub", _byCertificate, "-t", "hall-panel/ph", "-m", "1")));
        Assert.NotEqual(0, await ExitAsync(Client("mosquitto_pub", _byCertificate, "-t", "stranger/ph", "-m", "1", "--cert", In("stranger.crt"), "--key", In("stranger.key"))));
        Assert.NotEqual(0, await ExitAsync(Client("mosquitto_pub", _byPassword, "-t", "spa-panel/ph", "-m", "1")));
        Assert.NotEqual(0, await ExitAsync(Client("mosquitto_pub", _byPassword, "-t", "spa-panel/ph", "-m", "1", "-u", "spa-panel", "-P", "wrong")));

        await using var curious = Client("mosquitto_sub", _byCertificate, "-t", "#", "-d", "--cert", In("hall-panel.crt"), "--key", In("hall-panel.key"));
        await Peer.UntilAsync(() => curious.Output.Contains("SUBACK", StringComparison.Ordinal), "subscribed");
        await PublishAsync("hall-panel", "hall-panel/ph", "7.1");
        await Peer.UntilAsync(() => _door.Messages.Count >= 1, "it is heard here");
        Assert.DoesNotContain("PUBLISH", curious.Output, StringComparison.Ordinal);
        Assert.Single(_door.Messages);
    }

    [PeerFact("mosquitto", "mosquitto_passwd")]
    public async Task PlantWatch_tells_of_alarms_below_its_own_name_and_hears_them_as_everything_else()
    {
        await MakeFilesAsync();
        await StartAsync();
        await using var ours = await ServerAsync();
        await using var mouth = new TopicPublisher(Settings(), TimeProvider.System);
        await mouth.PublishAsync("plantwatch/alarms/hall/notices", "{}"u8.ToArray(), "application/json", retain: false, default);
        await Peer.UntilAsync(() => _door.Messages.Any(m => m.Topic == "plantwatch/alarms/hall/notices"), "it is handed on");
        await Assert.ThrowsAnyAsync<IOException>(() => mouth.PublishAsync("hall-panel/ph", "7"u8.ToArray(), "text/plain", retain: false, default));
    }

    [PeerFact("mosquitto", "openssl", "bash", "mosquitto_pub", "mosquitto_passwd")]
    public async Task The_commands_of_the_handbook_make_files_with_which_all_this_works()
    {
        var commands = Commands().Match(Repository.ReadText("docs", "operations.md")).Groups[1].Value;
        Assert.Contains("openssl", commands, StringComparison.Ordinal);
        // The broker of this test answers at an address in numbers; the password is typed by nobody.
        var here = commands.Replace("broker.bramble.example", "127.0.0.1", StringComparison.Ordinal).Replace("DNS:127.0.0.1", "IP:127.0.0.1", StringComparison.Ordinal)
            .Replace("mosquitto_passwd -c passwords spa-panel", "mosquitto_passwd -b -c passwords spa-panel 'of the spa'", StringComparison.Ordinal);
        Assert.NotEqual(commands, here);
        await using (var made = Peer.Start("bash", "-ec", $"cd '{_folder}'\n{here}"))
            Assert.True(await made.ExitAsync() == 0, made.Output);
        await StartAsync();
        await using var ours = await ServerAsync();
        await PublishAsync("hall-panel", "hall-panel/ph", "7.1");
        await PublishAsync("spa-panel", "spa-panel/ph", "7.2", password: "of the spa");
        await Peer.UntilAsync(() => _door.Messages.Count == 2, "both are heard");
    }

    private async Task MakeFilesAsync()
    {
        using var authority = new Authority(_folder);
        File.Move(authority.File, In("ca.crt"));
        authority.Issue("broker", ["127.0.0.1"]);
        authority.Issue("plantwatch", []);
        authority.Issue("hall-panel", []);
        await using var made = Peer.Start("mosquitto_passwd", "-b", "-c", In("passwords"), "spa-panel", "of the spa");
        Assert.Equal(0, await made.ExitAsync());
    }

    private async Task StartAsync()
    {
        File.Copy(Repository.PathOf("src", "PlantWatch.Server", "Deploy", "mosquitto.acl"), In("mosquitto.acl"));
        var text = Repository.ReadText("src", "PlantWatch.Server", "Deploy", "mosquitto.tls.conf");
        string[] exchanged = ["listener 8883\n", "listener 8884\n", "/mosquitto/config/", "/mosquitto/data/"];
        Assert.All(exchanged, e => Assert.Contains(e, text, StringComparison.Ordinal));
        var here = text.Replace("listener 8883", $"listener {_byCertificate} 127.0.0.1", StringComparison.Ordinal).Replace("listener 8884", $"listener {_byPassword} 127.0.0.1", StringComparison.Ordinal)
            .Replace("/mosquitto/config/", $"{_folder}/", StringComparison.Ordinal).Replace("/mosquitto/data/", $"{_folder}/", StringComparison.Ordinal);
        // Started by root it would change to another user, who may not write into the test's folder.
        await File.WriteAllTextAsync(In("mosquitto.conf"), here + "user root\n");
        _broker = Peer.Start("mosquitto", "-c", In("mosquitto.conf"));
        await Peer.UntilAsync(() => Answers(_byCertificate) && Answers(_byPassword), $"mosquitto answers; it says: {_broker.Output}");
    }

    private PlantWatchOptions Settings() => new()
    {
        Data = _folder,
        Broker =
        {
            Mode = BrokerMode.External, Port = _byCertificate,
            Tls = { On = true, CaFile = In("ca.crt"), CertificateFile = In("plantwatch.crt"), KeyFile = In("plantwatch.key") },
        },
    };

    private async Task<IAsyncDisposable> ServerAsync()
    {
        _door.SetTopics("#");
        var broker = new ExternalBroker(_door, Options.Create(Settings()), TimeProvider.System, NullLogger<ExternalBroker>.Instance);
        await broker.StartAsync(default);
        await Peer.UntilAsync(() => broker.State.Word == BrokerWord.Connected, $"connected; {broker.State}; {_broker!.Output}");
        return new Stopping(broker);
    }

    private Task<int> PublishAsync(string device, string topic, string value, string? password = null) => ExitAsync(password is null
        ? Client("mosquitto_pub", _byCertificate, "-q", "1", "-t", topic, "-m", value, "--cert", In($"{device}.crt"), "--key", In($"{device}.key"))
        : Client("mosquitto_pub", _byPassword, "-q", "1", "-t", topic, "-m", value, "-u", device, "-P", password));

    private Peer Client(string program, int port, params string[] more) =>
        Peer.Start(program, ["-h", "127.0.0.1", "-p", port.ToString(CultureInfo.InvariantCulture), "--cafile", In("ca.crt"), .. more]);

    private static async Task<int> ExitAsync(Peer peer)
    {
        await using (peer) return await peer.ExitAsync();
    }

    private string In(string file) => Path.Combine(_folder, file);

    private static bool Answers(int port)
    {
        try
        {
            using var client = new TcpClient("127.0.0.1", port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    [GeneratedRegex(@"<!-- tried by a test -->\s*```sh\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Commands();

    private sealed record Stopping(ExternalBroker Broker) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            await Broker.StopAsync(default);
            Broker.Dispose();
        }
    }
}
