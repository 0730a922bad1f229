using System.Diagnostics.CodeAnalysis;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Probes;

/// <summary>Makes a pair of a check and what the probe read of the same water, or says why the two cannot be compared.</summary>
internal static class Pairing
{
    // Nobody knows to the minute when the sampled water passed the cell: 2 minutes as a standard deviation (common practice).
    private const double HoursUnsure = 2.0 / 60;

    // Readings of a few minutes hang together; they count as no more than this many independent ones.
    private const int IndependentReadings = 4;

    // A share of readings that were no good above this spoils the mean.
    private const double MostExcluded = 0.25;

    private static readonly TimeSpan OldestPaired = TimeSpan.FromDays(35);

    public static bool TryMake(TrustModel model, ProbeCheck input, out PairedCheck pair, [NotNullWhen(false)] out Reason? why)
    {
        pair = default;
        why = Unsuitable(input) ?? Unreadable(input.Probe, input.Window);
        if (why is not null) return false;
        var raw = Raw(model, input.Probe.Measurand, input.Window!, out why);
        if (why is not null) return false;
        var test = input.Probe.Measurand == Measurand.Orp ? HoclByTest.Of(input, out why) : Direct(model, input, out why);
        if (why is not null) return false;
        pair = new(input.Check.Id, input.Check.SampledAt, raw, test.Test, false, test.Shared, IsSuspect(input), ByReagent(input), input.WatchedSince);
        return true;
    }

    private static Reason? Unsuitable(ProbeCheck input) =>
        input.Check.Point == SamplePoint.BalanceTank ? Reason.Of("pair.sample_point")
        : input.Probe.PoolId is null && input.Plan.Pools.Length > 1 && input.Check.Point != SamplePoint.Cell ? Reason.Of("pair.mixed_return")
        : input.SignalFails ? Reason.Of("pair.signal_fails")
        : input.InBackwash ? Reason.Of("pair.backwash")
        : input.Now - input.Check.SampledAt > OldestPaired ? Reason.Of("pair.too_old", (input.Now - input.Check.SampledAt).TotalDays, OldestPaired.TotalDays)
        : OldReagent(input, Reconciliation.TestedBy(input.Probe.Measurand)) ?? (input.Probe.Measurand == Measurand.Orp ? OldReagent(input, Measurand.Ph) : null);

    // It would confirm a probe as little as it would blame one.
    private static Reason? OldReagent(ProbeCheck input, Measurand tested) => input.Check.Result(tested) is { } result ? input.Reagent?.Invoke(result) : null;

    // A mean that the instrument cannot show, or that is none, comes from no reading of it.
    private static Reason? Unreadable(ProbePlan probe, ProbeWindow? window) => window switch
    {
        null or { Count: <= 0, Excluded: <= 0 } => Reason.Of("pair.no_readings"),
        { Count: > 0 } when !probe.Range.Contains(window.Mean) || !double.IsFinite(window.StandardDeviation) || !double.IsFinite(window.PerHour) => Reason.Of("pair.no_readings"),
        { Count: <= 0 } => Reason.Of("pair.function_check"),
        _ when window.Excluded > MostExcluded * (window.Count + window.Excluded) => Reason.Of("pair.function_check"),
        _ => null,
    };

    private static Estimate Raw(TrustModel model, Measurand measurand, ProbeWindow window, out Reason? why)
    {
        var drag = Math.Max(0, Math.Abs(window.PerHour) - SlopeNoise(window)) * HoursUnsure;
        why = drag > model.MovingAt ? Reason.Of("pair.moving_too_fast", Math.Abs(window.PerHour), measurand.Unit()) : null;
        var mean = window.StandardDeviation / Math.Sqrt(Math.Min(window.Count, IndependentReadings));
        return new(window.Mean, Math.Sqrt((mean * mean) + (drag * drag) + (model.Resolution * model.Resolution)));
    }

    // Two standard deviations of the slope that scatter alone would show over the window.
    private static double SlopeNoise(ProbeWindow window)
    {
        var hours = (window.To - window.From).TotalHours;
        return window.Count < 3 || hours <= 0 ? 0 : 2 * window.StandardDeviation * Math.Sqrt(12.0 / window.Count) / hours;
    }

    private static (Estimate Test, double Shared) Direct(TrustModel model, ProbeCheck input, out Reason? why)
    {
        var result = input.Check.Result(input.Probe.Measurand)!;
        why = IsNumber(result);
        if (why is not null) return default;
        var parts = MethodUncertainty.Parts(result);
        var mixing = MixingOf(model, input.Check);
        return (new(result.Value, Math.Sqrt((parts.Total * parts.Total) + (mixing * mixing))), parts.Shared);
    }

    private static double MixingOf(TrustModel model, ManualCheck check) => check.Point == SamplePoint.Cell ? 0 : model.Mixing;

    /// <summary>Why a result is no number to compare with; null when it is one.</summary>
    public static Reason? IsNumber(TestResult result) =>
        result.Censoring != Censoring.None ? Reason.Of("pair.only_a_bound", result.Value, result.Measurand.Unit())
        : !MethodRange.Holds(result) ? Reason.Of("pair.outside_method_range", result.Value, result.Measurand.Unit())
        : null;

    private static bool IsSuspect(ProbeCheck input) =>
        input.Probe.Measurand == Measurand.Orp
            ? input.Suspect.Contains(Measurand.FreeChlorine) || input.Suspect.Contains(Measurand.Ph)
            : input.Suspect.Contains(input.Probe.Measurand);

    private static bool ByReagent(ProbeCheck input) => input.Check.Result(Reconciliation.TestedBy(input.Probe.Measurand)) is { Method: not TestMethod.Meter };
}
