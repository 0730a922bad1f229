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

    /// <summary>What the reagent of a result says against it: such a result weighs on no probe. Null when nothing is known of reagents.</summary>
    public Func<TestResult, Reason?>? Reagent { get; init; }

    /// <summary>A filter was backwashed when the sample was taken: the cell saw no water of the pool.</summary>
    public bool InBackwash { get; init; }

    /// <summary>Arrival of the check: calibrations that hold only later are left for later.</summary>
    public required Instant Now { get; init; }

    /// <summary>What the probe did in <see cref="Reconciliation.WindowAround"/>; null when storage has nothing.</summary>
    public ProbeWindow? Window { get; init; }

    /// <summary>What the temperature probe of the same water did then; null when there is none. Only ORP needs it, when the check has no temperature.</summary>
    public ProbeWindow? WaterTemperature { get; init; }

    /// <summary>Since when the probe's signal was followed without a break; never when it was not.</summary>
    public Instant WatchedSince { get; init; }

    /// <summary>True when the signal alone says that the probe shows nothing: stuck, broken.</summary>
    public bool SignalFails { get; init; }

    /// <summary>The pH that is believed of the sampled water, by probe and test together; unknown when only the test says.</summary>
    public Estimate BelievedPh { get; init; }

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

    /// <summary>
    /// Where to look for what the probe read of the sampled water: at the sample time plus the way to the cell, unless the sample was taken at the cell, plus the lag of the instrument's own
    /// filter; over a few minutes, and over whole dosing cycles where the pumps pulse, so that the mean is of the water and not of a stroke.
    /// </summary>
    public static (Instant From, Instant To) WindowAround(ProbePlan probe, ManualCheck check)
    {
        var centre = (check.Point == SamplePoint.Cell ? check.SampledAt : check.SampledAt + probe.SampleDelay) + probe.FilterLag;
        var half = HalfWindow;
        if (probe.DosingCycle > TimeSpan.Zero) half = Math.Ceiling(2 * HalfWindow / probe.DosingCycle) * probe.DosingCycle / 2;
        return (centre - half, centre + half);
    }

    /// <summary>True when the check tested something this probe can be judged by.</summary>
    public static bool Concerns(ProbePlan probe, ManualCheck check) =>
        (probe.PoolId is null || probe.PoolId == check.PoolId) && check.Result(TestedBy(probe.Measurand)) is not null && TrustModel.Of(probe.Measurand) is not null;

    /// <summary>Judges; null when the check does not concern the probe.</summary>
    public static Reconciled? Judge(ProbeTrust soFar, ProbeCheck input)
    {
        if (!Concerns(input.Probe, input.Check) || TrustModel.Of(input.Probe.Measurand) is not { } model) return null;
        var without = soFar with { Pairs = PairBook.Without(soFar.Pairs, input.Check.Corrects) };
        if (!Pairing.TryMake(model, input, out var pair, out var why)) return NotComparable(soFar, without, input, why);
        if (!PairBook.TryAdd(without, pair, out var with)) return NotComparable(soFar, without, input, Reason.Of("pair.older_than_kept"));
        var changes = CalibrationsInForce.Changes(input.Calibrations, input.Probe.Id, input.Now);
        var isNewest = with.Pairs[^1].CheckId == input.Check.Id && with.Pairs.Length == soFar.Pairs.Length + 1;
        var (trust, seen) = isNewest ? TrustFold.GoOn(input.Probe, model, with, changes) : TrustFold.Run(input.Probe, model, with, changes, input.Check.Id);
        return new(trust, new(input.Check.Id, input.Probe.Id, input.Probe.Measurand, seen.Verdict, seen.Probe, seen.Test, seen.Bias, seen.Standing, seen.Reasons) { Drift = seen.Drift });
    }

    // The trust stays as it was, unless the check corrects an earlier one whose pair then falls out. A bound is no number to compare with, but it can be wrong all the same.
    private static Reconciled NotComparable(ProbeTrust soFar, ProbeTrust without, ProbeCheck input, Reason why)
    {
        var trust = without.Pairs.Length == soFar.Pairs.Length ? soFar : Refold(without, input.Probe, input.Calibrations, input.Now);
        var doubt = BoundCheck.Contradicted(trust, input);
        return new(trust, new(
            input.Check.Id, input.Probe.Id, input.Probe.Measurand, doubt is null ? Verdict.NotComparable : Verdict.CheckSuspect, default, default, trust.Bias, trust.Standing,
            doubt is null ? [why] : [doubt, why]) { Drift = trust.Drift });
    }

    // ORP is judged by the chlorine of the check; every other probe by a test of its own measurand.
    internal static Measurand TestedBy(Measurand probe) => probe == Measurand.Orp ? Measurand.FreeChlorine : probe;

    /// <summary>Folds the kept pairs anew, after a calibration was approved or the panel adjusted.</summary>
    /// <param name="soFar">The trust with its pairs.</param>
    /// <param name="probe">The probe.</param>
    /// <param name="calibrations">Its calibrations, the new one among them.</param>
    /// <param name="now">Calibrations that hold only later are left for later.</param>
    public static ProbeTrust Refold(ProbeTrust soFar, ProbePlan probe, ImmutableArray<Calibration> calibrations, Instant now) =>
        TrustModel.Of(probe.Measurand) is { } model
            ? TrustFold.Run(probe, model, soFar, CalibrationsInForce.Changes(calibrations, probe.Id, now), Guid.Empty).Trust
            : soFar;

    /// <summary>Takes in that the probe's signal leapt and stayed: until a test says otherwise, the probe moved and not the water.</summary>
    /// <param name="soFar">The trust.</param>
    /// <param name="probe">The probe.</param>
    /// <param name="calibrations">The calibrations of the circuit.</param>
    /// <param name="leap">When, and how far.</param>
    public static ProbeTrust Leapt(ProbeTrust soFar, ProbePlan probe, ImmutableArray<Calibration> calibrations, SignalLeap leap) =>
        soFar.Base is { } settled && leap.At <= settled.At ? soFar : Refold(soFar with { Leaps = [.. Newest(soFar.Leaps), leap] }, probe, calibrations, leap.At);

    // A signal that leaps all day is broken, and the signal says so; the estimate need not follow each of them.
    private static ImmutableArray<SignalLeap> Newest(ImmutableArray<SignalLeap> leaps) => leaps.Length < MostLeaps ? leaps : leaps.RemoveAt(0);

    private const int MostLeaps = 8;

    /// <summary>The bias as it must be taken to be at a later time: it drifts on, and its uncertainty grows by that of the drift and by what the probe may do while nobody tests.</summary>
    public static Estimate BiasAt(ProbePlan probe, ProbeTrust trust, Instant now)
    {
        if (!trust.Bias.IsKnown || TrustModel.Of(probe.Measurand) is not { } model) return default;
        var days = Math.Max(0, (now - trust.JudgedAt).TotalDays);
        var (u, drift) = (trust.Bias.StandardUncertainty, trust.Drift.StandardUncertainty * days);
        return new(trust.Bias.Value + (trust.Drift.Value * days), Math.Sqrt((u * u) + (drift * drift) + (model.UntestedPerDay * days)));
    }
}
