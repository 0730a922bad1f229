using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>What cannot be: such a check is refused, with a remark beside each field that is wrong.</summary>
internal static class ImpossibleChecks
{
    /// <summary>Clocks of phones and servers differ by this much without anybody's fault (common practice).</summary>
    public static readonly TimeSpan ClockTolerance = TimeSpan.FromMinutes(5);

    // A sample older than the journal's year is a slip in the date.
    private static readonly TimeSpan Oldest = TimeSpan.FromDays(366);

    private const int MostBathers = 10_000;

    public static ImmutableArray<FieldRemark> In(CircuitPlan plan, ManualCheck check, Instant now)
    {
        var found = ImmutableArray.CreateBuilder<FieldRemark>();
        if (!Has(plan, check.PoolId)) Add(found, "poolId", Reason.Of("check.pool_unknown", check.PoolId ?? ""));
        if (string.IsNullOrWhiteSpace(check.Who)) Add(found, "who", Reason.Of("check.who_missing"));
        Time(found, check, now);
        Correction(found, check);
        if (IsEmpty(check)) Add(found, "results", Reason.Of("check.empty"));
        if (check.Bathers is < 0 or > MostBathers) Add(found, "bathers", Reason.Of("check.bathers_impossible", check.Bathers.Value, MostBathers));
        for (var i = 0; i < check.Results.Length; i++) Result(found, check.Results, i);
        for (var i = 0; i < check.Panel.Length; i++) Panel(found, plan, check.Panel, i);
        return found.ToImmutable();
    }

    private static void Time(ImmutableArray<FieldRemark>.Builder found, ManualCheck check, Instant now)
    {
        if (!check.SampledAt.IsSet) Add(found, "sampledAt", Reason.Of("check.sampled_at_missing"));
        else if (check.SampledAt - now > ClockTolerance) Add(found, "sampledAt", Reason.Of("check.sampled_in_future", (check.SampledAt - now).TotalMinutes));
        else if (now - check.SampledAt > Oldest) Add(found, "sampledAt", Reason.Of("check.sampled_too_long_ago", (now - check.SampledAt).TotalDays, Oldest.TotalDays));
    }

    private static void Correction(ImmutableArray<FieldRemark>.Builder found, ManualCheck check)
    {
        if (check.Corrects is null) return;
        if (check.Corrects == check.Id) Add(found, "corrects", Reason.Of("check.corrects_itself"));
        if (string.IsNullOrWhiteSpace(check.CorrectionReason)) Add(found, "correctionReason", Reason.Of("check.correction_reason_missing"));
    }

    // A look at the bottom or a count of bathers is a check as well.
    private static bool IsEmpty(ManualCheck check) =>
        check.Results.IsDefaultOrEmpty && check.Panel.IsDefaultOrEmpty && check.BottomVisible is null && check.Bathers is null;

    // No method for pool water resolves finer, in whatever unit; and a test without any uncertainty would be beyond all doubt.
    private const double FinestStep = 0.001;

    private static void Result(ImmutableArray<FieldRemark>.Builder found, ImmutableArray<TestResult> results, int i)
    {
        var (result, field) = (results[i], $"results[{i}]");
        if (!MethodPrecision.Has(result.Measurand) || !Enum.IsDefined(result.Measurand))
        {
            Add(found, field + ".measurand", Reason.Of("check.measurand_not_tested_by_hand"));
            return;
        }

        // Named once however often: a remark for each pair would let a small request grow into a huge answer.
        if (Earlier(results, i, r => r.Measurand == result.Measurand)) Add(found, field + ".measurand", Reason.Of("check.measurand_twice"));
        if (Impossible(result.Measurand, result.Value) is { } why) Add(found, field + ".value", why);
        // A comparison with NaN is false, so the range is asked for rather than its outside.
        if (!SampleDilution.ValidFactor.Contains(result.Dilution))
            Add(found, field + ".dilution", Reason.Of("check.dilution_impossible", SampleDilution.ValidFactor.Low, SampleDilution.ValidFactor.High));
        if (result.Step is { } step && !(step >= FinestStep && step <= result.Measurand.Possible().High)) Add(found, field + ".step", Reason.Of("check.step_impossible"));
    }

    private static void Panel(ImmutableArray<FieldRemark>.Builder found, CircuitPlan plan, ImmutableArray<PanelReading> panel, int i)
    {
        var field = $"panel[{i}]";
        if (Find(plan, panel[i].ProbeId) is not { } probe)
        {
            Add(found, field + ".probeId", Reason.Of("check.probe_unknown", panel[i].ProbeId ?? ""));
            return;
        }

        if (Earlier(panel, i, p => p.ProbeId == probe.Id)) Add(found, field + ".probeId", Reason.Of("check.probe_twice", probe.Name));
        if (Impossible(probe.Measurand, panel[i].Value) is { } why) Add(found, field + ".value", why);
    }

    private static bool Earlier<T>(ImmutableArray<T> items, int i, Predicate<T> same)
    {
        for (var earlier = 0; earlier < i; earlier++)
            if (same(items[earlier])) return true;
        return false;
    }

    private static Reason? Impossible(Measurand measurand, double value)
    {
        var possible = measurand.Possible();
        return !double.IsFinite(value) ? Reason.Of("check.not_a_number")
            : value < 0 && possible.Low >= 0 ? Reason.Of("check.value_negative")
            : !possible.Contains(value) ? Reason.Of("check.value_impossible", possible.Low, possible.High, measurand.Unit())
            : null;
    }

    private static bool Has(CircuitPlan plan, string? poolId)
    {
        foreach (var pool in plan.Pools)
            if (pool.Id == poolId) return true;
        return false;
    }

    private static ProbePlan? Find(CircuitPlan plan, string? probeId)
    {
        foreach (var probe in plan.Probes)
            if (probe.Id == probeId) return probe;
        return null;
    }

    private static void Add(ImmutableArray<FieldRemark>.Builder found, string field, Reason reason) => found.Add(new(field, reason));
}
