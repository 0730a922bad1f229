using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Answering;

/// <summary>Where the bias of a probe is heading: drawn on from now, and when it will want service.</summary>
/// <param name="Points">The bias to come, earliest first; the first is now. Empty when nothing is known.</param>
/// <param name="Outlook">When the limit of maintenance is reached.</param>
public sealed record BiasAhead(ImmutableArray<(Instant At, Estimate Bias)> Points, ServiceOutlook Outlook)
{
    /// <summary>Drawn on for this many days at the least, and to where the limit is likely reached if that lies within twice as many.</summary>
    public const double DaysShown = 30;

    private const int Steps = 24;

    /// <summary>The outlook from a time on.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="trust">Its trust.</param>
    /// <param name="drift">How the bias moves, unit a day; unknown when no rate is told.</param>
    /// <param name="now">From when on.</param>
    public static BiasAhead Of(ProbePlan probe, ProbeTrust trust, Estimate drift, Instant now)
    {
        var bias = Reconciliation.BiasAt(probe, trust, now);
        var outlook = ServiceForecast.ByBias(bias, drift, TrustLimits.Of(probe.Measurand)?.MaintenanceAt ?? 0, Wander(probe, trust, drift, now), now);
        if (!bias.IsKnown) return new([], outlook);
        var days = Math.Clamp(((outlook.Likely ?? now) - now).TotalDays * 1.1, DaysShown, 2 * DaysShown);
        return new([.. Enumerable.Range(0, Steps + 1).Select(i => now + TimeSpan.FromDays(days * i / Steps)).Select(at => (at, Reconciliation.BiasAt(probe, trust, at)))], outlook);
    }

    // What a day adds to the variance beyond the uncertainty of the rate: taken from the estimate itself, so that drawing and days agree.
    private static double Wander(ProbePlan probe, ProbeTrust trust, Estimate drift, Instant now)
    {
        var (today, tomorrow) = (Reconciliation.BiasAt(probe, trust, now).StandardUncertainty, Reconciliation.BiasAt(probe, trust, now + TimeSpan.FromDays(1)).StandardUncertainty);
        return Math.Max(0, (tomorrow * tomorrow) - (today * today) - (drift.StandardUncertainty * drift.StandardUncertainty));
    }
}
