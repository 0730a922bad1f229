using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes;

public class CalibrationTests
{
    private static readonly double[] Scatter = [0.03, -0.05, 0.01, 0.06, -0.02, -0.04, 0.05, 0.00, -0.06, 0.02];

    private static TestPool Drifted(SignalOrigin origin = SignalOrigin.Raw, double by = 0.25)
    {
        var pool = new TestPool(Measurand.Ph, origin);
        for (var i = 0; i < 12; i++) pool.Check(i * 8, 7.4 + Scatter[i % 10], 7.4 + by);
        return pool;
    }

    private static CalibrationAdvice Advice(TestPool pool) => CalibrationOffers.For(pool.Probe, pool.Trust, pool.Calibrations, TestPool.After(1000));

    [Fact]
    public void A_probe_that_reads_high_is_offered_the_offset_that_takes_its_bias_away()
    {
        var pool = Drifted();
        var (offer, why) = Advice(pool);
        Assert.Equal(CalibrationKind.Offset, offer!.Kind);
        Assert.Equal(1, offer.Slope);
        Assert.Equal(-pool.Trust.Bias.Value, offer.Offset, 1e-12);
        Assert.Equal(12, offer.Checks.Length);
        Assert.Equal(["offer.bias_is_significant", "offer.span_too_small"], why.Select(reason => reason.Code));
    }

    [Fact]
    public void Once_the_offer_is_approved_the_bias_is_about_zero_and_the_probe_good()
    {
        var pool = Drifted();
        var offer = Advice(pool).Offer!;
        Assert.Equal(Standing.MaintenanceRequired, pool.Trust.Standing);
        pool.Calibrate(97, offer.Slope, offer.Offset, [.. offer.Checks]);
        Assert.Equal(0, pool.Trust.Bias.Value, 1e-3);
        Assert.Equal((Standing.Good, "trust.corrected_since"), (pool.Trust.Standing, pool.Trust.Reasons[0].Code));
        var judgement = pool.Check(104, 7.41, 7.65);
        Assert.Equal(Verdict.Agrees, judgement.Verdict);
        Assert.Equal(7.65 + offer.Offset, judgement.Probe.Value, 1e-12);
        Assert.Null(Advice(pool).Offer);
    }

    [Fact]
    public void A_second_offer_adds_to_the_correction_in_force()
    {
        var pool = Drifted();
        pool.Calibrate(97, 1, -0.10, [pool.Trust.Pairs[0].CheckId]);
        for (var i = 0; i < 10; i++) pool.Check(104 + (i * 8), 7.4 + Scatter[i], 7.65);
        Assert.Equal(-0.25, Advice(pool).Offer!.Offset, 0.03);
    }

    [Fact]
    public void An_approval_that_holds_from_earlier_refolds_what_came_since()
    {
        var (early, late) = (Drifted(), Drifted());
        early.Calibrate(-1, 1, -0.25);
        Assert.Equal(0, early.Trust.Bias.Value, 0.04);
        Assert.Equal(Standing.Good, early.Trust.Standing);
        Assert.Equal(Standing.MaintenanceRequired, late.Trust.Standing);
    }

    [Fact]
    public void A_calibration_that_rests_on_no_check_is_a_service_and_the_estimate_starts_anew()
    {
        var pool = Drifted();
        pool.Calibrate(97, 1, 0);
        Assert.False(pool.Trust.Bias.IsKnown);
        Assert.Equal((Standing.Unknown, 0, "trust.calibrated_since"), (pool.Trust.Standing, pool.Trust.Taken, pool.Trust.Reasons[0].Code));
    }

    [Fact]
    public void For_a_panel_scaled_probe_the_offer_is_an_amount_to_add_on_the_panel()
    {
        var pool = Drifted(SignalOrigin.PanelScaled);
        var (offer, why) = Advice(pool);
        Assert.Equal(CalibrationKind.PanelAdjustment, offer!.Kind);
        Assert.Equal(-pool.Trust.Bias.Value, offer.Offset, 1e-12);
        Assert.Contains(why, reason => reason.Code == "offer.on_the_panel");
    }

    [Fact]
    public void A_panel_adjustment_corrects_nothing_here_and_starts_the_estimate_anew()
    {
        var pool = Drifted(SignalOrigin.PanelScaled);
        pool.AdjustPanel(97, -0.25);
        Assert.Equal((Standing.Unknown, "trust.panel_adjusted_since"), (pool.Trust.Standing, pool.Trust.Reasons[0].Code));
        var judgement = pool.Check(104, 7.41, 7.42);
        Assert.Equal(7.42, judgement.Probe.Value, 1e-12);
        Assert.Equal(Verdict.Agrees, judgement.Verdict);
        Assert.Equal(7.42, CalibrationsInForce.Correct(pool.Calibrations, pool.Probe.Id, TestPool.After(105), 7.42));
    }

    [Fact]
    public void One_check_alone_is_never_enough_for_an_offer()
    {
        var pool = new TestPool(Measurand.Ph);
        pool.Check(0, 7.2, 7.5);
        Assert.Equal("offer.too_few_checks", Assert.Single(Advice(pool).Why).Code);
    }

    [Fact]
    public void A_bias_within_its_uncertainty_is_left_alone() =>
        Assert.Equal("offer.not_significant", Assert.Single(Advice(Drifted(by: 0.04)).Why).Code);

    [Fact]
    public void Tests_that_span_half_a_ph_and_a_tired_electrode_give_a_two_point_slope()
    {
        // An electrode at 88 % of its slope: it shows 7 + 0.88 (pH - 7), so raw x 1 / 0.88 brings it back.
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 40; i++)
        {
            var ph = i % 2 == 0 ? 7.2 : 8.1;
            pool.Check(i * 4, ph + (Scatter[i % 10] / 4), 7 + (0.88 * (ph - 7)), method: Core.Readings.TestMethod.Meter);
        }

        var offer = Advice(pool).Offer;
        Assert.Equal(CalibrationKind.TwoPoint, offer!.Kind);
        Assert.Equal(1 / 0.88, offer.Slope, 0.03);
        Assert.Equal("offer.slope", Advice(pool).Why[0].Code);
        Assert.Equal(8.1, (offer.Slope * (7 + (0.88 * 1.1))) + offer.Offset, 0.02);
        pool.Calibrate(161, offer.Slope, offer.Offset, [.. offer.Checks]);
        Assert.Null(Advice(pool).Offer);
    }

    [Fact]
    public void Orp_is_checked_in_its_solution_and_never_calibrated_from_chlorine() =>
        Assert.Equal("offer.orp_by_check_solution", Assert.Single(Advice(new TestPool(Measurand.Orp)).Why).Code);

    [Fact]
    public void Of_two_calibrations_from_the_same_time_the_later_decision_holds()
    {
        var at = TestPool.After(0);
        Calibration Made(int id, double offset, Instant decided) => new()
        {
            Id = new Guid(id, 0, 0, new byte[8]), ProbeId = "p", Status = CalibrationStatus.Approved, Offset = offset, ProposedBy = "x", HoldsFrom = at, DecidedAt = decided,
        };
        var (first, second) = (Made(2, 0.1, at), Made(1, 0.2, at + TimeSpan.FromHours(1)));
        Assert.Equal(0.2, CalibrationsInForce.At([second, first], "p", at)!.Offset);
        Assert.Null(CalibrationsInForce.At([second, first], "p", at - TimeSpan.FromSeconds(1)));
        Assert.Null(CalibrationsInForce.At([first with { Status = CalibrationStatus.Proposed }], "p", at));
    }
}
