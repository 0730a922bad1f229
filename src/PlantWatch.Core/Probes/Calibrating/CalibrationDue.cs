using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes.Calibrating;

/// <summary>When a probe wants its next calibration by the interval of the plant file. A date to plan by, never an alarm.</summary>
public static class CalibrationDue
{
    /// <summary>The time it is due; null for what is not calibrated, such as a flow switch.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="calibrations">The calibrations of the circuit.</param>
    /// <param name="expectedSince">When the probe came into the plan: one never calibrated here counts from then.</param>
    public static Instant? Of(ProbePlan probe, ImmutableArray<Calibration> calibrations, Instant expectedSince)
    {
        if (probe.Measurand is not (Measurand.Ph or Measurand.Orp or Measurand.FreeChlorine)) return null;
        var last = expectedSince;
        foreach (var calibration in calibrations)
            if (calibration.ProbeId == probe.Id && Counts(calibration)) last = Instant.Later(last, calibration.HoldsFrom);
        return last.IsSet ? last + probe.Care.Every : null;
    }

    // Looked at and found good is as good as corrected. Work alone tells nothing of what the probe reads now.
    private static bool Counts(Calibration calibration) =>
        calibration.Status is CalibrationStatus.Approved or CalibrationStatus.Adjusted && !calibration.Objected && calibration.Sheet is not { Points.IsEmpty: true };
}
