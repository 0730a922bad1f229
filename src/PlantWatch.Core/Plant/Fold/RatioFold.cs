using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Probes;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Plans.Packs;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>Limits on what two tests make together: combined chlorine, its part of free or total, and cyanurate to free chlorine.</summary>
internal static class RatioFold
{
    public static void Judge(Draft draft, int index, ManualCheck check, List<ManualValue> fresh, IReadOnlyList<Judgement> judgements, Instant now)
    {
        // Combined bromine disinfects as free bromine does: there is nothing to judge.
        if (draft.Plan.Pools[index].Disinfectant != Disinfectant.Bromine) Combined(draft, index, check, fresh, judgements, now);
        if (fresh.FirstOrDefault(v => v.Result.Measurand == Measurand.FreeChlorine) is { } free) CyanuratePerFree(draft, index, free, judgements, now);
    }

    // Of the newest pair only, and a doubted one may not clear it either.
    private static void Combined(Draft draft, int index, ManualCheck check, List<ManualValue> fresh, IReadOnlyList<Judgement> judgements, Instant now)
    {
        var pair = fresh.Where(v => v.Result.Measurand is Measurand.FreeChlorine or Measurand.TotalChlorine).ToArray();
        if (pair.Length < 2 || !CombinedOfCheck.TryOf(check, out var combined) || !combined.IsKnown) return;
        var (plan, value) = (draft.Plan.Pools[index], combined.Value.MilligramsPerLitre);
        var mayClear = !pair.Any(v => v.Suspect || DoubtFold.IsDoubted(judgements, v.Result.Measurand));
        foreach (var bound in draft.Pools[index].Limits.Bounds)
        {
            if (bound.Quantity == PackQuantity.CombinedChlorine) Concentration(draft, plan, bound, value, new(value, combined.StandardUncertainty), mayClear, now);
            else if (bound.Quantity is PackQuantity.CombinedPerFree or PackQuantity.CombinedPerTotal && PartOf(bound, check, value) is { } part) Part(draft, plan, bound, part, mayClear, now);
        }
    }

    private static void Concentration(Draft draft, PoolPlan plan, LimitBound bound, double value, Estimate tested, bool mayClear, Instant now) => PoolFold.Look(
        draft, bound.Grade == RowGrade.Closure ? RuleBook.TestOutsideClosure : RuleBook.TestOutsideLimit, $"{plan.Id}/{Measurand.CombinedChlorine.Key()}", value > bound.High || value < bound.Low, mayClear, now,
        () => TestAgainst.Limit(plan, Measurand.CombinedChlorine, value, bound, value < bound.Low, tested));

    private static double? PartOf(LimitBound bound, ManualCheck check, double combined) =>
        check.Result(bound.Quantity == PackQuantity.CombinedPerFree ? Measurand.FreeChlorine : Measurand.TotalChlorine) is { Value: > 0 and var whole } ? combined / whole : null;

    private static void Part(Draft draft, PoolPlan plan, LimitBound bound, double part, bool mayClear, Instant now) => PoolFold.Look(
        draft, bound.Grade == RowGrade.Closure ? RuleBook.TestOutsideClosure : RuleBook.CombinedPart, $"{plan.Id}/{bound.Quantity.Key()}", part > bound.High, mayClear, now,
        () => Reason.Of("test.combined_part", plan.Name, part, bound.High ?? 0, bound.Quantity == PackQuantity.CombinedPerFree ? Measurand.FreeChlorine.Key() : Measurand.TotalChlorine.Key(), bound.HighFrom));

    // Cyanurate is tested once a month: its newest test stands beside the chlorine of today. Nil chlorine is beyond every ratio.
    private static void CyanuratePerFree(Draft draft, int index, ManualValue free, IReadOnlyList<Judgement> judgements, Instant now)
    {
        if (!draft.Pools[index].Manual.TryGetValue(Measurand.CyanuricAcid, out var cyanurate) || cyanurate.Suspect || free.Result.Censoring == Censoring.Above) return;
        var plan = draft.Plan.Pools[index];
        foreach (var bound in draft.Pools[index].Limits.Bounds.Where(b => b.Quantity == PackQuantity.CyanuratePerFree && b.High is not null))
        {
            var outside = cyanurate.Result.Value > bound.High * free.Result.Value;
            PoolFold.Look(
                draft, bound.Grade == RowGrade.Closure ? RuleBook.TestOutsideClosure : RuleBook.TestOutsideLimit, $"{plan.Id}/{bound.Quantity.Key()}", outside,
                !free.Suspect && !DoubtFold.IsDoubted(judgements, Measurand.FreeChlorine), now,
                () => Reason.Of("test.cyanurate_to_free", plan.Name, cyanurate.Result.Value, free.Result.Value, bound.High ?? 0, bound.HighFrom));
        }
    }
}
