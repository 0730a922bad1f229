using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Readings;

/// <summary>What is odd: such a check is kept, and the results concerned are doubted until a repeat.</summary>
internal sealed partial class UnlikelyChecks(PoolState pool, ManualCheck check, Instant now, Millivolts? liveOrp, Func<TestResult, Reason?>? reagent)
{
    // Nil by DPD, and an ORP that no empty pool shows: 650 mV, whatever the reference electrode (common practice, near the lowest operating level).
    private const double NilChlorine = 0.1;
    private const double LivelyOrp = 650;

    private const double NotBleachedFrom = 5;

    // A date typed wrong is usually off by more than the longest offline shift.
    private static readonly TimeSpan LongAgo = TimeSpan.FromDays(3);

    // No pool that anybody bathes in reads outside, by whatever method; 0.74 is 7.4 with its point astray (common practice).
    private static readonly ValueRange PhOfPools = new(4, 10);

    private static readonly TimeSpan StillComparable = TimeSpan.FromHours(48);

    private readonly ImmutableArray<FieldRemark>.Builder _remarks = ImmutableArray.CreateBuilder<FieldRemark>();
    private readonly ImmutableArray<Measurand>.Builder _suspect = ImmutableArray.CreateBuilder<Measurand>();

    public (ImmutableArray<FieldRemark> Remarks, ImmutableArray<Measurand> Suspect, ImmutableArray<Measurand> InItself) Look()
    {
        if (now - check.SampledAt > LongAgo) Remark("sampledAt", Reason.Of("check.sampled_long_ago", (now - check.SampledAt).TotalDays));
        if (check.EnteredAt.IsSet && check.SampledAt - check.EnteredAt > ImpossibleChecks.ClockTolerance)
            Remark("enteredAt", Reason.Of("check.entered_before_sampled", (check.SampledAt - check.EnteredAt).TotalMinutes));
        for (var i = 0; i < check.Results.Length; i++)
        {
            Range(check.Results[i], i);
            Bleached(check.Results[i], i);
            Seen(check.Results[i], i);
            if (reagent?.Invoke(check.Results[i]) is { } outOfDate) Doubt(check.Results[i], i, outOfDate);
        }

        FreeAboveTotal();
        var inItself = _suspect.ToImmutable();
        for (var i = 0; i < check.Results.Length; i++) FarFromLast(check.Results[i], i);
        return (_remarks.ToImmutable(), _suspect.ToImmutable(), inItself);
    }

    private void Range(TestResult result, int i)
    {
        if (result.Measurand == Measurand.Ph && result.Censoring == Censoring.None && !MethodRange.Holds(result))
            Doubt(result, i, Reason.Of("check.outside_method_range", PhenolRed.Range.Low, PhenolRed.Range.High));
        else if (result.Measurand == Measurand.Ph && !PhOfPools.Contains(result.Value)) Doubt(result, i, Reason.Of("check.no_pool_reads_so", result.Value, PhOfPools.Low, PhOfPools.High));
        if (result.Measurand is not (Measurand.FreeChlorine or Measurand.TotalChlorine or Measurand.Bromine) || !MethodRange.UsesDpd(result.Method)) return;
        var (inCell, per) = (MethodRange.InCell(result), result.Measurand == Measurand.Bromine ? Bromine.PerChlorine : 1);
        if (inCell > per * Dpd.Bleaches) Doubt(result, i, Reason.Of("check.dpd_may_bleach", inCell, per * Dpd.Bleaches));
        else if (inCell > per * Dpd.Range.High) Remark($"results[{i}].value", Reason.Of("check.above_dpd_range", inCell, per * Dpd.Range.High));
    }

    // Diluted to one in five and still nil, it would take 50 mg/L in the pool to bleach it: then it is nil.
    private void Bleached(TestResult result, int i)
    {
        if (result.Dilution < NotBleachedFrom && IsNil(result) && result.Censoring != Censoring.Above && liveOrp is { } orp && orp.Value >= LivelyOrp)
            Doubt(result, i, Reason.Of(result.Measurand == Measurand.Bromine ? "check.nil_bromine_with_high_orp" : "check.nil_chlorine_with_high_orp", result.Value, orp.Value));
    }

    private static bool IsNil(TestResult result) => result.Measurand switch
    {
        Measurand.FreeChlorine => result.Value <= NilChlorine,
        Measurand.Bromine => result.Value <= Bromine.OfChlorineReading(NilChlorine),
        _ => false,
    };

    // A last value that was doubted itself proves nothing: the second of the two is the repeat that clears it.
    private void FarFromLast(TestResult result, int i)
    {
        if (!pool.Manual.TryGetValue(result.Measurand, out var last) || last.Suspect || last.CheckId == check.Corrects) return;
        if (last.Result.Censoring != Censoring.None || result.Censoring != Censoring.None) return;
        var apart = check.SampledAt - last.SampledAt;
        if (apart.Duration() > StillComparable || Math.Abs(result.Value - last.Result.Value) <= UsualChange(result.Measurand, last.Result.Value)) return;
        Doubt(result, i, Reason.Of("check.far_from_last", result.Value, last.Result.Value, result.Measurand.Unit(), Math.Abs(apart.TotalHours)));
    }

    // What a pool may change between two rounds in two days, dosing and bathers included (common practice).
    private static double UsualChange(Measurand measurand, double last) => measurand switch
    {
        Measurand.Ph => 0.6,
        Measurand.Temperature => 4,
        Measurand.FreeChlorine or Measurand.TotalChlorine => Math.Max(2, last),
        Measurand.Bromine => Math.Max(Bromine.OfChlorineReading(2), last),
        Measurand.TotalAlkalinity => Math.Max(60, 0.4 * last),
        Measurand.CalciumHardness => Math.Max(100, 0.4 * last),
        Measurand.CyanuricAcid => Math.Max(30, 0.4 * last),
        Measurand.DissolvedSolids or Measurand.Conductivity => Math.Max(500, 0.4 * last),
        Measurand.Orp => 150,
        _ => double.MaxValue,
    };

    private void FreeAboveTotal()
    {
        var (free, total) = (check.Result(Measurand.FreeChlorine), check.Result(Measurand.TotalChlorine));
        if (free is null || total is null || !CombinedOfCheck.TryOf(check, out var combined) || combined.Remark != CombinedRemark.FreeAboveTotal) return;
        Doubt(free, check.Results.IndexOf(free), Reason.Of("check.free_above_total", free.Value, total.Value));
        Doubt(total, check.Results.IndexOf(total), Reason.Of("check.free_above_total", free.Value, total.Value));
    }

    private void Remark(string field, Reason reason) => _remarks.Add(new(field, reason));

    private void Doubt(TestResult result, int i, Reason reason)
    {
        Remark($"results[{i}].value", reason);
        if (!_suspect.Contains(result.Measurand)) _suspect.Add(result.Measurand);
    }
}
