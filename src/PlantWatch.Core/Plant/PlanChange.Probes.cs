using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Plant;

public sealed partial record PlanChange
{
    private static void Probe((ProbePlan? Old, ProbePlan? Next) pair, PlanLineage lineage, ImmutableArray<Reason>.Builder effects)
    {
        switch (pair)
        {
            case (null, { } added):
                effects.Add(Reason.Of("plan.probe_added", added.Id, added.Name));
                break;
            case ({ } removed, null):
                effects.Add(Reason.Of("plan.probe_removed", removed.Id, removed.Name));
                break;
            case ({ } old, { } next):
                if (old.Id != next.Id) effects.Add(Reason.Of("plan.probe_renamed", old.Id, next.Id));
                Meaning(old, next, lineage, effects);
                if ((old.Topic, old.RecordName, old.Format) != (next.Topic, next.RecordName, next.Format))
                    effects.Add(Reason.Of("plan.probe_topic_changed", next.Id, old.Topic, next.Topic));
                Settings(old, next, lineage, effects);
                break;
        }
    }

    private static void Meaning(ProbePlan old, ProbePlan next, PlanLineage lineage, ImmutableArray<Reason>.Builder effects)
    {
        if (old.Measurand != next.Measurand)
            effects.Add(Reason.Of("plan.probe_measurand_changed", next.Id, Word(old.Measurand), Word(next.Measurand)));
        if (UnitOf(old) != UnitOf(next)) effects.Add(Reason.Of("plan.probe_unit_changed", next.Id, UnitOf(old), UnitOf(next)));
        if (old.Origin != next.Origin) effects.Add(Reason.Of("plan.probe_origin_changed", next.Id, Word(old.Origin), Word(next.Origin)));
        if (old.ReferenceElectrode != next.ReferenceElectrode)
            effects.Add(Reason.Of("plan.probe_electrode_changed", next.Id, Name(old.ReferenceElectrode), Name(next.ReferenceElectrode)));
        if (SeesOtherWater(old, next, lineage)) effects.Add(Reason.Of("plan.probe_pool_changed", next.Id, Name(old.PoolId), Name(next.PoolId)));
        if (MeansSomethingElse(old, next)) effects.Add(Reason.Of("plan.probe_starts_anew", next.Id));
        else if (LearnsAnew(old, next, lineage)) effects.Add(Reason.Of("plan.probe_learns_anew", next.Id));
    }

    private static void Settings(ProbePlan old, ProbePlan next, PlanLineage lineage, ImmutableArray<Reason>.Builder effects)
    {
        Setting(next.Id, "name", old.Name, next.Name, effects);
        if (old.Range != next.Range)
            effects.Add(Reason.Of("plan.probe_range_changed", next.Id, old.Range.Low, old.Range.High, next.Range.Low, next.Range.High));
        Setting(next.Id, "every_seconds", old.Every.TotalSeconds, next.Every.TotalSeconds, effects);
        Setting(next.Id, "sample_delay_seconds", old.SampleDelay.TotalSeconds, next.SampleDelay.TotalSeconds, effects);
        Setting(next.Id, "filter_lag_seconds", old.FilterLag.TotalSeconds, next.FilterLag.TotalSeconds, effects);
        Setting(next.Id, "dosing_cycle_seconds", old.DosingCycle.TotalSeconds, next.DosingCycle.TotalSeconds, effects);
        Setting(next.Id, "calibration_every_days", old.Care.Every.TotalDays, next.Care.Every.TotalDays, effects);
        if (old.Care.SlopePercent != next.Care.SlopePercent)
            effects.Add(Reason.Of("plan.probe_slope_limits_changed", next.Id, old.Care.SlopePercent.Low, old.Care.SlopePercent.High, next.Care.SlopePercent.Low, next.Care.SlopePercent.High));
        Setting(next.Id, "calibration_offset_mv", old.Care.OffsetMillivolts, next.Care.OffsetMillivolts, effects);
        Setting(next.Id, "calibration_orp_mv", old.Care.OrpMillivolts, next.Care.OrpMillivolts, effects);
        if (old.Care.SecondPerson != next.Care.SecondPerson)
            effects.Add(Reason.Of(next.Care.SecondPerson ? "plan.probe_second_person" : "plan.probe_no_second_person", next.Id));
        Setting(next.Id, "filter", Name(old.FilterId), Name(next.FilterId), effects);
        Setting(next.Id, "flow_switch", Name(lineage.ProbeNow(old.FlowSwitchId)), Name(next.FlowSwitchId), effects);
    }

    /// <summary>Its numbers mean something else than before: neither what was learned from them nor a calibration made for them can hold.</summary>
    private static bool MeansSomethingElse(ProbePlan old, ProbePlan next) =>
        old.Measurand != next.Measurand || UnitOf(old) != UnitOf(next) || old.Origin != next.Origin || old.ReferenceElectrode != next.ReferenceElectrode;

    /// <summary>The instrument is the same, its water is not: an ORP line, above all, belongs to one pool and one disinfectant.</summary>
    private static bool LearnsAnew(ProbePlan old, ProbePlan next, PlanLineage lineage) =>
        SeesOtherWater(old, next, lineage) || (next.Measurand == Measurand.Orp && DisinfectantChanged(next.PoolId, lineage));

    private static bool SeesOtherWater(ProbePlan old, ProbePlan next, PlanLineage lineage) =>
        lineage.PoolNow(old.PoolId) != next.PoolId;

    // A probe in the mixed return sees every pool of the circuit.
    private static bool DisinfectantChanged(string? poolId, PlanLineage lineage) => lineage.Pools.Any(pair =>
        pair is ({ } old, { } next) && (poolId is null || next.Id == poolId) && old.Disinfectant != next.Disinfectant);

    private static string UnitOf(ProbePlan probe) => probe.Unit ?? probe.Measurand.Unit();
}
