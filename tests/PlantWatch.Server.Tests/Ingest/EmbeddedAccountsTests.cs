using System.Globalization;
using System.Net;
using System.Net.NetworkInformation;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Options;
using MQTTnet;
using MQTTnet.Formatter;
using MQTTnet.Protocol;
using PlantWatch.Server.Commands;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Ingest.Devices;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Tests.Peers;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>The embedded broker with TLS and accounts, against mosquitto's own clients and a library's.</summary>
public sealed class EmbeddedAccountsTests : IAsyncLifetime
{
    private const int ConnectionLost = 7;
    private readonly string _folder = Directory.CreateTempSubdirectory("accounts-").FullName;
    private readonly FakeDoor _door = new() { CommitsByItself = true };
    private readonly string _caFile;
    private readonly PlantWatchOptions _options;
    private readonly string _password;
    private EmbeddedBroker _broker = null!;

    public EmbeddedAccountsTests()
    {
        using var authority = new Authority(_folder);
        _caFile = authority.File;
        var (certificate, key) = authority.Issue("broker", ["127.0.0.1"]);
        _options = new()
        {
            Data = _folder,
            Broker = { Port = 0, TlsPort = 0, Devices = Path.Combine(_folder, "devices.yaml"), Tls = { On = true, CertificateFile = certificate, KeyFile = key } },
        };
        _password = Add("hall-panel", "hall/#");
        Add("spa-panel", "spa/#");
    }

    public Task InitializeAsync()
    {
        _broker = New(_options);
        return _broker.StartAsync(default);
    }

    public async Task DisposeAsync()
    {
        await _broker.StopAsync(default);
        _broker.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_device_with_its_password_is_heard_over_TLS_and_acknowledged()
    {
        Assert.Equal(0, await ExitAsync(Device("-q", "1", "-t", "hall/ph", "-m", "7.21", "-i", "hall-panel")));
        Assert.Equal(0, await ExitAsync(Device("-V", "5", "-q", "1", "-t", "hall/ph", "-m", "7.22", "-i", "hall-panel.2")));
        Assert.Equal(0, await ExitAsync(Device("-q", "1", "-t", "hall/ph", "-m", "7.23")));
        Assert.Equal(["7.21", "7.22", "7.23"], _door.Messages.Select(m => Encoding.UTF8.GetString(m.Payload.Span)));
        Assert.Equal(["hall-panel", "hall-panel.2"], _door.Messages.Take(2).Select(m => m.Session));
        Assert.Empty(_broker.Troubles);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_payload_of_1_MiB_comes_whole_through_TLS()
    {
        var file = Path.Combine(_folder, "large");
        await File.WriteAllBytesAsync(file, new byte[1024 * 1024]);
        Assert.Equal(0, await ExitAsync(Device("-q", "1", "-t", "hall/ph", "-f", file)));
        Assert.Single(_door.Messages);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Outside_its_rights_a_client_of_version_5_is_told_and_counted_and_nothing_comes_to_the_door()
    {
        for (var i = 0; i < 2; i++)
        {
            await using var device = Device("-V", "5", "-d", "-q", "1", "-t", "spa/ph", "-m", "9.9");
            await Peer.UntilAsync(() => device.Output.Contains("received PUBACK (Mid: 1, RC:135)", StringComparison.Ordinal), "PUBACK 0x87");
        }
        Assert.Equal(0, await ExitAsync(Device("-V", "5", "-q", "0", "-t", "hall", "-m", "7")));
        Assert.Equal(0, await ExitAsync(Device("-V", "5", "-q", "0", "-t", "hallway/ph", "-m", "7")));
        Assert.Equal(0, await ExitAsync(Device("-V", "5", "-q", "1", "-t", "hall/end", "-m", "7")));
        await Peer.UntilAsync(() => _door.Messages.Any(m => m.Topic == "hall/end"), "the last comes");
        Assert.DoesNotContain(_door.Messages, m => m.Topic.StartsWith("spa", StringComparison.Ordinal) || m.Topic.StartsWith("hallway", StringComparison.Ordinal));
        var trouble = Assert.Single(_broker.Troubles);
        Assert.Equal(BrokerFailure.DeviceOutsideRights, trouble.Failure);
        Assert.Equal(["hall-panel: hallway/ph \u00d7 1", "hall-panel: spa/ph \u00d7 2"], trouble.Topics.Order(StringComparer.Ordinal));
    }

    [PeerFact("mosquitto_pub")]
    public async Task Outside_its_rights_a_client_of_version_3_1_1_loses_the_connection()
    {
        Assert.Equal(ConnectionLost, await ExitAsync(Device("-V", "311", "-q", "1", "-t", "spa/ph", "-m", "9.9")));
        Assert.Empty(_door.Messages);
        Assert.Equal(["hall-panel: spa/ph \u00d7 1"], Assert.Single(_broker.Troubles).Topics);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_will_outside_its_rights_is_no_message()
    {
        await using var device = Device("-i", "hall-panel", "-q", "1", "-t", "hall/ph", "-l", "--will-topic", "spa/state", "--will-payload", "fault");
        await device.Input.WriteLineAsync("7.2");
        await device.Input.FlushAsync();
        await Peer.UntilAsync(() => _door.Messages.Count == 1, "it is in");
        await device.KillAsync();
        await Peer.UntilAsync(() => _broker.Troubles.Any(t => t.Topics.Contains("hall-panel: spa/state \u00d7 1")), "its will is refused");
        Assert.Single(_door.Messages);
    }

    [PeerFact("mosquitto_pub")]
    public async Task Without_a_name_with_a_wrong_password_or_under_anothers_client_id_nobody_comes_in_over_TLS()
    {
        Assert.NotEqual(0, await ExitAsync(Tls("-q", "1", "-t", "hall/ph", "-m", "1")));
        Assert.NotEqual(0, await ExitAsync(Tls("-q", "1", "-t", "hall/ph", "-m", "1", "-u", "hall-panel", "-P", "wrong")));
        Assert.NotEqual(0, await ExitAsync(Tls("-q", "1", "-t", "hall/ph", "-m", "1", "-u", "nobody", "-P", _password)));
        Assert.NotEqual(0, await ExitAsync(Device("-q", "1", "-t", "hall/ph", "-m", "1", "-i", "spa-panel")));
        Assert.NotEqual(0, await ExitAsync(Device("-q", "1", "-t", "hall/ph", "-m", "1", "-i", "hall-panel2")));
        Assert.Empty(_door.Messages);
        var trouble = Assert.Single(_broker.Troubles);
        Assert.Equal(BrokerFailure.DeviceTurnedAway, trouble.Failure);
        Assert.Contains("hall-panel (127.0.0.1): BadUserNameOrPassword \u00d7 1", trouble.Topics);
        Assert.Contains("hall-panel (127.0.0.1): ClientIdentifierNotValid \u00d7 2", trouble.Topics);
        Assert.DoesNotContain(trouble.Topics, t => t.Contains("nobody", StringComparison.Ordinal));
    }

    [PeerFact("mosquitto_pub")]
    public async Task On_this_machine_the_nameless_come_in_without_TLS_but_not_under_the_id_of_an_account()
    {
        Assert.Equal(0, await ExitAsync(Here("-q", "1", "-t", "spa/ph", "-m", "1", "-i", "simulator")));
        Assert.NotEqual(0, await ExitAsync(Here("-q", "1", "-t", "spa/ph", "-m", "1", "-i", "spa-panel.2")));
        Assert.NotEqual(0, await ExitAsync(Here("-q", "1", "-t", "spa/ph", "-m", "1", "-u", "spa-panel", "-P", "wrong")));
        Assert.Single(_door.Messages);
    }

    [PeerFact("mosquitto_pub")]
    public async Task A_client_that_knows_another_authority_does_not_give_its_password_away()
    {
        using var other = new Authority(_folder, "Somebody else");
        await using var device = Peer.Start("mosquitto_pub", "-h", "127.0.0.1", "-p", Text(_broker.TlsPort!.Value), "--cafile", other.File, "-t", "hall/ph", "-m", "1", "-u", "hall-panel", "-P", _password);
        Assert.NotEqual(0, await device.ExitAsync());
        Assert.Empty(_door.Messages);
    }

    [Fact]
    public async Task A_library_is_told_by_PUBREC_and_by_SUBACK_what_it_may_not()
    {
        using var client = await ConnectAsync("hall-panel");
        Assert.Equal(MqttClientPublishReasonCode.NotAuthorized, await PublishAsync(client, "spa/ph", MqttQualityOfServiceLevel.ExactlyOnce));
        Assert.Equal(MqttClientPublishReasonCode.Success, await PublishAsync(client, "hall/ph", MqttQualityOfServiceLevel.ExactlyOnce));
        Assert.Equal(MqttClientSubscribeResultCode.NotAuthorized, await SubscribeAsync(client, "#"));
        Assert.Equal(MqttClientSubscribeResultCode.NotAuthorized, await SubscribeAsync(client, "spa/#"));
        Assert.Equal(MqttClientSubscribeResultCode.GrantedQoS1, await SubscribeAsync(client, "hall/+"));
        await client.DisconnectAsync();
    }

    [Fact]
    public async Task The_newcomer_wins_and_a_pair_that_does_it_again_and_again_is_told_with_both_addresses()
    {
        var clients = new List<IMqttClient>();
        MqttClientDisconnectReason? why = null;
        for (var i = 0; i < Takeovers.Usual + 2; i++)
        {
            clients.Add(await ConnectAsync("hall-panel"));
            if (i == 0) clients[0].DisconnectedAsync += e => Task.FromResult(why = e.Reason);
        }
        await Peer.UntilAsync(() => why == MqttClientDisconnectReason.SessionTakenOver, "the first was told");
        await Peer.UntilAsync(() => _broker.Troubles.Any(t => t.Failure == BrokerFailure.DevicesFlapping), "the pair is told");
        Assert.StartsWith("hall-panel: 127.0.0.1:", Assert.Single(_broker.Troubles.Single(t => t.Failure == BrokerFailure.DevicesFlapping).Topics), StringComparison.Ordinal);
        Assert.Equal(MqttClientPublishReasonCode.Success, await PublishAsync(clients[^1], "hall/ph", MqttQualityOfServiceLevel.AtLeastOnce));
        foreach (var client in clients) client.Dispose();
    }

    [Fact]
    public async Task An_account_that_is_taken_out_of_the_file_may_nothing_from_then_on_though_it_is_connected()
    {
        using var client = await ConnectAsync("hall-panel");
        Assert.Equal(MqttClientPublishReasonCode.Success, await PublishAsync(client, "hall/ph", MqttQualityOfServiceLevel.AtLeastOnce));
        var kept = (await File.ReadAllLinesAsync(_options.Broker.Devices!)).ToList();
        kept.RemoveRange(kept.FindIndex(l => l.Contains("hall-panel", StringComparison.Ordinal)), 3);
        await File.WriteAllLinesAsync(_options.Broker.Devices!, kept);
        for (var i = 0; await PublishAsync(client, "hall/ph", MqttQualityOfServiceLevel.AtLeastOnce) != MqttClientPublishReasonCode.NotAuthorized; i++)
        {
            Assert.True(i < 100, "still allowed after ten seconds");
            await Task.Delay(100);
        }
    }

    [Fact]
    public async Task Beyond_this_machine_it_listens_with_TLS_alone()
    {
        _options.Broker.Listen = "0.0.0.0";
        using var wide = New(_options);
        await wide.StartAsync(default);
        var open = IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners();
        Assert.Contains(open, o => o.Port == wide.TlsPort && o.Address.Equals(IPAddress.Any));
        Assert.All(open.Where(o => o.Port == wide.Port), o => Assert.True(IPAddress.IsLoopback(o.Address)));
        await wide.StopAsync(default);
    }

    [Fact]
    public async Task Without_TLS_without_accounts_or_without_a_certificate_it_does_not_start_there_and_says_why()
    {
        Assert.Contains("only with TLS", await RefusalAsync(o => (o.Listen, o.Tls.On) = ("0.0.0.0", false)), StringComparison.Ordinal);
        Assert.Contains("add-device", await RefusalAsync(o => (o.Listen, o.Devices) = ("0.0.0.0", null)), StringComparison.Ordinal);
        Assert.Contains("CertificateFile", await RefusalAsync(o => (o.Tls.CertificateFile, o.Tls.KeyFile) = (null, null)), StringComparison.Ordinal);
        Assert.Contains("no address", await RefusalAsync(o => o.Listen = "everywhere"), StringComparison.Ordinal);
        var empty = Path.Combine(_folder, "empty.yaml");
        await File.WriteAllTextAsync(empty, "devices:\n");
        Assert.Contains("add-device", await RefusalAsync(o => o.Devices = empty), StringComparison.Ordinal);
        Assert.Contains("gone.yaml", await RefusalAsync(o => o.Devices = Path.Combine(_folder, "gone.yaml")), StringComparison.Ordinal);
    }

    private async Task<string> RefusalAsync(Action<BrokerOptions> change)
    {
        var broker = new BrokerOptions
        {
            Port = 0, TlsPort = 0, Devices = _options.Broker.Devices,
            Tls = { On = true, CertificateFile = _options.Broker.Tls.CertificateFile, KeyFile = _options.Broker.Tls.KeyFile },
        };
        change(broker);
        using var refusing = New(new PlantWatchOptions { Data = _folder, Broker = broker });
        var fault = await Assert.ThrowsAnyAsync<Exception>(() => refusing.StartAsync(default));
        return Server.Hosting.StartFailure.Explain(fault) ?? $"a trace, not a sentence: {fault}";
    }

    private string Add(string name, string topics)
    {
        using var said = new StringWriter();
        Assert.Equal(0, AddDeviceCommand.Run(name, [topics], _options.Broker.Devices!, said, said));
        return said.ToString().Split('\n').Single(l => l.StartsWith("password", StringComparison.Ordinal)).Split(": ")[1].Trim();
    }

    private EmbeddedBroker New(PlantWatchOptions options) => new(_door, Options.Create(options), TimeProvider.System, NullLogger<EmbeddedBroker>.Instance);

    private async Task<IMqttClient> ConnectAsync(string clientId)
    {
        var client = new MqttClientFactory().CreateMqttClient();
        var options = new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", _broker.TlsPort).WithProtocolVersion(MqttProtocolVersion.V500).WithClientId(clientId).WithCredentials("hall-panel", _password)
            .WithTlsOptions(t => t.UseTls().WithRevocationMode(X509RevocationMode.NoCheck).WithTrustChain(new X509Certificate2Collection(X509CertificateLoader.LoadCertificateFromFile(_caFile)))).Build();
        Assert.Equal(MqttClientConnectResultCode.Success, (await client.ConnectAsync(options)).ResultCode);
        return client;
    }

    private static async Task<MqttClientPublishReasonCode> PublishAsync(IMqttClient client, string topic, MqttQualityOfServiceLevel quality) =>
        (await client.PublishAsync(new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload("7.2").WithQualityOfServiceLevel(quality).Build())).ReasonCode;

    private static async Task<MqttClientSubscribeResultCode> SubscribeAsync(IMqttClient client, string filter) =>
        (await client.SubscribeAsync(filter, MqttQualityOfServiceLevel.AtLeastOnce)).Items.Single().ResultCode;

    private Peer Device(params string[] more) => Tls(["-u", "hall-panel", "-P", _password, .. more]);

    private Peer Tls(params string[] more) => Peer.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", Text(_broker.TlsPort!.Value), "--cafile", _caFile, .. more]);

    private Peer Here(params string[] more) => Peer.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", Text(_broker.Port), .. more]);

    private static async Task<int> ExitAsync(Peer peer)
    {
        await using (peer) return await peer.ExitAsync();
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
