using System.Globalization;
using System.Net.Sockets;

namespace PlantWatch.Server.Tests.Peers;

/// <summary>A mosquitto broker of the test's own: a folder, a free port, everything logged, queued messages kept over a restart.</summary>
public sealed class Mosquitto : IAsyncDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("mosquitto-").FullName;
    private readonly string _extra;
    private readonly bool _persistent;
    private Peer? _broker;

    private Mosquitto(int port, bool persistent, string extra) => (Port, _persistent, _extra) = (port, persistent, extra);

    public int Port { get; }

    /// <summary>What the running broker has logged. Written by mosquitto itself: it saw these packets.</summary>
    public IReadOnlyList<string> Log => _broker?.Lines ?? [];

    /// <summary>Starts a broker.</summary>
    /// <param name="persistent">Keep sessions and queues on disk after every change.</param>
    /// <param name="extra">Further lines of its configuration.</param>
    /// <param name="port">0 for a free one.</param>
    public static async Task<Mosquitto> StartAsync(bool persistent = true, string extra = "", int port = 0)
    {
        var mosquitto = new Mosquitto(port == 0 ? Peer.FreePort() : port, persistent, extra);
        await mosquitto.StartAsync();
        return mosquitto;
    }

    public async Task StartAsync()
    {
        var configuration = Path.Combine(_folder, "mosquitto.conf");
        await File.WriteAllTextAsync(configuration, Configuration());
        _broker = Peer.Start("mosquitto", "-c", configuration);
        await Peer.UntilAsync(Answers, $"mosquitto answers on port {Port}; it says: {_broker.Output}");
    }

    /// <summary>Ends it in peace: it writes its sessions where they are persistent.</summary>
    public async Task StopAsync()
    {
        if (_broker is { } broker) await broker.StopAsync();
    }

    /// <summary>Ends it as a power cut would.</summary>
    public async Task KillAsync()
    {
        if (_broker is { } broker) await broker.KillAsync();
    }

    public Peer Publish(params string[] arguments) => Peer.Start("mosquitto_pub", ["-h", "127.0.0.1", "-p", Text(Port), .. arguments]);

    public Peer Subscribe(params string[] arguments) => Peer.Start("mosquitto_sub", ["-h", "127.0.0.1", "-p", Text(Port), .. arguments]);

    public async ValueTask DisposeAsync()
    {
        if (_broker is { } broker) await broker.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);

    private bool Answers()
    {
        try
        {
            using var client = new TcpClient("127.0.0.1", Port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private string Configuration() => $"""
        listener {Port} 127.0.0.1
        allow_anonymous true
        user root
        log_dest stdout
        log_type all
        connection_messages true
        persistence {(_persistent ? "true" : "false")}
        persistence_location {_folder}/
        autosave_on_changes true
        autosave_interval 1
        max_queued_messages 100000
        max_inflight_messages 2000
        {_extra}
        """ + "\n";
}
