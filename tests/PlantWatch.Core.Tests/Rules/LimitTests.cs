using PlantWatch.Core.Alarms;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Limits the plant has set, by live probes.</summary>
public sealed class LimitTests
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    [Fact, Evidence("R-010")]
    public void A_value_under_the_low_limit_for_the_on_delay_is_an_alarm_with_its_figures()
    {
        var bench = new Bench();
        bench.Hold(2 * Minute, (Hall.Ph, 7.1));
        Assert.False(bench.IsUp(RuleBook.BelowLimit, "main-ph"));
        bench.Hold(TimeSpan.FromSeconds(10), (Hall.Ph, 7.1));
        var alarm = bench.Alarm(RuleBook.BelowLimit, "main-ph")!;
        Assert.True(alarm.Active);
        Assert.Equal(Core.Reasons.Reason.Of("limit.below", "main-ph", 7.1, 7.2, "pH"), alarm.Cause);
        Assert.True(TimeOrderedId.IsVersion7(alarm.Id));
    }

    [Fact, Evidence("R-011")]
    public void A_value_over_the_high_limit_for_the_on_delay_is_an_alarm()
    {
        var bench = new Bench();
        bench.Hold(3 * Minute, (Hall.Ph, 7.7));
        Assert.True(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        Assert.Null(bench.Alarm(RuleBook.BelowLimit, "main-ph"));
    }

    [Fact, Evidence("R-011")]
    public void A_short_excursion_is_no_alarm()
    {
        var bench = new Bench();
        for (var i = 0; i < 20; i++)
        {
            bench.Hold(TimeSpan.FromSeconds(110), (Hall.Ph, 7.7));
            bench.Hold(TimeSpan.FromSeconds(10), (Hall.Ph, 7.5));
        }

        Assert.Empty(bench.Told(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact, Evidence("R-010")]
    public void Noise_around_the_limit_within_the_deadband_is_one_alarm()
    {
        var bench = new Bench();
        bench.Hold(3 * Minute, (Hall.Ph, 7.19));
        for (var i = 0; i < 30; i++)
        {
            bench.Hold(3 * Minute, (Hall.Ph, 7.24));
            bench.Hold(3 * Minute, (Hall.Ph, 7.19));
        }

        Assert.Equal([AlarmChange.Raised], bench.Told(RuleBook.BelowLimit, "main-ph"));
    }

    [Fact, Evidence("R-010")]
    public void Without_sample_flow_a_limit_alarm_is_suppressed_by_design_and_released_with_the_flow()
    {
        var bench = new Bench();
        bench.Hold(3 * Minute, (Hall.Flow, 1), (Hall.Ph, 7.1));
        bench.Hold(3 * Minute, (Hall.Flow, 0), (Hall.Ph, 7.4));
        Assert.Equal(AlarmState.SuppressedByDesign, bench.Alarm(RuleBook.BelowLimit, "main-ph")!.State);
        bench.Hold(Minute, (Hall.Flow, 1), (Hall.Ph, 7.1));
        Assert.Equal(AlarmState.Unacknowledged, bench.Alarm(RuleBook.BelowLimit, "main-ph")!.State);
        Assert.Equal([AlarmChange.Raised, AlarmChange.Suppressed, AlarmChange.Released], bench.Told(RuleBook.BelowLimit, "main-ph"));
    }

    [Fact, Evidence("R-011")]
    public void What_was_pending_when_the_flow_was_lost_is_not_raised_by_standing_water()
    {
        var bench = new Bench();
        bench.Hold(Minute, (Hall.Flow, 1), (Hall.Ph, 7.7));
        bench.Hold(10 * Minute, (Hall.Flow, 0), (Hall.Ph, 7.9));
        Assert.Null(bench.Alarm(RuleBook.AboveLimit, "main-ph"));
        Assert.Empty(bench.Told(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact, Evidence("R-010")]
    public void A_late_reading_is_stored_and_raises_and_clears_nothing()
    {
        var bench = new Bench();
        for (var i = 0; i < 60; i++)
        {
            bench.LearnerSays("ph", bench.Now - 10 * Minute, 6.9);
            bench.Hold(TimeSpan.FromSeconds(10));
        }

        Assert.Equal(60, bench.Readings.Count);
        Assert.All(bench.Readings, r => Assert.True(r.Quality.HasFlag(Core.Readings.Quality.Late)));
        Assert.Null(bench.Alarm(RuleBook.BelowLimit, "learner-ph"));
    }

    [Fact, Evidence("R-010")]
    public void A_limit_that_is_taken_out_of_the_plant_file_takes_its_alarm_along()
    {
        var bench = new Bench();
        bench.Hold(3 * Minute, (Hall.Ph, 7.1));
        bench.Load(Hall.Plan.WithPool("main", p => p with { Limits = [] }));
        Assert.Equal([AlarmChange.Raised, AlarmChange.Retired], bench.Told(RuleBook.BelowLimit, "main-ph"));
        Assert.Null(bench.Alarm(RuleBook.BelowLimit, "main-ph"));
    }

    [Fact, Evidence("R-011")]
    public void The_plant_may_set_another_delay_and_no_other_alarm_waits_for_it()
    {
        var bench = new Bench(Tuned(l => l with { OnDelay = 5 * Minute, OffDelay = TimeSpan.Zero }));
        bench.Hold(4 * Minute, (Hall.Ph, 8.4));
        Assert.False(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        Assert.True(bench.IsUp(RuleBook.StopPh, "main-ph"));
        bench.Hold(TimeSpan.FromSeconds(70), (Hall.Ph, 8.4));
        Assert.True(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        bench.Hold(TimeSpan.FromSeconds(20), (Hall.Ph, 7.4));
        Assert.False(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
    }

    [Fact, Evidence("R-011")]
    public void A_delay_that_the_plant_has_set_runs_out_with_time_alone()
    {
        var bench = new Bench(Tuned(l => l with { OnDelay = 5 * Minute }));
        bench.Hold(Minute, (Hall.Ph, 7.8));
        bench.Pass(3 * Minute);
        Assert.False(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
        bench.Pass(2 * Minute);
        Assert.True(bench.IsUp(RuleBook.AboveLimit, "main-ph"));
    }

    [Theory, Evidence("R-010")]
    [InlineData(0, false)]
    [InlineData(0.2, true)]
    public void The_plant_may_set_how_far_a_value_must_come_back(double deadband, bool stands)
    {
        var bench = new Bench(Tuned(l => l with { Deadband = deadband }));
        bench.Hold(3 * Minute, (Hall.Ph, 7.1));
        bench.Hold(5 * Minute, (Hall.Ph, 7.21));
        Assert.Equal(stands, bench.IsUp(RuleBook.BelowLimit, "main-ph"));
    }

    private static Core.Plans.CircuitPlan Tuned(Func<Core.Plans.LimitPlan, Core.Plans.LimitPlan> tune) =>
        Hall.Plan.WithPool("main", p => p with { Limits = [.. p.Limits.Select(l => l.Measurand == Measurand.Ph ? tune(l) : l)] });
}
