using PlantWatch.Core.Plans;
using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Readings.Laboratory;

/// <summary>When the next sample is due.</summary>
public static class LabDue
{
    /// <summary>When the next planned sample must have been taken; never when none is planned.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="expectedSince">Since when samples are expected.</param>
    /// <param name="last">The newest sample; never when there was none.</param>
    public static Instant Sample(LabPlan plan, Instant expectedSince, Instant last)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return plan.Every is { } every && expectedSince.IsSet ? (last.IsSet ? last : expectedSince) + every : Instant.Never;
    }

    /// <summary>When a resample of what stands outside its limit must have been taken; never when nothing stands. A newer sample that proves nothing is no resample.</summary>
    public static Instant Resample(LabPlan plan, ImmutableArray<LabStanding> all)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var due = Instant.Never;
        foreach (var standing in all)
            if (standing.Outside is { } outside && (!due.IsSet || outside.EnteredAt + plan.ResampleWithin < due)) due = outside.EnteredAt + plan.ResampleWithin;
        return due;
    }
}
