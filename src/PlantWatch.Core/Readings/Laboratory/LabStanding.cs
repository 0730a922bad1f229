using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Laboratory;

/// <summary>A count of one sample.</summary>
/// <param name="ResultId">The report.</param>
/// <param name="SampledAt">When the sample was taken.</param>
/// <param name="EnteredAt">When the report was entered: the time to a resample runs from then.</param>
/// <param name="Count">The count.</param>
public sealed record LabFinding(Guid ResultId, Instant SampledAt, Instant EnteredAt, LabCount Count);

/// <summary>What is known of one organism at one point of a pool. Chemistry has no part in it: nothing of it can be reached from there.</summary>
/// <param name="Organism">Which.</param>
/// <param name="Point">Where.</param>
/// <param name="Newest">The newest sample; null only before the first.</param>
/// <param name="Outside">The finding outside its limit that nobody and no newer sample has answered; null when there is none.</param>
/// <param name="ClosedThrough">Samples up to this were closed by a person with a reason; never means none.</param>
public sealed record LabStanding(Organism Organism, SamplePoint Point, LabFinding? Newest, LabFinding? Outside, Instant ClosedThrough)
{
    /// <summary>A sample came in. One older than the newest changes what is newest not, and is answered by a newer one inside the limit.</summary>
    public LabStanding With(LabFinding finding, LabLimit? limit)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var next = Newest is null || finding.SampledAt >= Newest.SampledAt ? this with { Newest = finding } : this;
        if (limit?.Of(finding.Count) != LabVerdict.Outside) return next.Judged(limit);
        var answered = finding.SampledAt <= ClosedThrough || (next.Newest is { } newest && newest.SampledAt > finding.SampledAt && limit.Of(newest.Count) == LabVerdict.Inside);
        return answered || (Outside is { } known && known.SampledAt > finding.SampledAt) ? next : next with { Outside = finding };
    }

    /// <summary>Holds the newest sample against the limit as it is now: outside it stands, inside and sampled after it answers what stood. No limit and not proven answer nothing.</summary>
    public LabStanding Judged(LabLimit? limit)
    {
        if (Newest is not { } newest || newest.SampledAt <= ClosedThrough) return this;
        return limit?.Of(newest.Count) switch
        {
            LabVerdict.Outside when Outside is null || Outside.SampledAt < newest.SampledAt => this with { Outside = newest },
            LabVerdict.Inside when Outside is { } outside && newest.SampledAt > outside.SampledAt => this with { Outside = null },
            _ => this,
        };
    }

    /// <summary>A person closed what stands.</summary>
    public LabStanding Closed() => Outside is { } outside ? this with { Outside = null, ClosedThrough = Instant.Later(ClosedThrough, outside.SampledAt) } : this;
}
