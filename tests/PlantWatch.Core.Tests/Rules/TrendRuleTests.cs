using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Values that run away or run into a limit are told before the limit is reached, and only where the probe can be believed.</summary>
public sealed class TrendRuleTests
{
    private static readonly CircuitPlan Plan = Hall.Plan.With("main-ph", p => p with { Every = TimeSpan.FromSeconds(10) });

    [Fact, Evidence("R-016")]
    public void A_ph_that_falls_by_two_an_hour_changes_too_fast_and_one_that_falls_by_a_fifth_does_not()
    {
        var fast = Ramp(7.5, -2.0, minutes: 18);
        Assert.Equal("trend.falls_fast", fast.Alarm(RuleBook.ChangesTooFast, "main-ph")?.Cause.Code);
        Assert.True(fast.IsUp(RuleBook.ChangesTooFast, "main-ph"));
        Assert.False(Ramp(7.5, -0.2, minutes: 30).IsUp(RuleBook.ChangesTooFast, "main-ph"));
    }

    [Fact, Evidence("R-016")]
    public void It_clears_only_when_a_window_says_that_it_is_slow_again()
    {
        var bench = Ramp(7.5, -2.0, minutes: 18);
        Go(bench, 6.9, 0, minutes: 8);
        Assert.True(bench.IsUp(RuleBook.ChangesTooFast, "main-ph"));
        Go(bench, 6.9, 0, minutes: 14);
        Assert.False(bench.IsUp(RuleBook.ChangesTooFast, "main-ph"));
    }

    [Fact, Evidence("R-016")]
    public void In_a_spa_the_same_pace_is_usual_and_what_is_not_is_told_within_minutes()
    {
        var spa = Plan.WithPool("main", p => p with { Kind = PoolKind.Spa, VolumeCubicMetres = 4 });
        Assert.False(Ramp(7.5, -1.2, minutes: 18, spa).IsUp(RuleBook.ChangesTooFast, "main-ph"));
        Assert.True(Ramp(7.9, -4, minutes: 8, spa).IsUp(RuleBook.ChangesTooFast, "main-ph"));
    }

    [Fact, Evidence("R-016")]
    public void Standing_water_and_work_on_the_probe_tell_no_pace()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.Flow, "0");
        Go(bench, 7.5, -3, minutes: 20);
        Assert.False(bench.IsUp(RuleBook.ChangesTooFast, "main-ph"));
        var worked = new Bench(Plan);
        worked.Run(at => new ProbeWorkBegun(at, TimeOrderedId.Derive(at, "work"), "main-ph", "R. Example"));
        Go(worked, 7.5, -3, minutes: 20);
        Assert.False(worked.IsUp(RuleBook.ChangesTooFast, "main-ph"));
        Assert.Empty(worked.Probe("main-ph").Trail.Means);
    }

    [Fact, Evidence("R-017")]
    public void A_value_on_its_way_to_a_limit_is_told_with_the_minutes_left()
    {
        // 7.50 falling 0.3 an hour; after 25 minutes at 7.375, the limit 7.2 is 35 minutes off.
        var bench = Ramp(7.5, -0.3, minutes: 25);
        var alarm = bench.Alarm(RuleBook.HeadsForLimit, "main-ph");
        Assert.True(alarm is { Active: true });
        Assert.Equal("trend.heads_low", alarm.Cause.Code);
        Assert.InRange(35.0, alarm.Cause.Facts[2].Number!.Value - 1, alarm.Cause.Facts[3].Number!.Value + 1);
        Assert.False(bench.IsUp(RuleBook.BelowLimit, "main-ph"));
    }

    [Fact, Evidence("R-017")]
    public void It_clears_when_the_trend_turns_and_gives_way_when_the_limit_is_reached()
    {
        var turned = Ramp(7.5, -0.3, minutes: 25);
        Go(turned, 7.38, 0, minutes: 20);
        Assert.False(turned.IsUp(RuleBook.HeadsForLimit, "main-ph"));
        var reached = Ramp(7.5, -0.3, minutes: 70);
        Assert.True(reached.IsUp(RuleBook.BelowLimit, "main-ph"));
        Assert.False(reached.IsUp(RuleBook.HeadsForLimit, "main-ph"));
    }

    [Fact, Evidence("R-017")]
    public void What_is_hours_away_or_creeps_along_its_limit_is_not_worth_a_word()
    {
        Assert.False(Ramp(7.55, -0.12, minutes: 40).IsUp(RuleBook.HeadsForLimit, "main-ph"));
        Assert.False(Ramp(7.22, -0.03, minutes: 40).IsUp(RuleBook.HeadsForLimit, "main-ph"));
    }

    [Fact, Evidence("R-017")]
    public void A_limit_that_leaves_the_plant_file_takes_its_warning_along()
    {
        var bench = Ramp(7.5, -0.3, minutes: 25);
        bench.Load(Plan.WithPool("main", p => p with { Limits = [.. p.Limits.Where(l => l.Measurand != Measurand.Ph)] }));
        Assert.Null(bench.Alarm(RuleBook.HeadsForLimit, "main-ph"));
    }

    [Fact]
    public void What_the_probe_measures_now_begins_its_trail_anew()
    {
        var bench = Ramp(7.5, -0.3, minutes: 25);
        Assert.True(bench.Probe("main-ph").Trail.IsFull);
        bench.Load(Plan.With("main-ph", p => p with { Origin = SignalOrigin.PanelScaled }));
        Assert.Equal(default, bench.Probe("main-ph").Trail);
    }

    private static Bench Ramp(double from, double perHour, int minutes, CircuitPlan? plan = null)
    {
        var bench = new Bench(plan ?? Plan);
        bench.Says(Hall.Flow, "1");
        Go(bench, from, perHour, minutes);
        return bench;
    }

    // Every ten seconds, with the ripple of a display's last digit.
    private static void Go(Bench bench, double from, double perHour, int minutes)
    {
        for (var i = 0; i < minutes * 6; i++)
        {
            bench.Skip(TimeSpan.FromSeconds(10));
            bench.Says(Hall.Ph, FormattableString.Invariant($"{from + (perHour * i / 360) + ((i % 3) - 1) * 0.005:0.000}"));
            bench.Tick();
        }
    }
}
