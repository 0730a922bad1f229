using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Rules;

/// <summary>Pumps that follow a wrong value are a warning of their own, and nothing is ever switched.</summary>
public sealed class FollowRuleTests
{
    private static readonly CircuitPlan Plan = Hall.Plan.With("main-ph", p => p with { Origin = SignalOrigin.PanelScaled }) with
    {
        Pumps = [.. Hall.Plan.Pumps.Select(p => p with { Doses = p.Id == "acid-pump" ? ProductKind.HydrochloricAcid : ProductKind.SodiumHypochlorite })],
    };

    [Fact, Evidence("R-032")]
    public void A_pump_whose_panel_reads_far_from_the_tests_follows_a_wrong_value()
    {
        var bench = Biased(0.5);
        Keep(bench, TimeSpan.FromMinutes(4), 7.4);
        Assert.True(bench.IsUp(RuleBook.PumpsFollowWrongValue, "acid-pump"));
        Assert.Equal("follow.reads_high", bench.Alarm(RuleBook.PumpsFollowWrongValue, "acid-pump")!.Cause.Code);
        Assert.False(bench.IsUp(RuleBook.PumpsFollowWrongValue, "hypo-pump"));
    }

    [Fact, Evidence("R-032")]
    public void A_raw_signal_that_is_followed_is_not_called_wrong_by_its_bias_for_its_controller_may_scale_it()
    {
        var raw = Plan.With("main-ph", p => p with { Origin = SignalOrigin.Raw });
        var bench = Biased(0.5, plan: raw with { Pumps = [.. raw.Pumps.Select(p => p.Id == "acid-pump" ? p with { FollowsProbeId = "main-ph" } : p)] });
        Keep(bench, TimeSpan.FromMinutes(4), 7.4);
        Assert.True(bench.IsUp(RuleBook.ProbeNotTrusted, "main-ph"));
        Assert.False(bench.IsUp(RuleBook.PumpsFollowWrongValue, "acid-pump"));
    }

    [Fact, Evidence("R-032")]
    public void A_display_inside_the_limits_that_hides_water_outside_them_is_told_before_the_probe_is_out_of_specification()
    {
        // Reads 0.22 low: the display holds 7.50, the water by the tests is 7.72 and the limit 7.6.
        var bench = Biased(-0.22);
        Keep(bench, TimeSpan.FromMinutes(4), 7.5);
        Assert.Equal("follow.hides_a_limit", bench.Alarm(RuleBook.PumpsFollowWrongValue, "acid-pump")?.Cause.Code);
    }

    [Fact, Evidence("R-032")]
    public void It_waits_out_its_delay_and_clears_when_the_panel_was_put_right()
    {
        var bench = Biased(0.5);
        Keep(bench, TimeSpan.FromMinutes(4), 7.4);
        var since = bench.Alarm(RuleBook.ProbeNotTrusted, "main-ph")!.RaisedAt;
        Assert.True(bench.Alarm(RuleBook.PumpsFollowWrongValue, "acid-pump")!.RaisedAt - since >= TimeSpan.FromMinutes(2));
        var id = TimeOrderedId.Derive(bench.Now, "panel");
        bench.Run(at => new CalibrationProposed(at, new Calibration { Id = id, ProbeId = "main-ph", Kind = CalibrationKind.PanelAdjustment, Offset = -0.5, ProposedBy = "R. Example" }));
        Assert.IsType<Outcome.Done>(bench.Run(at => new CalibrationDecided(at, id, CalibrationStatus.Adjusted, Instant.Never, "R. Example", null)));
        Keep(bench, TimeSpan.FromMinutes(4), 7.4);
        Assert.False(bench.IsUp(RuleBook.PumpsFollowWrongValue, "acid-pump"));
    }

    [Fact, Evidence("R-032")]
    public void A_pump_that_never_ran_follows_nothing()
    {
        var bench = Biased(0.5, runs: false);
        Keep(bench, TimeSpan.FromMinutes(4), 7.4);
        Assert.False(bench.IsUp(RuleBook.PumpsFollowWrongValue, "acid-pump"));
    }

    [Fact, Evidence("R-032")]
    public void A_probe_that_fell_silent_is_followed_blindly()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Ph, "7.4");
        bench.Pass(TimeSpan.FromMinutes(6));
        Assert.Equal("follow.signal_is_wrong", bench.Alarm(RuleBook.PumpsFollowWrongValue, "acid-pump")?.Cause.Code);
    }

    [Fact, Evidence("R-032")]
    public void Work_on_the_probe_does_not_take_back_that_it_was_followed_blindly()
    {
        var bench = new Bench(Plan);
        bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.Ph, "7.4");
        bench.Pass(TimeSpan.FromMinutes(6));
        bench.Run(at => new ProbeWorkBegun(at, TimeOrderedId.Derive(at, "work"), "main-ph", "R. Example"));
        Keep(bench, TimeSpan.FromMinutes(10), 7.0);
        Assert.True(bench.IsUp(RuleBook.PumpsFollowWrongValue, "acid-pump"));
        bench.Pass(TimeSpan.FromMinutes(25));
        Keep(bench, TimeSpan.FromMinutes(10), 7.4);
        Assert.False(bench.IsUp(RuleBook.PumpsFollowWrongValue, "acid-pump"));
    }

    [Theory]
    [InlineData(ProductKind.HydrochloricAcid, "main-ph")]
    [InlineData(ProductKind.SodiumHypochlorite, "main-chlorine")]
    [InlineData(ProductKind.Coagulant, null)]
    [InlineData(ProductKind.Unknown, null)]
    public void A_pump_follows_the_panel_scaled_probe_of_what_its_product_moves(ProductKind doses, string? probe)
    {
        var index = PumpFollows.Of(Plan, Plan.Pumps[0] with { Doses = doses });
        Assert.Equal(probe, index < 0 ? null : Plan.Probes[index].Id);
    }

    [Fact]
    public void A_raw_probe_is_followed_only_when_the_plant_file_says_so()
    {
        var acid = Plan.Pumps[0];
        Assert.Equal(-1, PumpFollows.Of(Hall.Plan, acid));
        Assert.Equal("main-orp", Hall.Plan.Probes[PumpFollows.Of(Hall.Plan, acid with { FollowsProbeId = "main-orp" })].Id);
    }

    private static Bench Biased(double bias, bool runs = true, CircuitPlan? plan = null)
    {
        var bench = new Bench(plan ?? Plan);
        if (runs) bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.AcidState, "stopped");
        for (var check = 0; check < 6; check++)
        {
            bench.CheckBeside("main-ph", 7.4 + bias, Bench.Test(Measurand.Ph, 7.4 + (check % 2 * 0.02)));
            Keep(bench, TimeSpan.FromMinutes(2), 7.4);
            bench.Skip(TimeSpan.FromHours(2));
        }

        if (runs) bench.Says(Hall.AcidState, "running");
        bench.Says(Hall.AcidState, "stopped");
        return bench;
    }

    private static void Keep(Bench bench, TimeSpan span, double ph)
    {
        for (var end = bench.Now + span; bench.Now < end;)
        {
            bench.Skip(TimeSpan.FromSeconds(30));
            bench.Says(Hall.Ph, FormattableString.Invariant($"{ph + (bench.Events.Count % 3 * 0.01):0.00}"));
            bench.Tick();
        }
    }
}
