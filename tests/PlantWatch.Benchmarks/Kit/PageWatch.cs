using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.SignalR.Client;
using Microsoft.Extensions.DependencyInjection;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Api;

namespace PlantWatch.Benchmarks.Kit;

/// <summary>A browser's live connection, without the browser: takes what the hub says and tells how old each reading is.</summary>
internal sealed class PageWatch : IAsyncDisposable
{
    private readonly ConcurrentDictionary<(string, double), long> _published = new();
    private readonly ConcurrentQueue<double> _milliseconds = new();
    private readonly HubConnection _hub;

    private PageWatch(HubConnection hub) => _hub = hub;

    /// <summary>Ages at arrival of the readings that were noted.</summary>
    public IReadOnlyList<double> Milliseconds => [.. _milliseconds];

    public static async Task<PageWatch> ConnectAsync(Uri address)
    {
        var hub = new HubConnectionBuilder().WithUrl(new Uri(address, "/live")).AddJsonProtocol(o => o.PayloadSerializerOptions = PlantJson.Options).Build();
        var watch = new PageWatch(hub);
        hub.On<ReadingsDelta>("readings", watch.Take);
        await hub.StartAsync();
        return watch;
    }

    /// <summary>Notes when a reading leaves its device. Values must differ within a probe.</summary>
    public void Note(string probe, double value) => _published[(probe, value)] = Stopwatch.GetTimestamp();

    public void Forget()
    {
        _published.Clear();
        _milliseconds.Clear();
    }

    public async ValueTask DisposeAsync() => await _hub.DisposeAsync();

    private void Take(ReadingsDelta delta)
    {
        var now = Stopwatch.GetTimestamp();
        foreach (var point in delta.Readings)
            if (_published.TryRemove((point.S, point.R), out var left)) _milliseconds.Enqueue(Stopwatch.GetElapsedTime(left, now).TotalMilliseconds);
    }
}

/// <summary>Devices that publish at a steady pace, each a few probes in turn, and say how long each PUBACK took.</summary>
internal sealed class PacedDevices(PubackLoad load, int devices, int probesEach, double aSecondEach)
{
    private readonly ConcurrentQueue<double> _acknowledged = new();
    private long _missed;
    private long _turn;

    /// <summary>Milliseconds from publish to PUBACK.</summary>
    public IReadOnlyList<double> Acknowledged => [.. _acknowledged];

    /// <summary>Publishes that could not leave in time because the one before was not acknowledged yet.</summary>
    public long Missed => Interlocked.Read(ref _missed);

    /// <summary>Publishes for a while; values are whole numbers that rise, so that each is known again.</summary>
    public async Task RunAsync(TimeSpan during, Action<string, double> note)
    {
        _acknowledged.Clear();
        Interlocked.Exchange(ref _missed, 0);
        var (start, from) = (Stopwatch.GetTimestamp(), _turn);
        var last = await Task.WhenAll(Enumerable.Range(0, devices).Select(d => Task.Run(() => DeviceAsync(d, start, from, during, note))));
        _turn = last.Max() + 1;
    }

    private async Task<long> DeviceAsync(int device, long start, long from, TimeSpan during, Action<string, double> note)
    {
        var apart = TimeSpan.FromSeconds(1 / aSecondEach);
        var offset = apart * device / devices;
        for (var i = 0L; ; i++)
        {
            var due = offset + (apart * i);
            if (due > during) return from + i;
            var early = due - Stopwatch.GetElapsedTime(start);
            if (early > TimeSpan.Zero) await Task.Delay(early);
            else if (early < -apart) Interlocked.Increment(ref _missed);
            var probe = (device * probesEach) + (int)(i % probesEach);
            var value = 1000 + ((from + i) % 100_000);
            note(Plants.Probe(probe), value);
            var sent = Stopwatch.GetTimestamp();
            await load.PublishAsync(device, Plants.Topic(probe), value.ToString(CultureInfo.InvariantCulture));
            _acknowledged.Enqueue(Stopwatch.GetElapsedTime(sent).TotalMilliseconds);
        }
    }
}
