using System.Collections.Immutable;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Probes;

/// <summary>Which of a probe's calibrations holds when.</summary>
public static class CalibrationsInForce
{
    /// <summary>The approved calibration that corrects a probe's raw value at an instant; null when raw is taken as it is. Panel adjustments are carried out on the panel and never applied here.</summary>
    public static Calibration? At(ImmutableArray<Calibration> calibrations, string probeId, Instant at)
    {
        Calibration? held = null;
        foreach (var candidate in calibrations)
            if (candidate.ProbeId == probeId && Corrects(candidate) && candidate.HoldsFrom <= at && (held is null || Later(candidate, held)))
                held = candidate;
        return held;
    }

    /// <summary>The corrected value at an instant.</summary>
    public static double Correct(ImmutableArray<Calibration> calibrations, string probeId, Instant at, double raw) =>
        At(calibrations, probeId, at)?.Apply(raw) ?? raw;

    /// <summary>The times at which the meaning of the probe's number changed or the probe itself was worked on, in order, up to an instant.</summary>
    public static ImmutableArray<Calibration> Changes(ImmutableArray<Calibration> calibrations, string probeId, Instant until)
    {
        var changes = ImmutableArray.CreateBuilder<Calibration>();
        foreach (var candidate in calibrations)
            if (candidate.ProbeId == probeId && (Corrects(candidate) || Adjusts(candidate) || Touches(candidate)) && candidate.HoldsFrom <= until) changes.Add(candidate);
        changes.Sort(ByTime);
        return changes.DrainToImmutable();
    }

    /// <summary>True for what is applied to raw values.</summary>
    public static bool Corrects(Calibration calibration) =>
        calibration.Status == CalibrationStatus.Approved && calibration.Kind is CalibrationKind.Offset or CalibrationKind.TwoPoint;

    private static bool Adjusts(Calibration calibration) =>
        calibration.Status == CalibrationStatus.Adjusted && calibration.Kind == CalibrationKind.PanelAdjustment;

    // Who cleaned an electrode has cleaned it, even when the numbers written down with it are turned down later.
    private static bool Touches(Calibration calibration) => calibration.Work != ProbeWork.None && calibration.HoldsFrom.IsSet;

    // Two that hold from the same time: the later decision stands.
    private static bool Later(Calibration a, Calibration b) => ByTime.Compare(a, b) > 0;

    /// <summary>The order in which calibrations follow each other.</summary>
    internal static Comparer<Calibration> ByTime { get; } =
        Comparer<Calibration>.Create((a, b) => (a.HoldsFrom, a.DecidedAt, a.Id).CompareTo((b.HoldsFrom, b.DecidedAt, b.Id)));
}
