using System.Net;
using MQTTnet.Server;
using PlantWatch.Benchmarks.Kit;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Benchmarks.Runs;

/// <summary>The broker inside: how many PUBACKs a second leave when each waits for its commit.</summary>
internal sealed class EmbeddedPuback : IBenchmark
{
    public string Name => "puback";

    public string Title => "Embedded broker, PUBACK after the commit";

    public string Method =>
        "So many MQTTnet clients in this process, each with one QoS 1 publish at a time on the way. Ours: the whole server. "
        + "Baselines: an MQTTnet server with an empty awaited interceptor, and what the disk allows: clients / commit latency (median of a commit of one reading into a store of its own, measured between the rounds). "
        + "The ratio is to the smaller of the two. Devices, broker and server share the processors.";

    public async Task<IReadOnlyList<Row>> RunAsync(Bench bench)
    {
        var rows = new List<Row>();
        var commits = new List<double>();
        await using var store = SqliteStore.Open(Path.Combine(bench.NewFolder("latency"), "record.db"), TimeZoneInfo.Utc);
        var maker = new Batches(new PartitionKey("latency"));
        await using var server = await ServerUnderTest.StartAsync(bench.NewFolder("server"), Plants.File(500));
        using var empty = await EmptyServer.StartAsync();
        foreach (var devices in new[] { 1, 10, 50, 500 })
        {
            var who = devices == 1 ? "1 client" : $"{devices} clients";
            var during = TimeSpan.FromSeconds(bench.Quick ? 0.5 : 2);
            await using var toUs = await PubackLoad.ConnectAsync(server.MqttPort, devices);
            await using var toEmpty = await PubackLoad.ConnectAsync(empty.Port, devices);
            var (bounds, cpu, emptyCpu) = (new List<double>(), new List<double>(), new List<double>());
            var (commitsMade, readings) = (0L, 0L);
            server.OnCommit = result => (commitsMade, readings) = (commitsMade + 1, readings + result.Readings.Length);
            var pairs = await Rounds.InTurnAsync(bench.Rounds, () => RateAsync(toUs, during, cpu), async () =>
            {
                var latency = await LatencyAsync(store, maker, bench.Of(100, 30));
                commits.AddRange(latency);
                bounds.Add(devices / Percentile.Median(latency) * 1000);
                return await RateAsync(toEmpty, during, emptyCpu);
            });
            var byDisk = new Pairs(pairs.Ours, [.. bounds.Skip(1)]);
            var smaller = Percentile.Median(pairs.Baseline) < Percentile.Median(byDisk.Baseline) ? pairs : byDisk;
            rows.Add(new Row($"{who}, PUBACK/s", Say.Spread(pairs.Ours),
                $"empty {Say.Number(Percentile.Median(pairs.Baseline))}; by the disk {Say.Number(Percentile.Median(byDisk.Baseline))}",
                $"{Say.Ratio(smaller.Ratio)} ({Say.Ratio(smaller.Range.Low)} to {Say.Ratio(smaller.Range.High)})", "0.80"));
            rows.Add(new Pairs([.. cpu.Skip(1)], [.. emptyCpu.Skip(1)]).Row($"{who}, CPU µs a PUBACK, device and broker together (less is better)"));
            rows.Add(new Row($"{who}, readings a commit", Say.Number((double)readings / Math.Max(1, commitsMade))));
            bench.Say($"{who}: done");
        }

        rows.Add(new Row("Commit of one reading, ms", Say.Tails(commits)));
        return rows;
    }

    private static async Task<double> RateAsync(PubackLoad load, TimeSpan during, List<double> cpu)
    {
        var before = Environment.CpuUsage.TotalTime;
        var (count, seconds) = await load.CountAsync(during);
        cpu.Add((Environment.CpuUsage.TotalTime - before).TotalMicroseconds / count);
        return count / seconds;
    }

    private static async Task<IReadOnlyList<double>> LatencyAsync(SqliteStore store, Batches maker, int times)
    {
        var found = new List<double>(times);
        for (var i = 0; i < times; i++)
        {
            var commit = maker.OfOneSeries(1);
            found.Add(await Rounds.MillisecondsAsync(async () => await store.CommitAsync([commit], default)));
        }

        return found;
    }

    private sealed class EmptyServer(MqttServer server, int port) : IDisposable
    {
        public int Port => port;

        public static async Task<EmptyServer> StartAsync()
        {
            var port = Mosquitto.FreePort();
            var server = new MqttServerFactory().CreateMqttServer(new MqttServerOptionsBuilder().WithDefaultEndpoint()
                .WithDefaultEndpointBoundIPAddress(IPAddress.Loopback).WithDefaultEndpointBoundIPV6Address(IPAddress.None).WithDefaultEndpointPort(port).Build());
            server.InterceptingPublishAsync += _ => Task.CompletedTask;
            await server.StartAsync();
            return new EmptyServer(server, port);
        }

        public void Dispose()
        {
            server.StopAsync(new MqttServerStopOptions()).GetAwaiter().GetResult();
            server.Dispose();
        }
    }
}
