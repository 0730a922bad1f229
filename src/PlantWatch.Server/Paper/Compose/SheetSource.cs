using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Storage;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>What the record and the state know of one circuit and a span: read once, for every part of a sheet.</summary>
/// <param name="Worker">The circuit.</param>
/// <param name="State">Its state, the same for the whole sheet.</param>
/// <param name="Pools">Those of its pools that the sheet is about.</param>
/// <param name="Span">The days.</param>
/// <param name="Wide">Its rows from some weeks before the span to shortly after it, oldest first by the time they speak of: what began before may still hold. With them, from further off, the rows that <see cref="FurtherOff"/> finds.</param>
/// <param name="Head">How far the record went.</param>
internal sealed record SheetSource(CircuitWorker Worker, CircuitState State, IReadOnlyList<PoolPlan> Pools, SheetSpan Span, IReadOnlyList<RecordEntry> Wide, RecordHead Head)
{
    private static readonly TimeSpan Before = TimeSpan.FromDays(35);
    private static readonly TimeSpan After = TimeSpan.FromDays(7);

    /// <summary>The plan.</summary>
    public CircuitPlan Plan => State.Plan;

    /// <summary>The rows of the span.</summary>
    public IReadOnlyList<RecordEntry> Rows { get; } = [.. Wide.Where(r => Span.Holds(r.HappenedAt))];

    /// <summary>What was said of how pools are run.</summary>
    public IReadOnlyList<RecordEntry> Operations { get; } = [.. Wide.Where(r => r.Body is PoolStateEntry)];

    /// <summary>True for what belongs to a pool of the sheet, or to water that its pools share.</summary>
    public bool Concerns(string subject) => Pools.Any(p => AlarmViews.Concerns(Plan, subject, p.Id));

    /// <summary>Reads it.</summary>
    public static async Task<SheetSource> ReadAsync(CircuitWorker worker, IReadOnlyList<PoolPlan> pools, SheetSpan span, IRecordStore store, CancellationToken cancellation)
    {
        var (state, seq) = (worker.State, worker.Seq);
        var wide = await store.EntriesAsync(worker.Partition, new EntryQuery([], null, span.From - Before, span.To + After, int.MaxValue), cancellation);
        var off = await FurtherOff.ReadAsync(worker.Partition, span, span.From - Before, span.To + After, store, cancellation);
        RecordEntry[] oldestFirst = [.. wide.Concat(off).DistinctBy(r => r.Id).OrderBy(r => r.HappenedAt).ThenBy(r => r.At).ThenBy(r => r.Id)];
        return new(worker, state, pools, span, oldestFirst, RecordDigests.HeadOf(worker.Partition.Value, seq, oldestFirst.Where(r => span.Holds(r.HappenedAt))));
    }
}
