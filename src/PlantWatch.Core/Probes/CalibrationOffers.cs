using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>A calibration PlantWatch would propose from the checks, for a person to take up or leave.</summary>
/// <param name="Kind">Offset, two-point or panel adjustment.</param>
/// <param name="Slope">Slope on the raw value.</param>
/// <param name="Offset">Offset on the raw value; for a panel adjustment the amount to add on the panel.</param>
/// <param name="Checks">The checks it rests on.</param>
public sealed record CalibrationOffer(CalibrationKind Kind, double Slope, double Offset, ImmutableArray<Guid> Checks);

/// <summary>An offer, or none, and in either case why.</summary>
/// <param name="Offer">The offer; null when nothing should be changed from these checks.</param>
/// <param name="Why">Reasons, most important first.</param>
public sealed record CalibrationAdvice(CalibrationOffer? Offer, ImmutableArray<Reason> Why);

/// <summary>What calibration the checks of a probe speak for. Never from one check alone, and never applied by itself.</summary>
public static class CalibrationOffers
{
    /// <summary>A slope is told from an offset only when the tests span at least this many pH.</summary>
    public const double LeastSpan = 0.5;

    // Older pairs belong to another state of the electrode.
    private static readonly TimeSpan Recent = TimeSpan.FromDays(10);

    // What a pH electrode may do: 85 to 105 % of theory (common practice); its inverse corrects.
    private static readonly ValueRange PlausibleSlope = new(1 / 1.05, 1 / 0.85);

    /// <summary>The advice on a probe's checks.</summary>
    /// <param name="probe">The probe.</param>
    /// <param name="trust">Its trust.</param>
    /// <param name="calibrations">The calibrations of the circuit.</param>
    /// <param name="now">Decides which of them is in force.</param>
    public static CalibrationAdvice For(ProbePlan probe, ProbeTrust trust, ImmutableArray<Calibration> calibrations, Instant now)
    {
        if (probe.Measurand == Measurand.Orp) return None(Reason.Of("offer.orp_by_check_solution"));
        var unit = probe.Measurand.Unit();
        if (!trust.Bias.IsKnown || trust.Taken < 2) return None(Reason.Of("offer.too_few_checks", trust.Taken, 2));
        var pairs = RecentPairs(trust);
        if (pairs.Length < 2) return None(Reason.Of("offer.too_few_checks", pairs.Length, 2));
        var held = CalibrationsInForce.At(calibrations, probe.Id, now);
        var slope = probe is { Measurand: Measurand.Ph, Origin: SignalOrigin.Raw } ? OfSlope(pairs, held) : null;
        if (slope?.Offer is not null) return slope;
        if (Math.Abs(trust.Bias.Value) <= trust.Bias.Expanded)
            return None(Reason.Of("offer.not_significant", trust.Bias.Value, trust.Bias.Expanded, unit));
        var moved = Reason.Of("offer.bias_is_significant", trust.Bias.Value, trust.Bias.Expanded, unit, pairs.Length);
        return probe.Origin == SignalOrigin.PanelScaled
            ? new(new(CalibrationKind.PanelAdjustment, 1, -trust.Bias.Value, Ids(pairs)), [moved, Reason.Of("offer.on_the_panel", -trust.Bias.Value, unit)])
            : Offset(trust, pairs, held, slope is null ? [moved] : [moved, .. slope.Why]);
    }

    // A tired electrode may be right on average and wrong at both ends, so its slope is looked at whatever its bias.
    private static CalibrationAdvice OfSlope(ImmutableArray<PairedCheck> pairs, Calibration? held)
    {
        var span = SlopeFit.Span(pairs);
        if (span < LeastSpan) return None(Reason.Of("offer.span_too_small", span, LeastSpan));
        var fit = SlopeFit.Of([.. pairs.Select(pair => Corrected(pair, held))]);
        if (Math.Abs(fit.Slope - 1) <= 2 * fit.SlopeU) return None(Reason.Of("offer.slope_not_needed", fit.Slope, 2 * fit.SlopeU));
        var (total, offset) = (fit.Slope * (held?.Slope ?? 1), (fit.Slope * (held?.Offset ?? 0)) + fit.Offset);
        return PlausibleSlope.Contains(total)
            ? new(new(CalibrationKind.TwoPoint, total, offset, Ids(pairs)), [Reason.Of("offer.slope", fit.Slope, 2 * fit.SlopeU, span, pairs.Length)])
            : None(Reason.Of("offer.slope_implausible", total, PlausibleSlope.Low, PlausibleSlope.High));
    }

    // The bias is that of the corrected value: what is in force stays, and its offset takes the bias up.
    private static CalibrationAdvice Offset(ProbeTrust trust, ImmutableArray<PairedCheck> pairs, Calibration? held, ImmutableArray<Reason> why)
    {
        var (slope, offset) = (held?.Slope ?? 1, (held?.Offset ?? 0) - trust.Bias.Value);
        return new(new(slope == 1 ? CalibrationKind.Offset : CalibrationKind.TwoPoint, slope, offset, Ids(pairs)), why);
    }

    // All pairs as the correction in force would show them, whichever was in force when they were made.
    private static PairedCheck Corrected(PairedCheck pair, Calibration? held) => held is null
        ? pair
        : pair with { Raw = new(held.Apply(pair.Raw.Value), pair.Raw.StandardUncertainty * Math.Abs(held.Slope)) };

    private static ImmutableArray<PairedCheck> RecentPairs(ProbeTrust trust)
    {
        var from = Math.Max(0, trust.Pairs.Length - trust.Taken);
        var recent = ImmutableArray.CreateBuilder<PairedCheck>();
        for (var i = from; i < trust.Pairs.Length; i++)
            if (!trust.Pairs[i].Doubted && trust.JudgedAt - trust.Pairs[i].SampledAt <= Recent) recent.Add(trust.Pairs[i]);
        return recent.ToImmutable();
    }

    private static ImmutableArray<Guid> Ids(ImmutableArray<PairedCheck> pairs) => [.. pairs.Select(pair => pair.CheckId)];

    private static CalibrationAdvice None(Reason why) => new(null, [why]);
}
