using PlantWatch.Core.Quantities;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>All raw readings of a range, a page at a time: a series that speaks every second is not cut short where a page ends.</summary>
internal static class WholeSeries
{
    /// <summary>In time order, start included, end excluded.</summary>
    /// <param name="atOnce">How many are read at once.</param>
    public static async Task<IReadOnlyList<StoredReading>> RawAsync(ISeriesStore store, PartitionKey partition, string series, Instant from, Instant to, int atOnce, CancellationToken cancellation)
    {
        var all = new List<StoredReading>();
        for (var next = from; ; next = all[^1].MeasuredAt + TimeSpan.FromMicroseconds(1))
        {
            var page = await store.RawAsync(partition, series, next, to, atOnce, cancellation);
            all.AddRange(page);
            if (page.Count < atOnce) return all;
        }
    }
}
