using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>How a pool was run at a moment, out of the record.</summary>
internal static class OperationAt
{
    /// <summary>As it was set last before; where no row before tells, as it is run now if that is older; else not stated.</summary>
    public static PoolOperation Of(SheetSource source, string pool, Instant at)
    {
        PoolOperation? found = null;
        foreach (var row in source.Operations)
            if (row.Body is PoolStateEntry entry && row.Subject == pool && row.HappenedAt <= at) found = entry.Operation;
        if (found is { } known) return known;
        var now = source.State.Pools.FirstOrDefault(p => p.Id == pool)?.Operation ?? default;
        return now.Since <= at ? now : default;
    }
}
