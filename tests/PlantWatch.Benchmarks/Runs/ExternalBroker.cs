using System.Diagnostics;
using PlantWatch.Benchmarks.Kit;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>A broker in front, flat out: what the record costs beside a client that forgets everything.</summary>
internal sealed class ExternalBroker : IBenchmark
{
    private const int Publishers = 4;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    public string Name => "external";

    public string Title => "External broker, QoS 1 end to end";

    public string Method =>
        "A real mosquitto, four `mosquitto_pub -l` flat out, plain numbers. Ours: the whole server, from MQTT to Step, journal, roll-ups and a FULL commit, then the acknowledgement. "
        + "Baseline: an MQTTnet client of the same session and window that acknowledges at once and discards. Live: both sides stay connected; counted from the start of the publishers to the last message durable. "
        + "Backlog: published while the subscriber is away, then it connects; counted from the first message it takes to the last durable. CPU is this process alone, without broker and publishers.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        await using var broker = await Mosquitto.StartAsync(bench.Folder);
        var each = bench.Of(25_000, 4_000);
        var lines = await Mosquitto.LinesAsync(bench.Folder, each);
        await using var ours = new OurSide(broker, bench.NewFolder("server"), lines, each * Publishers);
        await using var bare = new BareSide(broker, lines, each * Publishers);
        await ours.StartAsync();
        await bare.StartAsync();
        var live = await Rounds.InTurnAsync(bench.Rounds, ours.LiveAsync, bare.LiveAsync);
        var cpu = new Pairs([.. ours.Cpu.Skip(1)], [.. bare.Cpu.Skip(1)]);
        bench.Say("live is done");
        ours.Cpu.Clear();
        bare.Cpu.Clear();
        var backlog = await Rounds.InTurnAsync(bench.Rounds, ours.BacklogAsync, bare.BacklogAsync);
        var backlogCpu = new Pairs([.. ours.Cpu.Skip(1)], [.. bare.Cpu.Skip(1)]);
        return [
            live.Row("Live publisher, messages/s", "0.90"), cpu.Row("Live publisher, CPU µs a message (less is better)"),
            backlog.Row("Draining a backlog, messages/s", "0.35"), backlogCpu.Row("Draining a backlog, CPU µs a message (less is better)"),
        ];
    }

    private static string[] Topics(string of) => [.. Enumerable.Range(0, Publishers).Select(i => $"{of}/{i}")];

    private static double Cpu() => Environment.CpuUsage.TotalTime.TotalMicroseconds;

    private sealed class OurSide(Mosquitto broker, string folder, string lines, int messages) : IAsyncDisposable
    {
        private ServerUnderTest? _server;

        public List<double> Cpu { get; } = [];

        public async Task StartAsync(Counter? counter = null)
        {
            _server = await ServerUnderTest.StartAsync(folder, Plants.File(Publishers, only: "ph"), broker.Port, s => Count(s, counter));
        }

        public async Task<double> LiveAsync()
        {
            var counter = new Counter(messages);
            Count(_server!, counter);
            var (start, cpu) = (Stopwatch.GetTimestamp(), ExternalBroker.Cpu());
            var publishers = broker.Publish(Topics("hall/probe"), lines);
            await counter.ReachedAsync(Patience);
            var rate = messages / Stopwatch.GetElapsedTime(start).TotalSeconds;
            Cpu.Add((ExternalBroker.Cpu() - cpu) / messages);
            await Mosquitto.EndedAsync(publishers);
            return rate;
        }

        public async Task<double> BacklogAsync()
        {
            await _server!.DisposeAsync();
            await Mosquitto.EndedAsync(broker.Publish(Topics("hall/probe"), lines));
            var counter = new Counter(messages);
            // The stamp at the door says when the first was taken; the commit that tells of it comes later.
            var cpu = ExternalBroker.Cpu();
            await StartAsync(counter);
            await counter.ReachedAsync(Patience);
            Cpu.Add((ExternalBroker.Cpu() - cpu) / messages);
            return messages / (DateTimeOffset.UtcNow.ToUnixTimeMilliseconds() - _firstTaken) * 1000;
        }

        public async ValueTask DisposeAsync()
        {
            if (_server is not null) await _server.DisposeAsync();
        }

        private double _firstTaken;

        private void Count(ServerUnderTest counted, Counter? counter)
        {
            _firstTaken = 0;
            counted.OnCommit = result =>
            {
                if (_firstTaken == 0 && result.Readings.Length > 0) _firstTaken = result.Readings[0].ReceivedAt.UnixMicroseconds / 1000.0;
                counter?.Add(result.Readings.Length);
            };
        }
    }

    private sealed class BareSide(Mosquitto broker, string lines, int messages) : IAsyncDisposable
    {
        private readonly BareClient _client = new(broker.Port, "bare");

        public List<double> Cpu { get; } = [];

        public async Task StartAsync()
        {
            await _client.ConnectAsync();
            await _client.SubscribeAsync("bare/probe/+");
        }

        public async Task<double> LiveAsync()
        {
            var counter = Count();
            var (start, cpu) = (Stopwatch.GetTimestamp(), ExternalBroker.Cpu());
            var publishers = broker.Publish(Topics("bare/probe"), lines);
            await counter.ReachedAsync(Patience);
            var rate = messages / Stopwatch.GetElapsedTime(start).TotalSeconds;
            Cpu.Add((ExternalBroker.Cpu() - cpu) / messages);
            await Mosquitto.EndedAsync(publishers);
            return rate;
        }

        public async Task<double> BacklogAsync()
        {
            await _client.LeaveAsync();
            await Mosquitto.EndedAsync(broker.Publish(Topics("bare/probe"), lines));
            var counter = Count();
            var cpu = ExternalBroker.Cpu();
            await _client.ConnectAsync();
            await counter.ReachedAsync(Patience);
            Cpu.Add((ExternalBroker.Cpu() - cpu) / messages);
            return messages / counter.SecondsSinceFirst;
        }

        public ValueTask DisposeAsync() => _client.DisposeAsync();

        private Counter Count()
        {
            var counter = new Counter(messages);
            _client.OnMessage = () => counter.Add(1);
            return counter;
        }
    }
}
