using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Tests.Plant;

public sealed class PlanChangeEffectsTests
{
    private static readonly CircuitPlan Plan = PlanChangeExample.Plan;

    [Fact]
    public void The_same_plan_has_no_effect()
    {
        Assert.Empty(Effects(Plan));
        Assert.True(PlanChange.IsSame(Plan, Plan with { Pools = [.. Plan.Pools], Probes = [.. Plan.Probes] }));
        Assert.False(PlanChange.IsSame(Plan, Plan with { Pools = [.. Plan.Pools.Reverse()] }));
    }

    [Fact]
    public void A_probe_that_is_added_or_removed_is_named()
    {
        var next = Plan with { Probes = [.. Plan.Probes.Where(p => p.Id != "orp"), PlanChangeExample.Probe("cl", Measurand.FreeChlorine, "pool")] };

        Assert.Equal([Reason.Of("plan.probe_added", "cl", "Probe cl"), Reason.Of("plan.probe_removed", "orp", "Probe orp")], Effects(next));
    }

    [Fact]
    public void A_rename_is_said_and_its_series_follow()
    {
        var next = Plan.WithProbe("ph", p => p with { Id = "ph-1", Was = "ph" }).WithPump("hypo-pump", p => p with { Id = "hypo-1", Was = "hypo-pump" });

        var change = PlanChange.Between(Plan, next);

        Assert.Equal([Reason.Of("plan.probe_renamed", "ph", "ph-1"), Reason.Of("plan.pump_renamed", "hypo-pump", "hypo-1")], change.Effects.AsEnumerable());
        Assert.Equal(
            [new("ph", "ph-1"), new("hypo-pump/state", "hypo-1/state"), new("hypo-pump/tank", "hypo-1/tank"), new("hypo-pump/strokes", "hypo-1/strokes")],
            change.Renamed.AsEnumerable());
    }

    [Fact]
    public void A_former_id_that_is_left_in_the_file_has_no_effect_the_second_time()
    {
        var renamed = Plan.WithProbe("ph", p => p with { Id = "ph-1", Was = "ph" });

        Assert.Empty(PlanChange.Between(renamed, renamed with { Probes = [.. renamed.Probes] }).Effects);
    }

    [Fact]
    public void Renaming_a_pool_or_a_flow_switch_does_not_change_what_refers_to_it()
    {
        var next = Plan.WithPool("pool", p => p with { Id = "big", Was = "pool" }).WithProbe("flow", p => p with { Id = "switch", Was = "flow" });
        next = next with
        {
            Probes = [.. next.Probes.Select(p => p with { PoolId = p.PoolId is null ? null : "big", FlowSwitchId = p.FlowSwitchId is null ? null : "switch" })],
            Pumps = [.. next.Pumps.Select(p => p with { PoolId = "big" })],
        };

        Assert.Equal([Reason.Of("plan.pool_renamed", "pool", "big"), Reason.Of("plan.probe_renamed", "flow", "switch")], Effects(next));
    }

    [Fact]
    public void A_volume_is_said_in_old_and_new_cubic_metres() =>
        Assert.Equal([Reason.Of("plan.pool_volume_changed", "pool", 425.0, 400.0)], Effects(Plan.WithPool("pool", p => p with { VolumeCubicMetres = 400 })));

    [Fact]
    public void Limits_are_said_one_by_one()
    {
        var next = Plan.WithPool("pool", p => p with { Limits = [new(Measurand.Ph, null, 7.8, "the plant's own"), new(Measurand.FreeChlorine, 1, null, "the plant's own")] })
            .WithPool("learner", p => p with { Limits = [] });

        Assert.Equal(
        [
            Reason.Of("plan.limit_changed", "pool", "ph", 7.2, 7.6, default(Fact), 7.8),
            Reason.Of("plan.limit_added", "pool", "free_chlorine", 1.0, default(Fact)),
            Reason.Of("plan.limit_removed", "learner", "ph"),
        ], Effects(next));
    }

    [Fact]
    public void How_a_limit_is_watched_is_said_apart_from_its_figures() => Assert.Equal(
        [Reason.Of("plan.limit_watch_changed", "pool", "ph")],
        Effects(Plan.WithPool("pool", p => p with { Limits = [.. p.Limits.Select(l => l with { OnDelay = TimeSpan.FromMinutes(5) })] })));

    [Fact]
    public void A_probe_whose_numbers_mean_something_else_starts_anew()
    {
        Assert.Equal(
            [Reason.Of("plan.probe_measurand_changed", "ph", "ph", "temperature"), Reason.Of("plan.probe_unit_changed", "ph", "pH", "degC"), Reason.Of("plan.probe_starts_anew", "ph")],
            Effects(Plan.WithProbe("ph", p => p with { Measurand = Measurand.Temperature })));
        Assert.Equal(
            [Reason.Of("plan.probe_unit_changed", "orp", "mV", "V"), Reason.Of("plan.probe_starts_anew", "orp")],
            Effects(Plan.WithProbe("orp", p => p with { Unit = "V" })));
        Assert.Equal(
            [Reason.Of("plan.probe_origin_changed", "ph", "raw", "panel_scaled"), Reason.Of("plan.probe_starts_anew", "ph")],
            Effects(Plan.WithProbe("ph", p => p with { Origin = SignalOrigin.PanelScaled })));
        Assert.Equal(
            [Reason.Of("plan.probe_electrode_changed", "orp", "Ag/AgCl 3 M", "calomel"), Reason.Of("plan.probe_starts_anew", "orp")],
            Effects(Plan.WithProbe("orp", p => p with { ReferenceElectrode = "calomel" })));
    }

    [Fact]
    public void A_unit_that_is_only_written_out_changes_nothing() => Assert.Empty(Effects(Plan.WithProbe("ph", p => p with { Unit = "pH" })));

    [Fact]
    public void Another_topic_alone_leaves_what_was_learned() =>
        Assert.Equal([Reason.Of("plan.probe_topic_changed", "ph", "hall/ph", "hall/new")], Effects(Plan.WithProbe("ph", p => p with { Topic = "hall/new" })));

    [Fact]
    public void An_orp_line_belongs_to_one_disinfectant() => Assert.Equal(
        [Reason.Of("plan.pool_disinfectant_changed", "pool", "chlorine", "bromine"), Reason.Of("plan.probe_learns_anew", "orp")],
        Effects(Plan.WithPool("pool", p => p with { Disinfectant = Disinfectant.Bromine })));

    [Fact]
    public void A_probe_that_sees_another_pool_learns_anew() => Assert.Equal(
        [Reason.Of("plan.probe_pool_changed", "ph", "pool", "learner"), Reason.Of("plan.probe_learns_anew", "ph")],
        Effects(Plan.WithProbe("ph", p => p with { PoolId = "learner" })));

    [Fact]
    public void Every_other_key_is_said_with_old_and_new() => Assert.Equal(
        [Reason.Of("plan.setting_changed", "ph", "every_seconds", 10.0, 30.0), Reason.Of("plan.setting_changed", "hypo-pump", "tank_topic", default(Fact), "hall/tank")],
        Effects(Plan.WithProbe("ph", p => p with { Every = TimeSpan.FromSeconds(30) }).WithPump("hypo-pump", p => p with { TankTopic = "hall/tank" })));

    [Fact]
    public void What_a_pump_delivers_is_said_with_old_and_new() => Assert.Equal(
        [
            Reason.Of("plan.setting_changed", "hypo-pump", "litres_per_hour", default(Fact), 7.0), Reason.Of("plan.setting_changed", "hypo-pump", "strokes_topic", default(Fact), "hall/strokes"),
            Reason.Of("plan.setting_changed", "hypo-pump", "strokes_are", "total", "last_minute"), Reason.Of("plan.setting_changed", "hypo-pump", "pulses_told", "false", "true"), Reason.Of("plan.setting_changed", "hypo-pump", "millilitres_per_stroke", default(Fact), 2.5),
            Reason.Of("plan.setting_changed", "hypo-pump", "daily_limit_litres", default(Fact), 60.0),
        ],
        Effects(Plan.WithPump("hypo-pump", p => p with { LitresPerHour = 7, StrokesTopic = "hall/strokes", StrokesAre = StrokeCount.LastMinute, PulsesTold = true, MillilitresPerStroke = 2.5, DailyLimitLitres = 60 })));

    [Fact]
    public void A_product_of_another_strength_is_said_for_its_pump()
    {
        var before = Plan.WithPump("hypo-pump", p => p with { Product = Hypo(12) });

        Assert.Empty(PlanChange.Between(Plan, before).Effects);
        Assert.Equal(Reason.Of("plan.pump_strength_changed", "hypo-pump", before.Pumps.Single(p => p.Id == "hypo-pump").ProductId), Assert.Single(PlanChange.Between(before, Plan.WithPump("hypo-pump", p => p with { Product = Hypo(14) })).Effects));
    }

    private static ProductPlan Hypo(double percent) => new("hypo", "hypo", ProductKind.SodiumHypochlorite, percent);

    private static Reason[] Effects(CircuitPlan next) => [.. PlanChange.Between(Plan, next).Effects];
}
