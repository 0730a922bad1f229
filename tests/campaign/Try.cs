using System.Diagnostics;
using PlantWatch.Server;
using PlantWatch.Server.Api;

namespace PlantWatch.Campaign;

/// <summary>One try: devices speak without pause, the server is killed and started again so many times, then everything is drained and compared.</summary>
internal sealed class Try(CampaignOptions options) : IAsyncDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(90);
    private static readonly TimeSpan Silence = TimeSpan.FromSeconds(20);
    private readonly Random _chance = new(options.Seed);
    private readonly int _port = Programs.FreePort();
    private readonly List<Device> _devices = [];
    private readonly Dictionary<Blow, int> _blows = [];
    private readonly List<TimeSpan> _restarts = [];
    private Broker? _broker;
    private ServerProcess? _server;

    private ServerProcess Server => _server!;

    public async Task<Findings> RunAsync()
    {
        await BeginAsync();
        var feed = new Feed(_devices, options.Rate);
        feed.Start();
        for (var i = 0; i < options.Kills; i++) await StrikeAsync(i);
        await feed.StopAsync();
        await DrainAsync();
        return await CompareAsync(feed.Spoke);
    }

    public async ValueTask DisposeAsync()
    {
        foreach (var device in _devices) await device.DisposeAsync();
        if (_server is { } server) await server.DisposeAsync();
        if (_broker is { } broker) await broker.DisposeAsync();
    }

    private async Task BeginAsync()
    {
        Directory.CreateDirectory(options.Folder);
        _server = new ServerProcess(options.Folder, options.Mode, _port);
        await File.WriteAllTextAsync(Server.PlantFile, new NumberPlant(options.Devices).Yaml());
        if (options.Mode == BrokerMode.External)
        {
            _broker = new Broker(Path.Combine(options.Folder, "broker"), _port);
            await _broker.StartAsync();
        }
        for (var i = 0; i < options.Births; i++) await BirthAsync();
        // Ready once, so that the session with the external broker exists: what is said before that, nobody was there to hear.
        await StartAsync();
        for (var i = 0; i < options.Devices; i++) _devices.Add(new Device(i, _port));
    }

    private async Task StartAsync()
    {
        var clock = Stopwatch.StartNew();
        Server.Start();
        if (!await Programs.ComesAboutAsync(async () => Server.HasExited || await Server.IsReadyAsync(), Patience) || Server.HasExited)
            throw new TimeoutException($"the server is not ready:\n{string.Join('\n', Server.Said.TakeLast(30))}");
        _restarts.Add(clock.Elapsed);
    }

    private async Task BirthAsync()
    {
        if (Directory.Exists(Server.Data)) Directory.Delete(Server.Data, recursive: true);
        Server.Start();
        await Task.Delay(Between(TimeSpan.Zero, TimeSpan.FromSeconds(2.5)));
        await Server.KillAsync();
        _blows[Blow.AtBirth] = _blows.GetValueOrDefault(Blow.AtBirth) + 1;
        await StartAsync();
        await Server.KillAsync();
    }

    private async Task StrikeAsync(int number)
    {
        var blow = options.OddOnesIn == 0 ? Blow.InMidStream : (number % options.OddOnesIn) switch { 2 => Blow.WhileStarting, 4 => Blow.WhileStopping, _ => Blow.InMidStream };
        if (blow == Blow.WhileStarting)
        {
            await Server.KillAsync();
            Server.Start();
            await Task.Delay(Between(TimeSpan.Zero, _restarts.Max()));
        }
        else
        {
            if (options.CatchesUp) await CatchUpAsync();
            await Task.Delay(Between(options.Life.Least, options.Life.Most));
        }

        if (blow == Blow.WhileStopping)
        {
            Server.AskToEnd();
            await Task.Delay(Between(TimeSpan.Zero, TimeSpan.FromMilliseconds(400)));
        }
        var brokerToo = options.BrokerToo && blow == Blow.InMidStream;
        if (brokerToo) await _broker!.KillAsync();
        await Server.KillAsync();
        if (brokerToo) await _broker!.StartAsync();
        _blows[blow] = _blows.GetValueOrDefault(blow) + 1;
        await StartAsync();
    }

    private TimeSpan Between(TimeSpan least, TimeSpan most) => least + ((most - least) * _chance.NextDouble());

    /// <summary>Until the devices saw everything acknowledged, and nothing waits at the broker or in the server.</summary>
    private async Task DrainAsync()
    {
        var said = _devices.Sum(d => d.Said);
        await Programs.ComesAboutAsync(() => Task.FromResult(_devices.Sum(d => d.Acknowledged) == said), Patience);
        // Everything is there, or nothing comes any more.
        await Programs.ComesAboutAsync(async () => await Server.SumsAsync() is { InFlight: 0 } sums && (sums.Stored >= said || await NothingMovesAsync(sums)), TimeSpan.FromMinutes(10));
        Server.AskToEnd();
        if (!await Server.EndsAsync(Patience)) throw new TimeoutException("the server does not end when asked");
    }

    private async Task<bool> NothingMovesAsync(LedgerView before)
    {
        for (var waited = TimeSpan.Zero; waited < Silence; waited += TimeSpan.FromSeconds(1))
        {
            await Task.Delay(TimeSpan.FromSeconds(1));
            if (await Server.SumsAsync() is not { } after || after.Received != before.Received) return false;
        }
        return true;
    }

    /// <summary>On a busy machine a server that is killed every few seconds would never get through what waits at the broker; it is killed when no more waits than was said in ten seconds.</summary>
    private Task<bool> CatchUpAsync() => Programs.ComesAboutAsync(
        async () => await Server.SumsAsync() is { } sums && _devices.Sum(d => d.Acknowledged) - sums.Stored < 10 * options.Rate, TimeSpan.FromMinutes(2));

    private async Task<Findings> CompareAsync(TimeSpan spoke)
    {
        var record = new Record(Path.Combine(Server.Data, "record.db"), Server.PlantFile);
        var tally = _devices.Aggregate(default(Tally), (sum, d) => sum + Tally.Of(record.Values(NumberPlant.Circuit(d.Number), NumberPlant.Probe(d.Number)), d.Said, d.IsAcknowledged));
        return new Findings
        {
            Options = options,
            Said = _devices.Sum(d => d.Said),
            Acknowledged = _devices.Sum(d => d.Acknowledged),
            SentAgain = _devices.Sum(d => d.SentAgain),
            Rows = record.Rows(),
            Tally = tally,
            Sums = await record.SumsAsync(),
            Integrity = record.Integrity(),
            StatesAgree = await record.StatesAgreeAsync(),
            Blows = _blows,
            Spoke = spoke,
            Restarts = [.. _restarts.Skip(1)],
        };
    }
}
