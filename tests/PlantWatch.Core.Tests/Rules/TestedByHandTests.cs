using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>What a manual test raises and clears. A doubted one may raise and never clear.</summary>
public sealed class TestedByHandTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    [Fact, Evidence("R-012")]
    public void A_test_outside_the_limit_is_an_alarm_at_once_and_a_repeat_inside_clears_it()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.Ph, 7.8));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/ph"));
        bench.Pass(30 * Minute);
        bench.Check(Bench.Test(Measurand.Ph, 7.5));
        Assert.False(bench.IsUp(RuleBook.TestOutsideLimit, "main/ph"));
    }

    [Fact, Evidence("R-012")]
    public void Combined_chlorine_counts_as_tested_by_free_and_total()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.4), Bench.Test(Measurand.TotalChlorine, 2.6));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/combined_chlorine"));
    }

    [Fact]
    public void Combined_chlorine_is_not_judged_in_bromine_water()
    {
        var bench = new Bench(Hall.Plan with { Pools = [.. Hall.Plan.Pools.Select(pool => pool with { Disinfectant = Disinfectant.Bromine })] });
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.4), Bench.Test(Measurand.TotalChlorine, 2.6));
        Assert.False(bench.IsUp(RuleBook.TestOutsideLimit, "main/combined_chlorine"));
    }

    [Fact, Evidence("R-012")]
    public void An_older_pair_that_arrives_late_does_not_clear_combined_chlorine()
    {
        var bench = new Bench();
        bench.Pass(10 * Minute);
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.4), Bench.Test(Measurand.TotalChlorine, 2.6));
        bench.Check(bench.CheckOf(Bench.Test(Measurand.FreeChlorine, 1.4), Bench.Test(Measurand.TotalChlorine, 1.6)) with { SampledAt = bench.Now - 5 * Minute });
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/combined_chlorine"));
    }

    [Fact, Evidence("R-012")]
    public void A_bound_that_may_still_be_outside_clears_nothing()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0.6));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
        bench.Pass(Minute);
        // "Below 1.2" may be 0.3.
        bench.Check(new TestResult(Measurand.FreeChlorine, 1.2, TestMethod.Photometer, Censoring.Below));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "main/free_chlorine"));
    }

    [Theory, Evidence("R-013")]
    [InlineData(Censoring.Below, 0.2), InlineData(Censoring.Above, 10)]
    public void A_bound_at_the_stop_lies_beyond_it(Censoring censoring, double bound)
    {
        var bench = new Bench();
        bench.Check(new TestResult(Measurand.FreeChlorine, bound, TestMethod.Photometer, censoring, Dilution: 5));
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
    }

    [Fact, Evidence("R-013")]
    public void A_test_outside_a_stop_is_critical_and_stands_until_a_sound_repeat()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.Ph, 8.4, TestMethod.Meter));
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
        bench.Pass(Minute);

        // More than a pool changes between two rounds: this one is doubted, and a doubted test clears nothing.
        bench.Check(Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
        Assert.True(bench.IsUp(RuleBook.RepeatTest, "main/ph"));
        bench.Pass(Minute);

        bench.Check(Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
        Assert.False(bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
        Assert.False(bench.IsUp(RuleBook.RepeatTest, "main/ph"));
    }

    [Fact, Evidence("R-013")]
    public void Too_much_after_too_little_is_raised_anew_and_says_so()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.FreeChlorine, 0));
        var first = bench.Alarm(RuleBook.TestOutsideStop, "main/free_chlorine")!;
        bench.Run(at => new AlarmAcknowledged(at, first.Id, "J. Sample", "dosing by hand"));
        bench.Pass(Minute);
        bench.Check(new TestResult(Measurand.FreeChlorine, 14, TestMethod.Photometer, Dilution: 10));
        var second = bench.Alarm(RuleBook.TestOutsideStop, "main/free_chlorine")!;
        Assert.NotEqual(first.Id, second.Id);
        Assert.Equal((false, "test.above_stop", 14.0), (second.IsAcknowledged, second.Cause.Code, second.Cause.Facts[2].Number));
        bench.Pass(Minute);
        // Still too much: the figure follows, and nobody is called twice.
        bench.Check(new TestResult(Measurand.FreeChlorine, 12, TestMethod.Photometer, Dilution: 10));
        Assert.Equal((second.Id, 12.0), (bench.Alarm(RuleBook.TestOutsideStop, "main/free_chlorine")!.Id, bench.Alarm(RuleBook.TestOutsideStop, "main/free_chlorine")!.Cause.Facts[2].Number));
    }

    [Fact, Evidence("R-013")]
    public void A_doubted_test_may_raise_an_alarm()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.Ph, 7.4, TestMethod.Meter));
        bench.Pass(Minute);
        bench.Check(Bench.Test(Measurand.Ph, 8.6, TestMethod.Meter));
        Assert.True(bench.State.Pools[0].Manual[Measurand.Ph].Suspect);
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/ph"));
    }

    [Fact, Evidence("R-013")]
    public void A_sample_of_yesterday_raises_no_live_alarm()
    {
        var bench = new Bench();
        bench.Check(bench.CheckOf(Bench.Test(Measurand.Ph, 8.6, TestMethod.Meter)) with { SampledAt = bench.Now - TimeSpan.FromHours(13) });
        Assert.Empty(bench.AlarmsTold);
    }

    [Fact, Evidence("R-014")]
    public void Nil_chlorine_while_orp_is_high_asks_for_a_repeat_and_is_kept_as_evidence()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Orp, 760));
        var taken = Assert.IsType<Outcome.CheckTaken>(bench.Check(Bench.Test(Measurand.FreeChlorine, 0)));
        Assert.Contains(taken.Remarks, r => r is { Field: "results[0].value", Reason.Code: "check.nil_chlorine_with_high_orp" });
        Assert.True(bench.IsUp(RuleBook.RepeatTest, "main/free_chlorine"));
        // Doubt never makes safe: until the repeat the pool may be empty.
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
    }

    [Fact, Evidence("R-014")]
    public void An_orp_of_an_hour_ago_says_nothing_of_the_sample()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Orp, 760));
        bench.Pass(60 * Minute);
        var taken = Assert.IsType<Outcome.CheckTaken>(bench.Check(Bench.Test(Measurand.FreeChlorine, 0)));
        Assert.Empty(taken.Remarks);
        Assert.True(bench.IsUp(RuleBook.TestOutsideStop, "main/free_chlorine"));
    }

    [Fact, Evidence("R-014")]
    public void Free_above_total_doubts_both()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.FreeChlorine, 2.4), Bench.Test(Measurand.TotalChlorine, 1.2));
        Assert.True(bench.IsUp(RuleBook.RepeatTest, "main/free_chlorine"));
        Assert.True(bench.IsUp(RuleBook.RepeatTest, "main/total_chlorine"));
    }

    [Fact, Evidence("R-040")]
    public void A_check_that_is_an_hour_past_its_time_is_an_alarm_until_all_that_was_due_is_tested()
    {
        var bench = new Bench();
        bench.Tick();
        Assert.True(bench.IsUp(RuleBook.CheckOverdue, "main"));
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5));
        bench.Tick();
        Assert.True(bench.IsUp(RuleBook.CheckOverdue, "main"));
        bench.Check(Bench.Test(Measurand.FreeChlorine, 1.5), Bench.Test(Measurand.Ph, 7.4));
        bench.Pass(Minute);
        Assert.False(bench.IsUp(RuleBook.CheckOverdue, "main"));
    }

    [Fact, Evidence("R-040")]
    public void Duties_taken_out_of_the_plant_file_are_no_longer_overdue()
    {
        var bench = new Bench();
        bench.Pass(Minute);
        Assert.True(bench.IsUp(RuleBook.CheckOverdue, "main"));
        bench.Load(Hall.Plan.WithPool("main", p => p with { Duties = [] }));
        Assert.Null(bench.Alarm(RuleBook.CheckOverdue, "main"));
    }

    [Fact]
    public void A_pool_taken_out_of_the_plant_file_takes_the_alarms_of_its_tests_along()
    {
        var bench = new Bench();
        bench.Check(bench.CheckOf(Bench.Test(Measurand.Ph, 8.4, TestMethod.Meter)) with { PoolId = "learner" });
        bench.Load(Hall.Plan.Without("learner").Without("learner-ph").Without("learner-temperature"));
        Assert.DoesNotContain(bench.State.Alarms.Keys, k => k.Contains("learner", StringComparison.Ordinal));
    }

    [Fact]
    public void A_pool_that_is_renamed_keeps_the_alarms_of_its_tests_and_a_repeat_clears_them()
    {
        var bench = new Bench();
        bench.Check(Bench.Test(Measurand.Ph, 7.9, TestMethod.Meter));
        bench.Load(Hall.Plan.WithPool("main", p => p with { Id = "large", Was = "main" }));
        Assert.True(bench.IsUp(RuleBook.TestOutsideLimit, "large/ph"));
        bench.Pass(Minute);
        bench.Check(bench.CheckOf(Bench.Test(Measurand.Ph, 7.5, TestMethod.Meter)) with { PoolId = "large" });
        Assert.False(bench.IsUp(RuleBook.TestOutsideLimit, "large/ph"));
    }
}
