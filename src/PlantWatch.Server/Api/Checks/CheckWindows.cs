using System.Collections.Immutable;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Reads what each probe of a pool did around a sample: allowing for the way to the cell, over a few minutes, as far as it is already known.</summary>
internal static class CheckWindows
{
    public static async Task<ImmutableArray<ProbeWindow>> ReadAsync(CircuitWorker worker, ISeriesStore store, ManualCheck check, CancellationToken cancellation)
    {
        // A sample of the year 9999 is refused by the core; until then it has no minutes around it.
        if (!Times.IsReckonable(check.SampledAt)) return [];
        var windows = ImmutableArray.CreateBuilder<ProbeWindow>();
        foreach (var (plan, state) in worker.State.Plan.Probes.Zip(worker.State.Probes))
        {
            if (plan.PoolId is not null && plan.PoolId != check.PoolId) continue;
            var (from, to) = Reconciliation.WindowAround(plan, check);
            // A sample just taken has not reached the cell: the window keeps its width and reaches back from the newest reading, but never further than from the sample.
            var newest = state.Last.MeasuredAt;
            if (newest.IsSet && newest < to) from = Instant.Later(newest, check.SampledAt) - (to - from);
            windows.Add(await store.WindowAsync(worker.Partition, plan.Id, from, to, cancellation));
        }

        return windows.DrainToImmutable();
    }
}
