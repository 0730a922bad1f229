using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>All that is needed to judge one probe by one check.</summary>
public sealed record ProbeCheck
{
    /// <summary>The circuit: how its pools are disinfected decides what can be compared.</summary>
    public required CircuitPlan Plan { get; init; }

    /// <summary>The probe.</summary>
    public required ProbePlan Probe { get; init; }

    /// <summary>The check.</summary>
    public required ManualCheck Check { get; init; }

    /// <summary>Measurands whose results are unlikely by themselves, from <see cref="CheckPlausibility"/>.</summary>
    public ImmutableArray<Measurand> Suspect { get; init; } = [];

    /// <summary>Arrival of the check: calibrations that hold only later are left for later.</summary>
    public required Instant Now { get; init; }

    /// <summary>What the probe did in <see cref="Reconciliation.WindowAround"/>; null when storage has nothing.</summary>
    public ProbeWindow? Window { get; init; }

    /// <summary>What the temperature probe of the same water did then; null when there is none. Only ORP needs it, when the check has no temperature.</summary>
    public ProbeWindow? WaterTemperature { get; init; }

    /// <summary>The newest cyanuric acid known of the pool in mg/L; null when never tested.</summary>
    public double? Cyanurate { get; init; }

    /// <summary>The calibrations of the circuit; those of other probes are passed over.</summary>
    public ImmutableArray<Calibration> Calibrations { get; init; } = [];
}

/// <summary>What came of judging.</summary>
/// <param name="Trust">The probe's trust from now on.</param>
/// <param name="Judgement">What the check says of the probe.</param>
public sealed record Reconciled(ProbeTrust Trust, Judgement Judgement);

/// <summary>Judges a probe by the manual checks: which is to be believed, and by how much is the probe off.</summary>
public static class Reconciliation
{
    /// <summary>Half the width of the window a probe is averaged over: a few minutes (common practice).</summary>
    public static TimeSpan HalfWindow { get; } = TimeSpan.FromMinutes(3);

    /// <summary>Where to look for what the probe read of the sampled water: at the sample time plus the way to the cell, unless the sample was taken at the cell.</summary>
    public static (Instant From, Instant To) WindowAround(ProbePlan probe, ManualCheck check)
    {
        var centre = check.Point == SamplePoint.Cell ? check.SampledAt : check.SampledAt + probe.SampleDelay;
        return (centre - HalfWindow, centre + HalfWindow);
    }

    /// <summary>True when the check tested something this probe can be judged by.</summary>
    public static bool Concerns(ProbePlan probe, ManualCheck check) =>
        (probe.PoolId is null || probe.PoolId == check.PoolId) && check.Result(TestedBy(probe.Measurand)) is not null && TrustModel.Of(probe.Measurand) is not null;

    /// <summary>Judges; null when the check does not concern the probe.</summary>
    public static Reconciled? Judge(ProbeTrust soFar, ProbeCheck input)
    {
        if (!Concerns(input.Probe, input.Check) || TrustModel.Of(input.Probe.Measurand) is not { } model) return null;
        var pairs = PairBook.Without(soFar.Pairs, input.Check.Corrects);
        if (!Pairing.TryMake(model, input, out var pair, out var why)) return NotComparable(soFar, pairs, input, why);
        if (!PairBook.TryAdd(pairs, pair, out pairs)) return NotComparable(soFar, pairs, input, Reason.Of("pair.older_than_kept"));
        var (trust, seen) = TrustFold.Run(input.Probe, model, pairs, CalibrationsInForce.Changes(input.Calibrations, input.Probe.Id, input.Now), input.Check.Id);
        return new(trust, new(input.Check.Id, input.Probe.Id, input.Probe.Measurand, seen.Verdict, seen.Probe, seen.Test, seen.Bias, seen.Standing, seen.Reasons));
    }

    // The trust stays as it was, unless the check corrects an earlier one whose pair then falls out.
    private static Reconciled NotComparable(ProbeTrust soFar, ImmutableArray<PairedCheck> pairs, ProbeCheck input, Reason why)
    {
        var trust = pairs.Length == soFar.Pairs.Length ? soFar : Refold(soFar with { Pairs = pairs }, input.Probe, input.Calibrations, input.Now);
        return new(trust, new(input.Check.Id, input.Probe.Id, input.Probe.Measurand, Verdict.NotComparable, default, default, trust.Bias, trust.Standing, [why]));
    }

    // ORP is judged by the chlorine of the check; every other probe by a test of its own measurand.
    private static Measurand TestedBy(Measurand probe) => probe == Measurand.Orp ? Measurand.FreeChlorine : probe;

    /// <summary>Folds the kept pairs anew, after a calibration was approved or the panel adjusted.</summary>
    /// <param name="soFar">The trust with its pairs.</param>
    /// <param name="probe">The probe.</param>
    /// <param name="calibrations">Its calibrations, the new one among them.</param>
    /// <param name="now">Calibrations that hold only later are left for later.</param>
    public static ProbeTrust Refold(ProbeTrust soFar, ProbePlan probe, ImmutableArray<Calibration> calibrations, Instant now) =>
        TrustModel.Of(probe.Measurand) is { } model
            ? TrustFold.Run(probe, model, soFar.Pairs, CalibrationsInForce.Changes(calibrations, probe.Id, now), Guid.Empty).Trust
            : soFar;

    /// <summary>The bias as it must be taken to be at a later time: the value stays, its uncertainty grows by what the probe may have drifted since.</summary>
    public static Estimate BiasAt(ProbePlan probe, ProbeTrust trust, Instant now)
    {
        if (!trust.Bias.IsKnown || TrustModel.Of(probe.Measurand) is not { } model) return default;
        var days = Math.Max(0, (now - trust.JudgedAt).TotalDays);
        var u = trust.Bias.StandardUncertainty;
        return new(trust.Bias.Value, Math.Sqrt((u * u) + (model.DriftVariancePerDay * days)));
    }
}
