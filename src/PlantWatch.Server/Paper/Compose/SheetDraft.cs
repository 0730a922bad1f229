using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Server.Paper.Model;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Paper.Compose;

/// <summary>All that the parts of a sheet are made from.</summary>
/// <param name="Sources">The circuits, each with its pools.</param>
/// <param name="Span">The days.</param>
/// <param name="Now">When it is made.</param>
/// <param name="Words">The language.</param>
/// <param name="Series">The readings.</param>
/// <param name="Record">The record.</param>
internal sealed record SheetDraft(IReadOnlyList<SheetSource> Sources, SheetSpan Span, Instant Now, Wording Words, ISeriesStore Series, IRecordStore Record)
{
    /// <summary>The pools, each with its circuit.</summary>
    public IEnumerable<(SheetSource Source, PoolPlan Pool)> Pools => Sources.SelectMany(s => s.Pools.Select(p => (s, p)));
}
