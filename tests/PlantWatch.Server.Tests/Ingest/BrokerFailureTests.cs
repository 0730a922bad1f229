using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;
using MQTTnet.Protocol;
using MQTTnet.Server;
using PlantWatch.Server.Ingest;
using PlantWatch.Server.Ingest.Links;
using PlantWatch.Server.Tests.Peers;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Tests.Ingest;

/// <summary>Every way in which a broker can be out of reach, made with a real one and named for what it is.</summary>
public sealed class BrokerFailureTests : IDisposable
{
    private const string DynamicSecurity = "/usr/lib/x86_64-linux-gnu/mosquitto_dynamic_security.so";
    private readonly string _folder = Directory.CreateTempSubdirectory("plantwatch-").FullName;
    private readonly Authority _authority;

    public BrokerFailureTests() => _authority = new(_folder);

    public void Dispose()
    {
        _authority.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public Task A_name_that_leads_nowhere() => Fails(BrokerFailure.NameNotFound, Peer.FreePort(), o => o.Host = "no-such-broker.invalid"); // RFC 6761, section 6.4

    [Fact]
    public Task A_port_at_which_nobody_listens() => Fails(BrokerFailure.NothingListens, Peer.FreePort());

    [Fact]
    public async Task A_machine_that_takes_the_connection_and_says_nothing()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        await Fails(BrokerFailure.NoAnswer, ((IPEndPoint)listener.LocalEndpoint).Port);
    }

    [PeerFact("mosquitto")]
    public async Task A_port_that_wants_TLS_asked_without_it()
    {
        await using var mosquitto = await TlsAsync();
        await Fails(BrokerFailure.ClosedUnanswered, mosquitto.Port);
    }

    [PeerFact("mosquitto")]
    public async Task A_port_without_TLS_asked_with_it()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await Fails(BrokerFailure.NoTlsThere, mosquitto.Port, Trusting);
    }

    [Fact]
    public async Task A_file_of_ours_that_is_missing_or_is_no_certificate_or_stands_alone()
    {
        var missing = Path.Combine(_folder, "gone.crt");
        Assert.Contains("gone.crt", (await Fails(BrokerFailure.OwnFilesUnusable, 1, o => (o.Tls.On, o.Tls.CaFile) = (true, missing))).Detail, StringComparison.Ordinal);
        var junk = Path.Combine(_folder, "junk.crt");
        await File.WriteAllTextAsync(junk, "no certificate");
        await Fails(BrokerFailure.OwnFilesUnusable, 1, o => (o.Tls.On, o.Tls.CaFile) = (true, junk));
        Assert.Contains("KeyFile", (await Fails(BrokerFailure.OwnFilesUnusable, 1, o => (o.Tls.On, o.Tls.CertificateFile) = (true, _authority.File))).Detail, StringComparison.Ordinal);
    }

    [PeerFact("mosquitto")]
    public async Task A_certificate_of_another_authority_is_not_trusted_nor_is_one_that_no_authority_of_the_machine_signed()
    {
        await using var mosquitto = await TlsAsync();
        using var other = new Authority(_folder, "Somebody else");
        Assert.Contains("Bramble Street Baths", (await Fails(BrokerFailure.CertificateNotTrusted, mosquitto.Port, o => (o.Tls.On, o.Tls.CaFile) = (true, other.File))).Detail, StringComparison.Ordinal);
        await Fails(BrokerFailure.CertificateNotTrusted, mosquitto.Port, o => o.Tls.On = true);
    }

    [PeerFact("mosquitto")]
    public async Task A_certificate_for_another_name_is_refused_and_taken_when_that_name_is_asked_for()
    {
        await using var mosquitto = await TlsAsync(names: ["broker.bramble.example"]);
        Assert.Equal("broker.bramble.example", (await Fails(BrokerFailure.CertificateForOtherName, mosquitto.Port, Trusting)).Detail);
        await Connects(mosquitto.Port, o =>
        {
            Trusting(o);
            o.Tls.ServerName = "broker.bramble.example";
        });
    }

    [PeerFact("mosquitto")]
    public async Task A_certificate_that_ran_out_is_named_with_its_day()
    {
        await using var mosquitto = await TlsAsync(from: DateTimeOffset.UtcNow.AddYears(-2), to: new DateTimeOffset(2025, 11, 28, 9, 0, 0, TimeSpan.Zero));
        var trouble = await Fails(BrokerFailure.CertificateExpired, mosquitto.Port, Trusting);
        Assert.Equal("2025-11-28 09:00 UTC", trouble.Detail);
        Assert.Equal($"The certificate of 127.0.0.1:{mosquitto.Port} ran out: 2025-11-28 09:00 UTC", BrokerWords.Of(trouble, Wording.English));
    }

    [PeerFact("mosquitto")]
    public async Task A_certificate_that_is_not_valid_yet()
    {
        await using var mosquitto = await TlsAsync(from: DateTimeOffset.UtcNow.AddDays(2));
        await Fails(BrokerFailure.CertificateNotYetValid, mosquitto.Port, Trusting);
    }

    [PeerFact("mosquitto")]
    public async Task A_broker_that_asks_for_a_certificate_of_ours_and_gets_none_another_ones_or_the_right_one()
    {
        await using var mosquitto = await TlsAsync(extra: $"cafile {_authority.File}\nrequire_certificate true");
        await Fails(BrokerFailure.ClientCertificateWanted, mosquitto.Port, Trusting);
        using var other = new Authority(_folder, "Somebody else");
        await Fails(BrokerFailure.ClientCertificateRefused, mosquitto.Port, o => Showing(o, other.Issue("stranger", [])));
        await Connects(mosquitto.Port, o => Showing(o, _authority.Issue("plantwatch", [])));
    }

    [PeerFact("mosquitto", "mosquitto_passwd")]
    public async Task A_wrong_password_is_refused_the_right_one_taken_and_neither_is_in_the_log()
    {
        var passwords = Path.Combine(_folder, "passwords");
        await using (var made = Peer.Start("mosquitto_passwd", "-b", "-c", passwords, "plantwatch", "right-one")) Assert.Equal(0, await made.ExitAsync());
        await using var mosquitto = await TlsAsync(extra: $"password_file {passwords}\nallow_anonymous false");
        var log = new KeptLines();
        await Fails(BrokerFailure.AccountRefused, mosquitto.Port, o => Account(o, "wrong-one"), log);
        await Connects(mosquitto.Port, o => Account(o, "right-one"), log);
        Assert.NotEmpty(log.Lines);
        Assert.DoesNotContain(log.Lines, l => l.Contains("wrong-one", StringComparison.Ordinal) || l.Contains("right-one", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_broker_that_refuses_for_another_reason_says_its_code()
    {
        using var server = new MqttServerFactory().CreateMqttServer(Loopback(out var port));
        server.ValidatingConnectionAsync += e =>
        {
            e.ReasonCode = MqttConnectReasonCode.ServerUnavailable;
            return Task.CompletedTask;
        };
        await server.StartAsync();
        Assert.Equal("0x88 ServerUnavailable", (await Fails(BrokerFailure.ConnectionRefused, port)).Detail);
        await server.StopAsync(new MqttServerStopOptions());
    }

    [PeerFact("mosquitto", DynamicSecurity)]
    public async Task A_filter_that_the_account_may_not_subscribe_is_named_with_its_code_and_the_others_work()
    {
        var roles = Path.Combine(_folder, "roles.json");
        await File.WriteAllTextAsync(roles, Roles());
        await using var mosquitto = await Mosquitto.StartAsync(extra: $"allow_anonymous false\nplugin {DynamicSecurity}\nplugin_opt_config_file {roles}");
        var trouble = await Fails(BrokerFailure.SubscriptionRefused, mosquitto.Port, o => (o.UserName, o.Password) = ("plantwatch", "right-one"), topics: ["pool/ph", "secret/ph"]);
        Assert.Equal(["secret/ph: 0x87 NotAuthorized"], trouble.Topics);
    }

    [PeerFact("mosquitto")]
    public async Task A_connection_that_breaks_off()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var ours = Start(mosquitto.Port, clock: new NoSecondAttempt());
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected");
        await mosquitto.KillAsync();
        await ours.UntilAsync(BrokerFailure.ConnectionLost);
    }

    [PeerFact("mosquitto", "mosquitto_pub")]
    public async Task A_message_that_cannot_be_written()
    {
        await using var mosquitto = await Mosquitto.StartAsync();
        var door = new FakeDoor { Refuses = new IOException("disk full") };
        door.SetTopics("pool/ph");
        await using var ours = Start(mosquitto.Port, door: door, clock: new NoSecondAttempt());
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected");
        await using var probe = mosquitto.Publish("-q", "1", "-t", "pool/ph", "-m", "7.21");
        await ours.UntilAsync(BrokerFailure.NotCommitted);
    }

    [PeerFact("mosquitto")]
    public async Task A_session_that_the_broker_forgot_is_told_after_it_is_well_again()
    {
        await using var mosquitto = await Mosquitto.StartAsync(persistent: false);
        await using var ours = Start(mosquitto.Port);
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected");
        await mosquitto.KillAsync();
        await mosquitto.StartAsync();
        await Peer.UntilAsync(() => ours.Broker is { State: { Word: BrokerWord.Connected, Trouble: null }, Troubles: [{ Failure: BrokerFailure.SessionLost }] }, "well, and the loss is told");
    }

    [PeerFact("mosquitto_sub")]
    public async Task Somebody_with_our_client_id_is_told_with_it_by_a_broker_that_says_so_while_we_take_the_session_back()
    {
        using var server = new MqttServerFactory().CreateMqttServer(Loopback(out var port));
        await server.StartAsync();
        await using var ours = Start(port);
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected");
        await using var twin = Peer.Start("mosquitto_sub", "-h", "127.0.0.1", "-p", port.ToString(CultureInfo.InvariantCulture), "-V", "5", "-i", "plantwatch", "-t", "pool/ph");
        await Peer.UntilAsync(() => ours.Broker.Troubles.Any(t => t is { Failure: BrokerFailure.TakenOver, Detail: "plantwatch" }), "the twin is told");
        await twin.KillAsync();
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "ours again");
        await ours.Broker.StopAsync(default);
        await server.StopAsync(new MqttServerStopOptions());
    }

    [PeerFact("mosquitto", "mosquitto_sub")]
    public async Task A_connection_that_is_taken_again_and_again_without_a_word_is_told_with_the_likely_reason()
    {
        // mosquitto 2.0.11 closes the older connection and sends no DISCONNECT.
        await using var mosquitto = await Mosquitto.StartAsync();
        await using var ours = Start(mosquitto.Port);
        await Peer.UntilAsync(() => ours.Broker.State.Word == BrokerWord.Connected, "connected");
        await using var twin = mosquitto.Subscribe("-V", "5", "-i", "plantwatch", "-t", "pool/ph");
        await Peer.UntilAsync(() => ours.Broker.Troubles.Any(t => t is { Failure: BrokerFailure.ConnectionFlapping, Detail: "plantwatch" }), "the flapping is told");
    }

    [Fact]
    public void Every_failure_has_a_sentence_and_says_what_to_do() => Assert.All(Enum.GetValues<BrokerFailure>().Where(f => f != BrokerFailure.None), failure =>
    {
        Assert.Contains($"broker.failure.{Wording.Key(failure)}", Wording.English.Codes);
        Assert.Contains($"broker.todo.{Wording.Key(failure)}", Wording.English.Codes);
    });

    private static MqttServerOptions Loopback(out int port)
    {
        port = Peer.FreePort();
        return new MqttServerOptionsBuilder().WithDefaultEndpoint().WithDefaultEndpointBoundIPAddress(IPAddress.Loopback)
            .WithDefaultEndpointBoundIPV6Address(IPAddress.None).WithDefaultEndpointPort(port).Build();
    }

    private void Trusting(BrokerOptions options) => (options.Tls.On, options.Tls.CaFile) = (true, _authority.File);

    private void Showing(BrokerOptions options, (string Certificate, string Key) own)
    {
        Trusting(options);
        (options.Tls.CertificateFile, options.Tls.KeyFile) = own;
    }

    private void Account(BrokerOptions options, string password)
    {
        Trusting(options);
        (options.UserName, options.Password) = ("plantwatch", password);
    }

    private Task<Mosquitto> TlsAsync(IReadOnlyList<string>? names = null, DateTimeOffset? from = null, DateTimeOffset? to = null, string extra = "")
    {
        var (certificate, key) = _authority.Issue("broker", names ?? ["127.0.0.1"], from, to);
        return Mosquitto.StartAsync(extra: $"certfile {certificate}\nkeyfile {key}\n{extra}");
    }

    private async Task<BrokerTrouble> Fails(BrokerFailure failure, int port, Action<BrokerOptions>? set = null, ILogger<ExternalBroker>? log = null, string[]? topics = null)
    {
        var door = new FakeDoor();
        door.SetTopics(topics ?? ["pool/ph"]);
        await using var ours = Start(port, set, door, log);
        return await ours.UntilAsync(failure);
    }

    private async Task Connects(int port, Action<BrokerOptions> set, ILogger<ExternalBroker>? log = null)
    {
        await using var ours = Start(port, set, log: log);
        await Peer.UntilAsync(() => ours.Broker is { State.Word: BrokerWord.Connected, Troubles: [] }, $"connected; {ours.Broker.State}");
    }

    private Ours Start(int port, Action<BrokerOptions>? set = null, FakeDoor? door = null, ILogger<ExternalBroker>? log = null, TimeProvider? clock = null)
    {
        var options = new PlantWatchOptions { Data = _folder, Broker = { Mode = BrokerMode.External, Port = port } };
        set?.Invoke(options.Broker);
        var broker = new ExternalBroker(door ?? new FakeDoor(), Options.Create(options), clock ?? TimeProvider.System, log ?? new KeptLines());
        _ = broker.StartAsync(default);
        return new(broker);
    }

    // One account that may subscribe below pool/ alone; the hash as the plugin wants it, PBKDF2 with SHA-512.
    private static string Roles()
    {
        var salt = RandomNumberGenerator.GetBytes(12);
        var hash = Rfc2898DeriveBytes.Pbkdf2("right-one", salt, 101, HashAlgorithmName.SHA512, 64);
        return $$"""
            { "defaultACLAccess": { "publishClientSend": true, "publishClientReceive": true, "subscribe": false, "unsubscribe": true },
              "clients": [ { "username": "plantwatch", "password": "{{Convert.ToBase64String(hash)}}", "salt": "{{Convert.ToBase64String(salt)}}", "iterations": 101, "roles": [ { "rolename": "reader" } ] } ],
              "roles": [ { "rolename": "reader", "acls": [ { "acltype": "subscribePattern", "topic": "pool/#", "allow": true } ] } ] }
            """;
    }

    private sealed record Ours(ExternalBroker Broker) : IAsyncDisposable
    {
        public async Task<BrokerTrouble> UntilAsync(BrokerFailure failure)
        {
            try
            {
                await Peer.UntilAsync(() => Broker.State.Trouble?.Failure == failure, $"{failure} is told");
            }
            catch (Xunit.Sdk.FailException e)
            {
                Assert.Fail($"{e.Message}; it says {Broker.State.Trouble}");
            }
            return Broker.Troubles[0];
        }

        public async ValueTask DisposeAsync()
        {
            await Broker.StopAsync(default);
            Broker.Dispose();
        }
    }

    /// <summary>A clock whose timers never come: what waits for the next attempt waits for ever.</summary>
    private sealed class NoSecondAttempt : TimeProvider
    {
        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period) => new Never();

        private sealed class Never : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }

    private sealed class KeptLines : ILogger<ExternalBroker>
    {
        private readonly List<string> _lines = [];

        public IReadOnlyList<string> Lines
        {
            get
            {
                lock (_lines) return [.. _lines];
            }
        }

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            lock (_lines) _lines.Add(string.Create(CultureInfo.InvariantCulture, $"{formatter(state, exception)} {exception}"));
        }
    }
}
