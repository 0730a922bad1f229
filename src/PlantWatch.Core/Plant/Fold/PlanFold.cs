namespace PlantWatch.Core.Plant.Fold;

/// <summary>The plant file came into force, for the first time or again: what is known is carried over, and each effect is stated.</summary>
internal static class PlanFold
{
    public static Outcome Load(Draft draft, PlanLoaded said)
    {
        if (PlanChange.IsSame(draft.Plan, said.Plan) && draft.Probes.Length == said.Plan.Probes.Length && draft.Pools.Length == said.Plan.Pools.Length)
            return Outcome.AlreadyDone.Instance;
        var change = PlanChange.Between(draft.Plan, said.Plan);
        draft.Adopt(PlanChange.Carry(draft.Seal(), said.Plan), said.At);
        draft.Renamed.AddRange(change.Renamed);
        draft.Write(said.At, said.At, said.Plan.Id, new PlanEntry(change.Effects));
        return Outcome.Done.Instance;
    }
}
