using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    private static void Pool((PoolPlan? Old, PoolPlan? Next) pair, ImmutableArray<Reason>.Builder effects)
    {
        switch (pair)
        {
            case (null, { } added):
                effects.Add(Reason.Of("plan.pool_added", added.Id, added.Name));
                break;
            case ({ } removed, null):
                effects.Add(Reason.Of("plan.pool_removed", removed.Id, removed.Name));
                break;
            case ({ } old, { } next):
                Pool(old, next, effects);
                break;
        }
    }

    private static void Pool(PoolPlan old, PoolPlan next, ImmutableArray<Reason>.Builder effects)
    {
        if (old.Id != next.Id) effects.Add(Reason.Of("plan.pool_renamed", old.Id, next.Id));
        if (old.VolumeCubicMetres != next.VolumeCubicMetres)
            effects.Add(Reason.Of("plan.pool_volume_changed", next.Id, old.VolumeCubicMetres, next.VolumeCubicMetres));
        Setting(next.Id, "volume_confirmed", Confirmed(old.VolumeConfirmed), Confirmed(next.VolumeConfirmed), effects);
        if (old.Disinfectant != next.Disinfectant)
            effects.Add(Reason.Of("plan.pool_disinfectant_changed", next.Id, Word(old.Disinfectant), Word(next.Disinfectant)));
        Setting(next.Id, "name", old.Name, next.Name, effects);
        Setting(next.Id, "kind", Word(old.Kind), Word(next.Kind), effects);
        Setting(next.Id, "setting", Word(old.Setting), Word(next.Setting), effects);
        if (!old.Secondary.AsSpan().SequenceEqual(next.Secondary.AsSpan())) effects.Add(Reason.Of("plan.pool_secondary_changed", next.Id));
        Limits(old, next, effects);
        if (old.Laboratory != next.Laboratory) effects.Add(Reason.Of("plan.laboratory_changed", next.Id));
        if (!SameDuties(old, next)) effects.Add(Reason.Of("plan.checks_changed", next.Id));
    }

    private static void Limits(PoolPlan old, PoolPlan next, ImmutableArray<Reason>.Builder effects)
    {
        foreach (var limit in next.Limits)
        {
            var before = old.Limits.FirstOrDefault(o => o.Measurand == limit.Measurand);
            if (before is null)
                effects.Add(Reason.Of("plan.limit_added", next.Id, Word(limit.Measurand), Figure(limit.Low), Figure(limit.High)));
            else if (before != limit && before with { Deadband = limit.Deadband, OnDelay = limit.OnDelay, OffDelay = limit.OffDelay } == limit)
                effects.Add(Reason.Of("plan.limit_watch_changed", next.Id, Word(limit.Measurand)));
            else if (before != limit)
                effects.Add(Reason.Of("plan.limit_changed", next.Id, Word(limit.Measurand), Figure(before.Low), Figure(before.High), Figure(limit.Low), Figure(limit.High)));
        }

        foreach (var gone in old.Limits)
            if (next.Limits.All(limit => limit.Measurand != gone.Measurand))
                effects.Add(Reason.Of("plan.limit_removed", next.Id, Word(gone.Measurand)));
    }

    private static bool SameDuties(PoolPlan old, PoolPlan next) =>
        old.Duties.Length == next.Duties.Length
        && old.Duties.Zip(next.Duties).All(pair => SameTests(pair.First, pair.Second) && pair.First.At.AsSpan().SequenceEqual(pair.Second.At.AsSpan()));

    private static bool SameTests(CheckDuty a, CheckDuty b) => a.What.Length == b.What.Length && a.What.All(b.What.Contains);
}
