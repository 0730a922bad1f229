using System.Diagnostics.Metrics;
using PlantWatch.Server.Api;
using PlantWatch.Server.Series;

namespace PlantWatch.Server.Metrics;

/// <summary>The figures of a running server. What the ledger already counts is read from it, so that the metrics close as the ledger does.</summary>
internal sealed class PlantWatchMeter
{
    /// <summary>Name of the meter.</summary>
    public const string Name = "PlantWatch";

    // From a write into a cache to a disk that is dying; a healthy one needs 1 to 50 ms for a commit with an fsync.
    private static readonly double[] CommitSeconds = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10];
    private static readonly double[] BatchEvents = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

    private readonly Histogram<double> _commitDuration;
    private readonly Histogram<int> _commitEvents;
    private readonly UpDownCounter<int> _hubConnections;
    private volatile MeterSources _sources = MeterSources.None;

    public PlantWatchMeter(IMeterFactory factory)
    {
        var meter = factory.Create(Name);
        _commitDuration = meter.CreateHistogram("plantwatch.commit.duration", "s", "Time of a commit to disk, fsync included.", advice: new InstrumentAdvice<double> { HistogramBucketBoundaries = CommitSeconds });
        _commitEvents = meter.CreateHistogram("plantwatch.commit.events", "{event}", "Events in a commit.", advice: new InstrumentAdvice<int> { HistogramBucketBoundaries = [.. BatchEvents.Select(e => (int)e)] });
        _hubConnections = meter.CreateUpDownCounter<int>("plantwatch.hub.connections", "{connection}", "Browsers connected live.");
        Ledger(meter, "plantwatch.messages.received", "{message}", "MQTT messages that were taken in.", l => l.Messages);
        Ledger(meter, "plantwatch.readings.received", "{reading}", "Items those messages carried: received = stored + duplicates + refused + in flight.", l => l.Received);
        Ledger(meter, "plantwatch.readings.stored", "{reading}", "Items stored as readings.", l => l.Stored);
        Ledger(meter, "plantwatch.readings.duplicates", "{reading}", "Items that were stored before.", l => l.Duplicates);
        Ledger(meter, "plantwatch.readings.refused", "{reading}", "Items refused and kept with their bytes.", l => l.Refused);
        meter.CreateObservableUpDownCounter("plantwatch.readings.in_flight", () => OfLedgers(l => l.InFlight), "{reading}", "Items taken in and not yet committed.");
        meter.CreateObservableGauge("plantwatch.inbox.depth", () => _sources.InboxDepths().Select(d => Of(d.Circuit, (long)d.Depth)), "{event}", "Events waiting in the inbox of a circuit.");
        meter.CreateObservableGauge("plantwatch.wal.size", () => _sources.WalBytes(), "By", "Size of the write-ahead log; it should fall back by itself.");
        Feed(meter, "plantwatch.series_feed.behind", "{reading}", "Readings of the record that are not in InfluxDB yet.", f => f.Owed.Readings);
        Feed(meter, "plantwatch.series_feed.lag", "s", "Age of the oldest reading that is not in InfluxDB yet.", f => f.Lag.TotalSeconds);
        Feed(meter, "plantwatch.series_feed.parked", "{line}", "Lines that InfluxDB refused for good, each time counted.", f => f.Owed.Parked);
        Feed(meter, "plantwatch.series_feed.failing", "1", "1 while InfluxDB does not take what it is given.", f => f.Trouble.Length > 0 ? 1 : 0);
        Feed(meter, "plantwatch.series_feed.differing", "{day}", "Days of series that the last nightly comparison found to differ in InfluxDB.", f => f.Differing);
        meter.CreateObservableCounter("plantwatch.series_feed.written", () => OfFeed(f => f.Written), "{reading}", "Readings written to InfluxDB since the start, repetitions counted.");
        meter.CreateObservableGauge("plantwatch.backup.age", BackupAge, "s", "Age of the newest nightly backup; none while there is none.");
    }

    /// <summary>Says where the observed figures come from. Until then there are none.</summary>
    public void Watch(MeterSources sources) => _sources = sources;

    /// <summary>A commit is on disk.</summary>
    public void Committed(TimeSpan took, int events)
    {
        _commitDuration.Record(took.TotalSeconds);
        _commitEvents.Record(events);
    }

    /// <summary>A browser connected live.</summary>
    public void HubConnected() => _hubConnections.Add(1);

    /// <summary>A live browser went away.</summary>
    public void HubDisconnected() => _hubConnections.Add(-1);

    private void Ledger(Meter meter, string name, string unit, string meaning, Func<LedgerView, long> figure) =>
        meter.CreateObservableCounter(name, () => OfLedgers(figure), unit, meaning);

    private void Feed(Meter meter, string name, string unit, string meaning, Func<FeedView, double> figure) => meter.CreateObservableGauge(name, () => OfFeed(figure), unit, meaning);

    // Nobody who does not feed another store has to wonder about its figures.
    private IEnumerable<Measurement<T>> OfFeed<T>(Func<FeedView, T> figure)
        where T : struct => _sources.Feed?.Invoke() is { IsOn: true } feed ? [new(figure(feed))] : [];

    private IEnumerable<Measurement<long>> OfLedgers(Func<LedgerView, long> figure) => _sources.Ledgers().Select(l => Of(l.Circuit, figure(l.Ledger)));

    private IEnumerable<Measurement<double>> BackupAge() => _sources.BackupAge() is { } age ? [new Measurement<double>(age.TotalSeconds)] : [];

    private static Measurement<long> Of(string circuit, long value) => new(value, new KeyValuePair<string, object?>("circuit", circuit));
}

/// <summary>Where the observed figures come from. Each is called when metrics are read, from any thread.</summary>
/// <param name="Ledgers">The closing sums of each circuit.</param>
/// <param name="InboxDepths">Events waiting, by circuit.</param>
/// <param name="WalBytes">Size of the write-ahead log in bytes.</param>
/// <param name="Feed">How far the series are in InfluxDB; null when nobody knows.</param>
internal sealed record MeterSources(
    Func<IEnumerable<(string Circuit, LedgerView Ledger)>> Ledgers, Func<IEnumerable<(string Circuit, int Depth)>> InboxDepths, Func<long> WalBytes,
    Func<FeedView>? Feed = null)
{
    /// <summary>Age of the newest nightly backup; null when there is none.</summary>
    public Func<TimeSpan?> BackupAge { get; init; } = () => null;

    /// <summary>Nothing to observe.</summary>
    public static MeterSources None { get; } = new(() => [], () => [], () => 0);
}
