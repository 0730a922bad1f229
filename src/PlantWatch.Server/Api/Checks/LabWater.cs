using System.Collections.Immutable;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Readings.Laboratory;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Reads what the chemistry was when a sample for the laboratory was taken: the newest tests by hand of the day before, and probes that were believed then.</summary>
internal static class LabWater
{
    private static readonly TimeSpan TestsOf = TimeSpan.FromHours(24);
    private static readonly TimeSpan Beside = TimeSpan.FromMinutes(15);

    public static async Task<ImmutableArray<WaterAtSampling>> ReadAsync(CircuitWorker worker, IRecordStore record, ISeriesStore series, LabResult result, CancellationToken cancellation)
    {
        if (!Times.IsReckonable(result.SampledAt)) return [];
        var water = ImmutableArray.CreateBuilder<WaterAtSampling>();
        await TestsAsync(water, worker.Partition, record, result, cancellation);
        foreach (var probe in worker.State.Plan.Probes.Where(p => p.PoolId == result.PoolId && p.Measurand != Measurand.SampleFlow))
        {
            if (!await IsBelievedAsync(worker.Partition, record, probe.Id, result.SampledAt, cancellation)) continue;
            var window = await series.WindowAsync(worker.Partition, probe.Id, result.SampledAt - Reconciliation.HalfWindow, result.SampledAt + Reconciliation.HalfWindow, cancellation);
            if (window.Count > 0) water.Add(new(probe.Measurand, CalibrationsInForce.Correct(worker.State.Calibrations, probe.Id, result.SampledAt, window.Mean), result.SampledAt, probe.Id));
        }

        return water.ToImmutable();
    }

    private static async Task TestsAsync(ImmutableArray<WaterAtSampling>.Builder water, PartitionKey partition, IRecordStore record, LabResult result, CancellationToken cancellation)
    {
        var rows = await record.EntriesAsync(partition, new EntryQuery(["check"], result.PoolId, result.SampledAt - TestsOf, result.SampledAt + Beside), cancellation);
        var checks = rows.Select(r => r.Body).OfType<CheckEntry>().Select(e => e.Check).ToArray();
        var corrected = checks.Select(c => c.Corrects).OfType<Guid>().ToHashSet();
        foreach (var check in checks.Where(c => !corrected.Contains(c.Id)).OrderByDescending(c => c.SampledAt))
            foreach (var test in check.Results.Where(t => t.Censoring == Censoring.None))
                if (water.All(w => w.Measurand != test.Measurand)) water.Add(new(test.Measurand, test.Value, check.SampledAt, null));
    }

    // By its signal and by its checks, as the record told it then: one that nothing was said against is believed.
    private static async Task<bool> IsBelievedAsync(PartitionKey partition, IRecordStore record, string probe, Instant at, CancellationToken cancellation)
    {
        var rows = await record.EntriesAsync(partition, new EntryQuery(["standing", "judgement"], probe, To: at, Limit: 50), cancellation);
        var signal = rows.Select(r => r.Body).OfType<StandingEntry>().FirstOrDefault()?.Standing;
        var tests = rows.Select(r => r.Body).OfType<JudgementEntry>().FirstOrDefault()?.Judgement.Standing;
        return signal is null or Standing.Good && tests is null or Standing.Good;
    }
}
