namespace PlantWatch.Core.Plant.Fold;

/// <summary>The plant file came into force, for the first time or again: what is known is carried over, and each effect is stated.</summary>
internal static class PlanFold
{
    public static Outcome Load(Draft draft, PlanLoaded said)
    {
        var before = draft.Seal();
        if (before.IsLoaded && PlanChange.IsSame(draft.Plan, said.Plan)) return Outcome.AlreadyDone.Instance;
        var change = PlanChange.Between(draft.Plan, said.Plan);
        draft.Adopt(PlanChange.Carry(before, said.Plan), said.At);
        OperationFold.Arrive(draft, before, said.Arrival, said.At);
        InstrumentFold.Arrive(draft, said.Arrival);
        InForceFold.All(draft, said.At);
        if (!before.Plan.Stops.AsSpan().SequenceEqual(said.Plan.Stops.AsSpan())) PoolFold.AgainstNewStops(draft, said.At);
        foreach (var alarm in draft.Alarms.All.Where(a => !Watched.Is(said.Plan, a.Rule, a.Subject)).ToArray()) draft.Alarms.Retire(alarm.Key, said.At);
        draft.Alarms.Regard(said.At);
        for (var i = 0; i < draft.Probes.Length; i++)
            if (!draft.Probes[i].ExpectedSince.IsSet) draft.Probes[i] = draft.Probes[i] with { ExpectedSince = said.At };
        draft.Filters = [.. draft.Filters.Select(f => f.Since.IsSet ? f : f with { Since = said.At })];
        TaskFold.Loaded(draft, said.At);
        IncidentFold.AfterPlan(draft, before, said.Arrival, said.At);
        draft.Renamed.AddRange(change.Renamed);
        draft.Write(said.At, said.At, said.Plan.Id, new PlanEntry([.. change.Effects, .. said.Moves]) { By = said.By, Why = said.Why });
        return Outcome.Done.Instance;
    }
}
