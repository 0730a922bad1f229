using System.Collections.Immutable;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Server.Loop;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Reads what each probe of a pool did around a sample: allowing for the way to the cell, over a few minutes, as far as it is already known.</summary>
internal static class CheckWindows
{
    private static readonly TimeSpan Before = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan After = TimeSpan.FromMinutes(3);

    public static async Task<ImmutableArray<ProbeWindow>> ReadAsync(CircuitWorker worker, ISeriesStore store, ManualCheck check, CancellationToken cancellation)
    {
        var windows = ImmutableArray.CreateBuilder<ProbeWindow>();
        foreach (var (plan, state) in worker.State.Plan.Probes.Zip(worker.State.Probes))
        {
            if (plan.PoolId is not null && plan.PoolId != check.PoolId) continue;
            var centre = check.Point == SamplePoint.Cell ? check.SampledAt : check.SampledAt + plan.SampleDelay;
            // A sample just taken has not reached the cell: the window ends with the newest reading and reaches back as far as it may.
            var newest = state.Last.MeasuredAt;
            var from = newest.IsSet && newest < centre ? Instant.Later(newest - Before, check.SampledAt - Before) : centre - Before;
            windows.Add(await store.WindowAsync(worker.Partition, plan.Id, from, centre + After, cancellation));
        }

        return windows.DrainToImmutable();
    }
}
