using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plant.Journal;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.PlantFile;
using PlantWatch.Storage;
using PlantWatch.Storage.Sqlite;

namespace PlantWatch.Server.Tests.Commands;

/// <summary>A data folder as days of the running server leave it: each batch folded and committed by the same code, with windows read from the record as the interface reads them.</summary>
internal sealed class LivedRecord(string folder, string plantFile)
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 2);
    private static readonly TimeSpan Every = TimeSpan.FromSeconds(10);

    /// <summary>What people do beside the tests, by the hour: an event made from the time and the state it is told to; null when there is nothing to do.</summary>
    public IReadOnlyList<(double Hour, Func<Instant, CircuitState, PlantEvent?> Do)> Acts { get; init; } = [];

    private readonly CircuitPlan _plan = PlantFileReader.Read(plantFile).Plan!.Circuits[0];
    private readonly PartitionKey _partition = new("hall");
    private readonly List<Commit> _waiting = [];
    private CircuitState? _state;
    private long _seq;

    /// <summary>Lives so many hours: pH by the hour of the day, a check at the hours named.</summary>
    /// <param name="hours">How long.</param>
    /// <param name="ph">What the probe reads at a time, in hours.</param>
    /// <param name="tests">When a sample is tested, in hours, and what the test finds.</param>
    public async Task LiveAsync(int hours, Func<double, double> ph, params (double Hour, double Ph)[] tests)
    {
        Directory.CreateDirectory(folder);
        await File.WriteAllTextAsync(Path.Combine(folder, "plant.in-force.yaml"), plantFile);
        await using var store = SqliteStore.Open(Path.Combine(folder, "record.db"), TimeZoneInfo.Utc);
        _state = CircuitState.Of(new CircuitPlan { Id = _plan.Id, Name = _plan.Name, TimeZone = _plan.TimeZone });
        Take(new PlanLoaded(Start, _plan));
        var (next, act) = (0, 0);
        for (var second = 10; second < hours * 3600; second += 10)
        {
            var (at, hour) = (Start + TimeSpan.FromSeconds(second), second / 3600.0);
            var value = ph(hour) + (0.01 * (second / 10 % 3));
            Take(new MessageArrived(at, "hall/ph", Encoding.UTF8.GetBytes(value.ToString("0.00", CultureInfo.InvariantCulture)), false, null), new ClockTicked(at + TimeSpan.FromMilliseconds(1)));
            for (; act < Acts.Count && Acts[act].Hour <= hour; act++)
                if (Acts[act].Do(at + TimeSpan.FromMilliseconds(3), _state!) is { } done) Take(done);
            if (next == tests.Length || tests[next].Hour > hour) continue;
            await FlushAsync(store);
            await CheckAsync(store, at + TimeSpan.FromMilliseconds(2), tests[next++].Ph);
        }

        await FlushAsync(store);
    }

    private async Task CheckAsync(SqliteStore store, Instant at, double ph)
    {
        var check = new ManualCheck
        {
            Id = TimeOrderedId.Derive(at, "check"), PoolId = "main", SampledAt = at - Every, EnteredAt = at, Who = "A. Reed", Point = SamplePoint.Pool,
            Results = [new TestResult(Measurand.Ph, ph, TestMethod.Photometer)],
        };
        var windows = ImmutableArray.CreateBuilder<ProbeWindow>();
        foreach (var (plan, state) in _state!.Plan.Probes.Zip(_state.Probes))
        {
            var (from, to) = Reconciliation.WindowAround(plan, check);
            if (state.Last.MeasuredAt < to) from = Instant.Later(state.Last.MeasuredAt, check.SampledAt) - (to - from);
            windows.Add(await store.WindowAsync(_partition, plan.Id, from, to, default));
        }

        Take(new CheckEntered(at, check, windows.DrainToImmutable()));
    }

    private void Take(params PlantEvent[] events)
    {
        var result = Step.Run(_state!, events);
        _state = result.Next;
        _waiting.Add(new Commit(_partition, ++_seq, events[^1].At, JournalCodec.Write(events), result));
    }

    private async Task FlushAsync(SqliteStore store)
    {
        if (_waiting.Count > 0) await store.CommitAsync(_waiting, default);
        _waiting.Clear();
    }
}
