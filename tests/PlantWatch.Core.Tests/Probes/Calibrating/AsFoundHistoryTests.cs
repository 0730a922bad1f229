using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Probes.Calibrating;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Tests.Probes.Calibrating;

/// <summary>What the bench tells of a probe over the months, and when it wants it again.</summary>
public sealed class AsFoundHistoryTests
{
    [Fact]
    public void Drift_is_what_it_moved_from_as_left_to_as_found_over_the_days_between()
    {
        var spans = AsFoundHistory.Spans([At(0, 0.3, 0.0), At(30, 0.1, 0.0), At(90, 0.2, 0.02)], "ph");
        Assert.Equal([0.1 / 30, 0.2 / 60], spans.Select(s => s.PerDay), (a, b) => Math.Abs(a - b) < 1e-9);
        var drift = AsFoundHistory.Drift(spans);
        Assert.Equal(0.3 / 90, drift.Value, 9);
        Assert.Equal(2 * 0.02 / 90, drift.StandardUncertainty, 9);
    }

    [Fact]
    public void Spans_that_disagree_make_the_drift_less_sure()
    {
        var drift = AsFoundHistory.Drift(AsFoundHistory.Spans([At(0, 0, 0), At(30, 0.3, 0), At(60, -0.3, 0)], "ph"));
        Assert.Equal(0, drift.Value, 9);
        Assert.Equal(0.01, drift.StandardUncertainty, 9);
    }

    [Fact]
    public void What_was_objected_to_or_done_twice_on_a_day_or_belongs_to_another_probe_tells_no_drift()
    {
        Assert.Empty(AsFoundHistory.Spans([At(0, 0, 0), At(30, 0.3, 0) with { Objected = true }], "ph"));
        Assert.Empty(AsFoundHistory.Spans([At(0, 0, 0), At(0.5, 0.3, 0)], "ph"));
        Assert.Empty(AsFoundHistory.Spans([At(0, 0, 0), At(30, 0.3, 0) with { ProbeId = "other" }], "ph"));
        Assert.False(AsFoundHistory.Drift([]).IsKnown);
    }

    [Fact]
    public void Slope_falls_from_sheet_to_sheet_until_the_electrode_is_another()
    {
        var (slope, rate, at) = AsFoundHistory.Slope([At(0, 0, 0, 0.98), At(30, 0, 0, 0.95)], "ph");
        Assert.Equal((0.95, -0.001), (slope.Value, Math.Round(rate.Value, 9)));
        Assert.Equal(Sheets.Noon + TimeSpan.FromDays(30), at);
        Assert.False(AsFoundHistory.Slope([At(0, 0, 0, 0.86), At(30, 0, 0, 0.99) with { Work = ProbeWork.ElectrodeReplaced }], "ph").PerDay.IsKnown);
    }

    [Fact]
    public void A_probe_is_due_an_interval_after_its_last_calibration_and_a_new_one_after_it_came()
    {
        var month = Sheets.Ph with { Care = new CarePlan { Every = TimeSpan.FromDays(14) } };
        Assert.Equal(Sheets.Noon + TimeSpan.FromDays(14), CalibrationDue.Of(month, [], Sheets.Noon));
        Assert.Equal(Sheets.Noon + TimeSpan.FromDays(24), CalibrationDue.Of(month, [At(10, 0, 0)], Sheets.Noon));
        Assert.Equal(Sheets.Noon + TimeSpan.FromDays(14), CalibrationDue.Of(month, [At(10, 0, 0) with { Objected = true }], Sheets.Noon));
        Assert.Equal(Sheets.Noon + TimeSpan.FromDays(14), CalibrationDue.Of(month, [At(10, 0, 0) with { Status = CalibrationStatus.Proposed }], Sheets.Noon));
        Assert.Null(CalibrationDue.Of(month with { Measurand = Measurand.SampleFlow }, [], Sheets.Noon));
    }

    private static Calibration At(double day, double found, double left, double? slope = null)
    {
        var at = Sheets.Noon + TimeSpan.FromDays(day);
        return Sheets.Held(1, 0) with
        {
            Id = TimeOrderedId.Derive(at, "sheet"), Basis = CalibrationBasis.Buffers, HoldsFrom = at,
            Sheet = new BenchSheet { StartedAt = at, Points = [Sheets.At7(7)], FoundError = found, LeftError = left, SlopeShare = slope },
        };
    }
}
