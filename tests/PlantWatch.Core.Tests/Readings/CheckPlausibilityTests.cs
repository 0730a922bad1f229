using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;

namespace PlantWatch.Core.Tests.Readings;

public class CheckPlausibilityTests
{
    private static readonly Instant Now = Checks.Noon + TimeSpan.FromMinutes(10);

    private static readonly CircuitPlan Plan = new()
    {
        Id = "c", Name = "Circuit", TimeZone = "Europe/London",
        Pools = [new PoolPlan { Id = "main", Name = "Main pool", Disinfectant = Disinfectant.Chlorine }],
        Probes = [new ProbePlan { Id = "ph-1", Name = "pH", PoolId = "main", Measurand = Measurand.Ph, Topic = "t", Range = new(0, 14) }],
    };

    private static readonly PoolState Pool = new() { Id = "main" };

    private static Plausibility Look(ManualCheck check, PoolState? pool = null, double? orp = null) =>
        CheckPlausibility.Of(Plan, pool ?? Pool, check, Now, orp is { } mv ? Millivolts.From(mv) : null);

    private static TestResult Ph(double value, TestMethod method = TestMethod.Photometer) => new(Measurand.Ph, value, method);

    private static TestResult Free(double value, double dilution = 1) => new(Measurand.FreeChlorine, value, TestMethod.Photometer, Censoring.None, dilution);

    private static TestResult Total(double value) => new(Measurand.TotalChlorine, value, TestMethod.Photometer);

    private static PoolState Remembering(TestResult result, bool suspect = false, double hoursAgo = 5) => Pool with
    {
        Manual = Pool.Manual.SetItem(result.Measurand, new(result, Checks.Noon - TimeSpan.FromHours(hoursAgo), suspect, Guid.NewGuid())),
    };

    private static void Refuses(ManualCheck check, string field, string code)
    {
        var found = Look(check);
        Assert.True(found.Refuses);
        Assert.Contains(found.Impossible, remark => remark.Field == field && remark.Reason.Code == code);
    }

    private static void Doubts(Plausibility found, string field, string code, Measurand measurand)
    {
        Assert.False(found.Refuses);
        Assert.Contains(found.Unlikely, remark => remark.Field == field && remark.Reason.Code == code);
        Assert.True(found.IsSuspect(measurand));
    }

    [Theory, InlineData(0.74), InlineData(3.9), InlineData(10.2)]
    public void A_pH_that_no_pool_reads_is_doubted_whatever_the_method(double ph) =>
        Doubts(Look(Checks.Of(new TestResult(Measurand.Ph, ph, TestMethod.Meter))), "results[0].value", "check.no_pool_reads_so", Measurand.Ph);

    [Fact]
    public void A_sound_check_is_neither_refused_nor_remarked()
    {
        var found = Look(Checks.Of(Ph(7.4), Free(1.5), Total(1.8), new(Measurand.Temperature, 28, TestMethod.Meter)), Remembering(Ph(7.3)), 720);
        Assert.False(found.Refuses);
        Assert.Empty(found.Unlikely);
        Assert.Empty(found.Suspect);
    }

    [Fact]
    public void A_negative_value_is_refused_beside_its_field() => Refuses(Checks.Of(Ph(7.4), Free(-0.1)), "results[1].value", "check.value_negative");

    [Fact]
    public void An_impossible_value_is_refused_with_the_range() => Refuses(Checks.Of(Ph(14.1)), "results[0].value", "check.value_impossible");

    [Fact]
    public void What_is_no_number_is_refused() => Refuses(Checks.Of(Ph(double.NaN)), "results[0].value", "check.not_a_number");

    [Fact]
    public void A_sample_of_tomorrow_is_refused() => Refuses(Checks.At(Now + TimeSpan.FromDays(1), Ph(7.4)), "sampledAt", "check.sampled_in_future");

    [Fact]
    public void Clocks_a_few_minutes_apart_are_nobodys_fault() => Assert.False(Look(Checks.At(Now + TimeSpan.FromMinutes(4), Ph(7.4))).Refuses);

    [Fact]
    public void A_sample_of_another_year_is_refused() => Refuses(Checks.At(Now - TimeSpan.FromDays(400), Ph(7.4)), "sampledAt", "check.sampled_too_long_ago");

    [Fact]
    public void A_sample_without_time_is_refused() => Refuses(Checks.At(Instant.Never, Ph(7.4)), "sampledAt", "check.sampled_at_missing");

    [Fact]
    public void Two_results_for_one_quantity_are_refused_at_the_second() => Refuses(Checks.Of(Ph(7.4), Ph(7.5)), "results[1].measurand", "check.measurand_twice");

    [Fact]
    public void Combined_chlorine_is_worked_out_and_not_entered() =>
        Refuses(Checks.Of(new TestResult(Measurand.CombinedChlorine, 0.3, TestMethod.Photometer)), "results[0].measurand", "check.measurand_not_tested_by_hand");

    [Theory]
    [InlineData(0)]
    [InlineData(0.5)]
    [InlineData(1000)]
    [InlineData(double.NaN)]
    public void An_impossible_dilution_is_refused(double dilution) => Refuses(Checks.Of(Free(1, dilution)), "results[0].dilution", "check.dilution_impossible");

    [Fact]
    public void An_empty_check_is_refused() => Refuses(Checks.Of(), "results", "check.empty");

    [Fact]
    public void A_look_at_the_bottom_is_a_check() => Assert.False(Look(Checks.Of() with { BottomVisible = false }).Refuses);

    [Fact]
    public void An_unknown_pool_is_refused() => Refuses(Checks.Of(Ph(7.4)) with { PoolId = "moon" }, "poolId", "check.pool_unknown");

    [Fact]
    public void A_panel_reading_of_an_unknown_probe_is_refused() =>
        Refuses(Checks.Of(Ph(7.4)) with { Panel = [new("ph-1", 7.4), new("ph-9", 7.4)] }, "panel[1].probeId", "check.probe_unknown");

    [Fact]
    public void An_impossible_panel_reading_is_refused() =>
        Refuses(Checks.Of(Ph(7.4)) with { Panel = [new("ph-1", 740)] }, "panel[0].value", "check.value_impossible");

    [Fact]
    public void A_check_without_a_person_is_refused() => Refuses(Checks.Of(Ph(7.4)) with { Who = " " }, "who", "check.who_missing");

    [Fact]
    public void A_correction_says_why() => Refuses(Checks.Of(Ph(7.4)) with { Corrects = Guid.NewGuid() }, "correctionReason", "check.correction_reason_missing");

    [Fact]
    public void All_that_is_wrong_is_said_at_once() => Assert.Equal(3, Look(Checks.Of(Ph(-1), Free(-1)) with { Who = "" }).Impossible.Length);

    [Fact]
    public void Free_above_total_beyond_repeatability_doubts_both()
    {
        var found = Look(Checks.Of(Free(2.0), Total(1.2)));
        Doubts(found, "results[0].value", "check.free_above_total", Measurand.FreeChlorine);
        Doubts(found, "results[1].value", "check.free_above_total", Measurand.TotalChlorine);
    }

    [Fact]
    public void Free_above_total_within_repeatability_is_sound() => Assert.Empty(Look(Checks.Of(Free(1.25), Total(1.2))).Suspect);

    [Theory]
    // Phenol red: 6.8 to 8.4, outside only a bound (published, several photometer manuals; TEST-11).
    [InlineData(6.7)]
    [InlineData(6.8)]
    [InlineData(8.4)]
    [InlineData(8.9)]
    public void Phenol_red_at_or_beyond_the_ends_of_its_range_is_doubted(double ph) =>
        Doubts(Look(Checks.Of(Ph(ph))), "results[0].value", "check.outside_method_range", Measurand.Ph);

    [Fact]
    public void A_meter_has_no_colour_range() => Assert.Empty(Look(Checks.Of(Ph(8.9, TestMethod.Meter))).Suspect);

    [Fact]
    public void A_stated_bound_is_not_doubted_for_being_one() =>
        Assert.Empty(Look(Checks.Of(new TestResult(Measurand.Ph, 8.4, TestMethod.Photometer, Censoring.Above))).Suspect);

    [Fact]
    public void Dpd_above_ten_undiluted_may_bleach_and_is_doubted() =>
        Doubts(Look(Checks.Of(Free(12))), "results[0].value", "check.dpd_may_bleach", Measurand.FreeChlorine);

    [Fact]
    public void The_same_number_from_a_diluted_sample_is_sound() => Assert.Empty(Look(Checks.Of(Free(12, 10))).Unlikely);

    [Fact]
    public void Dpd_between_five_and_ten_is_remarked_and_believed()
    {
        var found = Look(Checks.Of(Free(6)));
        Assert.Equal("check.above_dpd_range", Assert.Single(found.Unlikely).Reason.Code);
        Assert.Empty(found.Suspect);
    }

    [Fact]
    public void Nil_chlorine_while_orp_is_high_is_bleaching_not_an_empty_pool() =>
        Doubts(Look(Checks.Of(Free(0)), orp: 740), "results[0].value", "check.nil_chlorine_with_high_orp", Measurand.FreeChlorine);

    [Fact]
    public void Nil_of_a_sample_diluted_to_one_in_five_is_an_empty_pool_whatever_orp_says()
    {
        // It would take five times the 10 mg/L that bleach.
        Assert.Empty(Look(Checks.Of(Free(0) with { Dilution = 5 }), orp: 780).Suspect);
        Assert.NotEmpty(Look(Checks.Of(Free(0) with { Dilution = 2 }), orp: 780).Suspect);
    }

    [Fact]
    public void Nil_chlorine_while_orp_is_low_is_an_empty_pool() => Assert.Empty(Look(Checks.Of(Free(0)), orp: 420).Suspect);

    [Fact]
    public void A_value_far_from_the_last_is_doubted() =>
        Doubts(Look(Checks.Of(Ph(8.2)), Remembering(Ph(7.4))), "results[0].value", "check.far_from_last", Measurand.Ph);

    [Fact]
    public void The_repeat_of_a_doubted_value_is_not_doubted_for_the_same_reason() =>
        Assert.Empty(Look(Checks.Of(Ph(8.2)), Remembering(Ph(7.4), suspect: true)).Suspect);

    [Fact]
    public void After_two_days_anything_may_have_changed() => Assert.Empty(Look(Checks.Of(Ph(8.2)), Remembering(Ph(7.4), hoursAgo: 60)).Suspect);

    [Fact]
    public void Looking_twice_finds_the_same()
    {
        var check = Checks.Of(Ph(8.9), Free(2), Total(1));
        Assert.Equal(Look(check).Unlikely.AsEnumerable(), Look(check).Unlikely.AsEnumerable());
    }

    [Fact]
    public void A_flash_of_pink_is_very_high_chlorine_and_not_none() =>
        Doubts(Look(Checks.Of(Free(0) with { Look = CellLook.PinkFlash })), "results[0].value", "check.flash_of_pink", Measurand.FreeChlorine);

    [Fact]
    public void Phenol_red_that_went_purple_is_doubted() =>
        Doubts(Look(Checks.Of(Ph(8.2) with { Look = CellLook.Purple })), "results[0].value", "check.phenol_red_purple", Measurand.Ph);

    [Fact]
    public void Phenol_red_beside_very_high_chlorine_is_doubted_and_a_meter_is_not()
    {
        Doubts(Look(Checks.Of(Ph(8.2), Free(15, dilution: 5))), "results[0].value", "check.phenol_red_at_high_chlorine", Measurand.Ph);
        Assert.False(Look(Checks.Of(Ph(8.2, TestMethod.Meter), Free(15, dilution: 5))).IsSuspect(Measurand.Ph));
        Assert.False(Look(Checks.Of(Ph(8.2), Free(9, dilution: 5))).IsSuspect(Measurand.Ph));
    }

    [Fact]
    public void Phenol_red_in_soft_or_salt_water_gets_a_word_and_is_kept()
    {
        var soft = Look(Checks.Of(Ph(7.4)), Remembering(new(Measurand.TotalAlkalinity, 30, TestMethod.TabletCount)));
        Assert.Contains(soft.Unlikely, remark => remark.Reason.Code == "check.phenol_red_at_low_alkalinity");
        var salt = Look(Checks.Of(Ph(7.4), new(Measurand.DissolvedSolids, 4000, TestMethod.Meter)));
        Assert.Contains(salt.Unlikely, remark => remark.Reason.Code == "check.phenol_red_in_salt_water");
        Assert.Empty(soft.Suspect);
        Assert.Empty(salt.Suspect);
    }

    [Fact]
    public void Much_combined_chlorine_reads_as_free_a_little() =>
        Assert.Contains(Look(Checks.Of(Free(1), Total(4.2))).Unlikely, remark => remark.Reason.Code == "check.monochloramine_reads_as_free");

    [Theory]
    [InlineData(0)]
    [InlineData(-40)]
    [InlineData(double.NaN)]
    [InlineData(1e-300)]
    public void A_step_that_is_none_is_refused(double step) =>
        Refuses(Checks.Of(new TestResult(Measurand.TotalAlkalinity, 100, TestMethod.TabletCount) { Step = step }), "results[0].step", "check.step_impossible");
}
