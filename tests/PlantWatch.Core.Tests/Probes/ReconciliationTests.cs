using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Probes;

public class ReconciliationTests
{
    // Scatter of a photometer as an operator sees it, around zero: fixed, so that every run is the same.
    private static readonly double[] Scatter = [0.03, -0.05, 0.01, 0.06, -0.02, -0.04, 0.05, 0.00, -0.06, 0.02, 0.04, -0.03];

    private static double Noise(int i) => Scatter[i % Scatter.Length];

    private static string First(Judgement judgement) => judgement.Reasons[0].Code;

    [Fact]
    public void A_first_check_that_agrees_makes_the_probe_good()
    {
        var judgement = new TestPool(Measurand.Ph).Check(0, test: 7.40, probe: 7.43);
        Assert.Equal((Verdict.Agrees, Standing.Good, "trust.agrees"), (judgement.Verdict, judgement.Standing, First(judgement)));
        Assert.Equal(7.40, judgement.Test.Value, 1e-12);
        Assert.Equal(7.43, judgement.Probe.Value, 1e-12);
        Assert.True(judgement.Bias.IsKnown);
    }

    [Fact]
    public void A_first_check_that_differs_leaves_open_who_is_wrong_and_asks_for_a_repeat()
    {
        var judgement = new TestPool(Measurand.Ph).Check(0, test: 7.20, probe: 7.55);
        Assert.Equal((Verdict.CheckSuspect, Standing.Unknown, "trust.first_check_differs"), (judgement.Verdict, judgement.Standing, First(judgement)));
    }

    [Fact]
    public void A_healthy_probe_stays_good_through_a_month_of_scattering_tests()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 90; i++) Assert.Equal(Verdict.Agrees, pool.Check(i * 8, test: 7.4 + Noise(i), probe: 7.42).Verdict);
        Assert.Equal(0.02, pool.Trust.Bias.Value, 0.03);
    }

    [Fact]
    public void Averaging_many_tests_never_beats_what_instrument_and_lot_share()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 150; i++) pool.Check(i, test: 7.4 + Noise(i), probe: 7.4);
        // The tests share 0.05, a calibration is worth 0.025: together they can claim no less than 0.022 (GUM).
        Assert.True(pool.Trust.Bias.StandardUncertainty > 0.02);
    }

    [Fact]
    public void One_wild_check_is_suspect_and_does_not_move_the_estimate()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        var before = pool.Trust.Bias;
        var wild = pool.Check(72, test: 7.95, probe: 7.4);
        Assert.Equal((Verdict.CheckSuspect, "trust.check_stands_alone"), (wild.Verdict, First(wild)));
        Assert.Equal(before.Value, pool.Trust.Bias.Value, 0.01);
        Assert.Equal(Standing.Good, pool.Trust.Standing);
        Assert.True(pool.Trust.Pairs[^1].Doubted);
        Assert.Equal(Verdict.Agrees, pool.Check(73, 7.41, 7.4).Verdict);
        Assert.True(pool.Trust.Pairs[^2].Doubted);
    }

    private static TestPool Agreed(bool watched)
    {
        var pool = new TestPool(Measurand.Ph) { Watched = watched };
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        Assert.Equal(Verdict.CheckSuspect, pool.Check(72, test: 7.0, probe: 7.4).Verdict);
        return pool;
    }

    [Fact]
    public void A_repeat_with_a_meter_confirms_the_wild_check_and_the_probe_drifts()
    {
        var pool = Agreed(watched: true);
        var repeat = pool.Check(72.2, test: 7.02, probe: 7.4, method: TestMethod.Meter);
        Assert.True(repeat.Standing is Standing.OutOfSpecification or Standing.MaintenanceRequired, $"{repeat.Standing}");
        Assert.Equal(Verdict.ProbeDrifts, pool.Check(72.4, test: 7.02, probe: 7.4, method: TestMethod.Meter).Verdict);
        Assert.Contains(pool.Trust.Reasons, reason => reason.Code == "trust.reads_high");
        Assert.DoesNotContain(pool.Trust.Pairs, pair => pair.Doubted);
        Assert.Equal(0.37, pool.Trust.Bias.Value, 0.07);
    }

    [Fact]
    public void A_repeat_with_the_same_reagent_beside_a_signal_that_never_leapt_speaks_of_the_reagent()
    {
        var pool = Agreed(watched: true);
        for (var i = 0; i < 4; i++) pool.Check(78 + (i * 6), test: 7.04 + Noise(i), probe: 7.4);
        Assert.Equal((Verdict.CheckSuspect, "trust.tests_off_together"), (pool.Trust.Verdict, pool.Trust.Reasons[0].Code));
        Assert.Equal(Standing.Good, pool.Trust.Standing);
        Assert.Equal(-0.37, pool.Trust.TestOff.Value, 0.07);
        // A new lot, and the tests come back to the probe.
        for (var i = 0; i < 3; i++) pool.Check(104 + (i * 6), test: 7.4 + Noise(i), probe: 7.4);
        Assert.Equal((Verdict.Agrees, Standing.Good, false), (pool.Trust.Verdict, pool.Trust.Standing, pool.Trust.TestOff.IsKnown));
    }

    [Fact]
    public void Where_nobody_watched_the_signal_the_repeat_puts_the_probe_in_doubt()
    {
        var pool = Agreed(watched: false);
        Assert.Equal(Standing.OutOfSpecification, pool.Check(72.2, test: 7.05, probe: 7.4).Standing);
    }

    [Fact]
    public void Tests_that_stand_apart_for_many_days_are_not_put_on_the_reagent_for_ever()
    {
        var pool = Agreed(watched: true);
        for (var i = 0; i < 45 && pool.Trust.Standing == Standing.Good; i++) pool.Check(80 + (i * 8), test: 7.04 + Noise(i), probe: 7.4);
        Assert.NotEqual(Standing.Good, pool.Trust.Standing);
    }

    [Fact]
    public void A_leap_of_the_signal_is_the_probes_until_a_test_says_otherwise()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        pool.Leap(70, 0.35);
        Assert.Equal((Standing.OutOfSpecification, "trust.leapt"), (pool.Trust.Standing, pool.Trust.Reasons[0].Code));
        Assert.Equal(0.35, pool.Trust.Bias.Value, 0.05);
        Assert.Equal(Verdict.ProbeDrifts, pool.Check(72, test: 7.4, probe: 7.75).Verdict);

        var water = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) water.Check(i * 8, 7.4 + Noise(i), 7.4);
        water.Leap(70, 0.35);
        water.Check(72, test: 7.74, probe: 7.75);
        water.Check(72.5, test: 7.76, probe: 7.75);
        Assert.Equal(Standing.Good, water.Trust.Standing);
    }

    [Fact]
    public void A_test_off_its_scale_is_doubted_where_a_trusted_probe_stands_in_the_middle_of_it()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        var slip = pool.Check(72, test: 6.8, probe: 7.4);
        Assert.Equal((Verdict.CheckSuspect, "trust.bound_contradicted"), (slip.Verdict, First(slip)));
        // The water itself at the end of the scale is another matter.
        Assert.Equal(Verdict.NotComparable, pool.Check(73, test: 6.8, probe: 6.85).Verdict);
    }

    [Fact]
    public void A_probe_that_is_not_trusted_itself_contradicts_no_test_off_its_scale()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        var check = pool.CheckOf(72, new TestResult(Measurand.Ph, 6.8, TestMethod.Photometer));
        Assert.Equal(Verdict.NotComparable, pool.Judge(pool.InputOf(check, 7.4) with { SignalFails = true }).Verdict);
        pool.Leap(76, 0.6);
        Assert.Equal(Verdict.NotComparable, pool.Check(78, test: 6.8, probe: 8.0).Verdict);
    }

    [Fact]
    public void The_drift_is_known_with_its_uncertainty()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 120; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4 + (0.01 * (i / 3.0)));
        Assert.Equal(0.01, pool.Trust.Drift.Value, 0.002);
        Assert.InRange(pool.Trust.Drift.StandardUncertainty, 0.0001, 0.008);
    }

    [Fact]
    public void What_the_older_checks_taught_is_not_lost_when_they_are_let_go()
    {
        var pool = new TestPool(Measurand.Orp);
        for (var i = 0; i < 3 * ProbeTrust.Kept; i++) pool.CheckOrp(i * 8, 1 + (0.8 * (i % 5 / 4.0)), 7.4, 720 + (50 * Math.Log10(1 + (0.8 * (i % 5 / 4.0)))));
        Assert.True(pool.Trust.Pairs.Length <= ProbeTrust.Kept);
        Assert.Equal(3 * ProbeTrust.Kept, pool.Trust.Taken);
        Assert.Equal(50, pool.Trust.Line!.Slope.Value, 3 * pool.Trust.Line.Slope.StandardUncertainty);
    }

    [Fact]
    public void A_second_wild_check_to_the_other_side_confirms_nothing()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        pool.Check(72, test: 7.9, probe: 7.4);
        Assert.Equal(Verdict.CheckSuspect, pool.Check(72.2, test: 6.9, probe: 7.4).Verdict);
        Assert.Equal(Standing.Good, pool.Trust.Standing);
    }

    [Fact]
    public void A_slow_drift_asks_for_maintenance_first_and_is_out_of_specification_later()
    {
        var pool = new TestPool(Measurand.Ph);
        var seen = new List<Standing>();
        for (var i = 0; i < 120; i++)
        {
            var day = i / 3.0;
            var judgement = pool.Check(i * 8, 7.4 + Noise(i), 7.4 + (0.01 * day));
            if (seen.Count == 0 || seen[^1] != judgement.Standing) seen.Add(judgement.Standing);
        }

        Assert.Equal([Standing.Good, Standing.MaintenanceRequired, Standing.OutOfSpecification], seen);
        Assert.Equal(0.4, pool.Trust.Bias.Value, 0.08);
    }

    [Fact]
    public void A_flagged_probe_stays_flagged_beside_a_wild_check_and_says_why()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 12; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.65);
        Assert.Equal(Standing.MaintenanceRequired, pool.Trust.Standing);
        var wild = pool.Check(96, test: 7.65, probe: 7.2);
        Assert.Equal(Verdict.CheckSuspect, wild.Verdict);
        Assert.Equal(Standing.MaintenanceRequired, pool.Trust.Standing);
        Assert.Contains(pool.Trust.Reasons, reason => reason.Code == "trust.reads_high");
    }

    [Fact]
    public void An_unlikely_result_needs_less_to_be_set_aside_and_is_believed_when_the_probe_bears_it_out()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 9; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.4);
        Assert.Equal("trust.unlikely_check_stands_alone", First(pool.Check(72, test: 7.6, probe: 7.4, suspect: true)));
        Assert.Equal(Verdict.Agrees, pool.Check(80, test: 8.1, probe: 8.1, suspect: true).Verdict);
    }

    [Fact]
    public void A_temperature_probe_is_judged_in_the_same_way()
    {
        var pool = new TestPool(Measurand.Temperature);
        pool.Check(0, 28.0, 29.3, method: TestMethod.Meter);
        pool.Check(1, 28.1, 29.4, method: TestMethod.Meter);
        Assert.Equal((Standing.OutOfSpecification, Verdict.ProbeDrifts), (pool.Trust.Standing, pool.Trust.Verdict));
        Assert.Equal(1.3, pool.Trust.Bias.Value, 0.2);
    }

    [Fact]
    public void A_panel_scaled_probe_that_drifts_says_that_the_panel_doses_by_it()
    {
        var pool = new TestPool(Measurand.Ph, SignalOrigin.PanelScaled);
        for (var i = 0; i < 4; i++) pool.Check(i * 8, 7.4 + Noise(i), 7.7);
        Assert.Contains(pool.Trust.Reasons, reason => reason.Code == "trust.panel_doses_by_it");
    }

    [Fact]
    public void A_check_of_another_pool_or_of_other_things_does_not_concern_the_probe()
    {
        var pool = new TestPool(Measurand.Ph);
        var check = pool.CheckOf(0, new TestResult(Measurand.Ph, 7.4, TestMethod.Photometer));
        Assert.Null(Reconciliation.Judge(ProbeTrust.New, pool.InputOf(check with { PoolId = "spa" }, 7.4)));
        Assert.Null(Reconciliation.Judge(ProbeTrust.New, pool.InputOf(pool.CheckOf(0, new TestResult(Measurand.FreeChlorine, 1, TestMethod.Photometer)), 7.4)));
    }

    [Fact]
    public void A_corrected_check_takes_the_place_of_the_one_it_corrects()
    {
        var pool = new TestPool(Measurand.Ph);
        var slip = pool.CheckOf(0, new TestResult(Measurand.Ph, 7.75, TestMethod.Photometer));
        pool.Judge(slip, 7.4, []);
        pool.Judge(pool.CheckOf(0, new TestResult(Measurand.Ph, 7.45, TestMethod.Photometer)) with { Corrects = slip.Id, CorrectionReason = "slip of the pen" }, 7.4, []);
        Assert.Equal(7.45, Assert.Single(pool.Trust.Pairs).Test.Value);
        Assert.Equal(Verdict.Agrees, pool.Trust.Verdict);
    }

    [Fact]
    public void Without_a_check_the_bias_stays_and_its_uncertainty_grows()
    {
        var pool = new TestPool(Measurand.Ph);
        for (var i = 0; i < 4; i++) pool.Check(i * 8, 7.4, 7.45);
        var later = Reconciliation.BiasAt(pool.Probe, pool.Trust, TestPool.After(24 * 31));
        Assert.Equal(pool.Trust.Bias.Value, later.Value, 0.01);
        // A month of the random walk whose median drift is 0.10: 0.148 as a standard deviation.
        Assert.True(later.StandardUncertainty > 0.14);
    }
}
