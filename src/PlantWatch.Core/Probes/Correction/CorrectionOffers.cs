using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes.Correction;

/// <summary>A stretch of the record between two services, and the correction that the second one speaks for: for a person to take up or leave.</summary>
/// <param name="From">The first service.</param>
/// <param name="To">The second.</param>
/// <param name="FromService">The calibration of the first.</param>
/// <param name="ToService">The calibration of the second.</param>
/// <param name="Gap">What calibration found, with its standard uncertainty, at <paramref name="Pivot"/>; unknown when this service found none.</param>
/// <param name="Fouling">What cleaning removed, where the probe was read before and after; else 0.</param>
/// <param name="Slope">How much the gap grows for each unit above the pivot.</param>
/// <param name="Pivot">The value the gap is given at.</param>
/// <param name="Why">Reasons, most important first.</param>
public sealed record CorrectionOffer(
    Instant From, Instant To, Guid FromService, Guid ToService, Estimate Gap, double Fouling, double Slope, double Pivot, ImmutableArray<Reason> Why);

/// <summary>What corrections two services of a probe speak for. Nothing is corrected by itself: a person confirms.</summary>
public static class CorrectionOffers
{
    /// <summary>The stretches between services that nobody has corrected yet, newest first.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="calibrations">The calibrations of the circuit.</param>
    /// <param name="corrections">The corrections of the circuit.</param>
    /// <param name="now">Services after it are left for later.</param>
    public static ImmutableArray<CorrectionOffer> For(
        ProbePlan probe, ImmutableArray<Calibration> calibrations, ImmutableArray<RecordCorrection> corrections, Instant now)
    {
        ArgumentNullException.ThrowIfNull(probe);
        if (CorrectionModel.Of(probe.Measurand) is not { } model) return [];
        var services = CalibrationsInForce.Changes(calibrations, probe.Id, now);
        var offers = ImmutableArray.CreateBuilder<CorrectionOffer>();
        for (var i = services.Length - 1; i > 0; i--)
        {
            var (first, second) = (services[i - 1], services[i]);
            if (second.HoldsFrom <= first.HoldsFrom || IsCorrected(corrections, probe.Id, first.HoldsFrom, second.HoldsFrom)) continue;
            offers.Add(Between(probe.Measurand, model, first, second, CalibrationsInForce.At(calibrations, probe.Id, first.HoldsFrom)));
        }

        return offers.ToImmutable();
    }

    /// <summary>Variance a day by which a probe of this kind strays between two services, in its unit squared; 0 for what no service finds a gap of.</summary>
    public static double WanderPerDay(Measurand measurand) => CorrectionModel.Of(measurand)?.WanderPerDay ?? 0;

    /// <summary>True when some part of a stretch is corrected already.</summary>
    public static bool IsCorrected(ImmutableArray<RecordCorrection> corrections, string probeId, Instant from, Instant to) =>
        corrections.Any(c => c.ProbeId == probeId && c.IsInForce && c.From < to && from < c.To);

    private static CorrectionOffer Between(Measurand measurand, CorrectionModel model, Calibration first, Calibration second, Calibration? held)
    {
        var found = FoundGap.Of(measurand, model.Pivot, second, held);
        var u = second.ByBuffers || second.ByCheckSolution ? model.UByBuffers : model.UByTests;
        return new(
            first.HoldsFrom, EndOf(first, second), first.Id, second.Id, found is { } gap ? new(gap.Drift, u) : default, found?.Fouling ?? 0, found?.Slope ?? 0, model.Pivot,
            Why(measurand, model, second, found, u));
    }

    // What it read on the bench is no pool water: the stretch ends when the probe left its cell.
    private static Instant EndOf(Calibration first, Calibration second) =>
        second.Sheet is { StartedAt: var left } && left > first.HoldsFrom && left < second.HoldsFrom ? left : second.HoldsFrom;

    private static ImmutableArray<Reason> Why(Measurand measurand, CorrectionModel model, Calibration second, FoundGap? found, double u)
    {
        if (found is not { } gap) return [Reason.Of(FoundGap.IsAnotherProbe(second) ? "correction.another_electrode" : "correction.no_gap_found")];
        var why = ImmutableArray.CreateBuilder<Reason>();
        var whole = gap.Drift + gap.Fouling;
        why.Add(Reason.Of("correction.gap_found", whole, 2 * u, measurand.Unit()));
        if (gap.Fouling != 0) why.Add(Reason.Of("correction.fouling_found", gap.Fouling, gap.Drift, measurand.Unit()));
        if (Math.Abs(whole) <= 2 * u) why.Add(Reason.Of("correction.within_uncertainty"));
        else if (Math.Abs(whole) < model.CorrectedFrom) why.Add(Reason.Of("correction.small", model.CorrectedFrom, measurand.Unit()));
        if (second.Work.HasFlag(ProbeWork.Cleaned) && !gap.IsAsFound) why.Add(Reason.Of("correction.fouling_not_told"));
        return why.ToImmutable();
    }
}
