using System.Diagnostics;
using System.Text;
using Microsoft.Extensions.Logging.Abstractions;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Loop;
using PlantWatch.Server.PlantFile;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>Where one circuit's loop saturates, without a broker in front.</summary>
internal sealed class OnePartition : IBenchmark
{
    public string Name => "partition";

    public string Title => "One partition, flat out";

    public string Method =>
        "Messages handed to the door by four tasks that never wait for a commit, only for a place in the inbox: 30 probes, one circuit. Ours: inbox, Step, journal codec, group commit into SQLite with FULL. "
        + "Baseline: the same loop over a store that keeps nothing, so the ratio is the share that is left beside the disk.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var messages = bench.Of(400_000, 40_000);
        await using var ours = await Side.StartAsync(SqliteStore.Open(Path.Combine(bench.NewFolder("ours"), "record.db"), TimeZoneInfo.Utc));
        await using var bare = await Side.StartAsync(new ForgetfulStore());
        var pairs = await Rounds.InTurnAsync(bench.Rounds, () => ours.RateAsync(messages), () => bare.RateAsync(messages));
        return [pairs.Row("Messages/s through one circuit")];
    }

    private sealed class Side(IRecordStore store, Committer committer, PlantHost host) : IAsyncDisposable
    {
        private const int Probes = 30;
        private const int Feeders = 4;
        private readonly byte[][] _payloads = [.. Enumerable.Range(0, 41 * Probes).Select(i => Encoding.UTF8.GetBytes(Plants.Value(i % Probes, i / Probes)))];
        private readonly string[] _topics = [.. Enumerable.Range(0, Probes).Select(Plants.Topic)];
        private int _packets;

        public static async Task<Side> StartAsync(IRecordStore store)
        {
            var committer = new Committer(store, TimeProvider.System, NullLogger<Committer>.Instance);
            committer.Start();
            var snapshots = new Snapshots(store, TimeProvider.System, NullLogger<Snapshots>.Instance);
            var host = new PlantHost(store, committer, snapshots, TimeProvider.System, NullLogger<PlantHost>.Instance);
            await host.LoadAsync(PlantFileReader.Read(Plants.File(Probes)).Plan!, default);
            return new Side(store, committer, host);
        }

        public async Task<double> RateAsync(int messages)
        {
            var counter = new Counter(messages);
            void Count(CircuitWorker worker, StepResult result) => counter.Add(result.Readings.Length);
            host.Committed += Count;
            var start = Stopwatch.GetTimestamp();
            await Task.WhenAll(Enumerable.Range(0, Feeders).Select(f => Task.Run(() => FeedAsync(f, messages / Feeders))));
            await counter.ReachedAsync(TimeSpan.FromMinutes(2));
            var rate = messages / Stopwatch.GetElapsedTime(start).TotalSeconds;
            host.Committed -= Count;
            return rate;
        }

        public async ValueTask DisposeAsync()
        {
            await host.DisposeAsync();
            await committer.DisposeAsync();
            await store.DisposeAsync();
        }

        private async Task FeedAsync(int feeder, int messages)
        {
            for (var i = 0; i < messages; i++)
            {
                var which = ((i * Feeders) + feeder) % Probes;
                var payload = _payloads[((i % 41) * Probes) + which];
                await await TakenAsync(new IncomingMessage(_topics[which], payload, false, "bench", (Interlocked.Increment(ref _packets) % 65535) + 1, false));
            }
        }

        // The outer task is the place in the inbox; the commit is not waited for.
        private async Task<Task> TakenAsync(IncomingMessage message)
        {
            await host.MessageAsync(message, default);
            return Task.CompletedTask;
        }
    }
}
