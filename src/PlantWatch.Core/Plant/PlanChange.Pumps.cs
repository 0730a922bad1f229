using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    private static void Pump((PumpPlan? Old, PumpPlan? Next) pair, PlanLineage lineage, ImmutableArray<Reason>.Builder effects)
    {
        switch (pair)
        {
            case (null, { } added):
                effects.Add(Reason.Of("plan.pump_added", added.Id, added.Name));
                break;
            case ({ } removed, null):
                effects.Add(Reason.Of("plan.pump_removed", removed.Id, removed.Name));
                break;
            case ({ } old, { } next):
                Pump(old, next, lineage, effects);
                break;
        }
    }

    private static void Pump(PumpPlan old, PumpPlan next, PlanLineage lineage, ImmutableArray<Reason>.Builder effects)
    {
        if (old.Id != next.Id) effects.Add(Reason.Of("plan.pump_renamed", old.Id, next.Id));
        if (old.ProductId != next.ProductId) effects.Add(Reason.Of("plan.pump_product_changed", next.Id, old.ProductId, next.ProductId));
        // A plan from before this was written down did not dose something else.
        if (old.ProductId == next.ProductId && old.Doses != ProductKind.Unknown) Setting(next.Id, "product", old.Doses.ToString(), next.Doses.ToString(), effects);
        Setting(next.Id, "follows", Name(lineage.ProbeNow(old.FollowsProbeId)), Name(next.FollowsProbeId), effects);
        Setting(next.Id, "name", old.Name, next.Name, effects);
        Setting(next.Id, "pool", Name(lineage.PoolNow(old.PoolId)), Name(next.PoolId), effects);
        Setting(next.Id, "state_topic", old.StateTopic, next.StateTopic, effects);
        Setting(next.Id, "tank_topic", Name(old.TankTopic), Name(next.TankTopic), effects);
        Setting(next.Id, "tank_litres", Figure(old.TankLitres), Figure(next.TankLitres), effects);
        Setting(next.Id, "tank_foot_percent", old.TankFootPercent, next.TankFootPercent, effects);
        Setting(next.Id, "tank_low_percent", old.TankLowPercent, next.TankLowPercent, effects);
        Setting(next.Id, "litres_per_hour", Figure(old.LitresPerHour), Figure(next.LitresPerHour), effects);
        Setting(next.Id, "strokes_topic", Name(old.StrokesTopic), Name(next.StrokesTopic), effects);
        Setting(next.Id, "strokes_are", Word(old.StrokesAre), Word(next.StrokesAre), effects);
        Setting(next.Id, "pulses_told", old.PulsesTold ? "true" : "false", next.PulsesTold ? "true" : "false", effects);
        Setting(next.Id, "millilitres_per_stroke", Figure(old.MillilitresPerStroke), Figure(next.MillilitresPerStroke), effects);
        Setting(next.Id, "daily_limit_litres", Figure(old.DailyLimitLitres), Figure(next.DailyLimitLitres), effects);
        // A plan from before this was written down did not dose it at another strength.
        if (old.ProductId == next.ProductId && old.Product is { } was && next.Product is { } now && was != now) effects.Add(Reason.Of("plan.pump_strength_changed", next.Id, next.ProductId));
    }
}
