using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What has to be said of an imagined water, as reasons for people.</summary>
public static class ImaginedReasons
{
    /// <summary>What has to be said of the water after the doses.</summary>
    public static IEnumerable<Reason> SayingAfterDose(EquilibriumResult after)
    {
        if (after.Failure == EquilibriumFailure.NegativeAmount) return [Reason.Of("what_if.more_than_there_is")];
        if (!after.IsKnown) return [Reason.Of("what_if.no_answer_after_dose")];
        if (!Equilibrium.ValidPh.Contains(after.Value.Ph)) return [Reason.Of("what_if.dose_leaves_range", Equilibrium.ValidPh.Low, Equilibrium.ValidPh.High)];
        if (after.Value.DissolvedSolids > Equilibrium.MostSolids) return [Reason.Of("water.too_salty", Equilibrium.MostSolids)];
        return after.Value.TotalAlkalinity <= 0 ? [Reason.Of("what_if.no_alkalinity_left")] : [];
    }
}
