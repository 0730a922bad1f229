using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>Combined chlorine of a check, or of the pool's newest pair of free and total from one sample.</summary>
internal static class CombinedViews
{
    public static CombinedView? Of(PoolState pool, PoolPlan plan, Wording words)
    {
        if (!pool.Manual.TryGetValue(Measurand.FreeChlorine, out var free) || !pool.Manual.TryGetValue(Measurand.TotalChlorine, out var total)) return null;
        // Two samples are no pair: the difference would mix the time between them into the answer.
        if (free.CheckId != total.CheckId) return null;
        // Bromine combines too, but disinfects all the same: the difference means nothing there.
        if (plan.Disinfectant == Disinfectant.Bromine) return new CombinedView(null, 0, free.SampledAt, words.Say(Reason.Of("combined.bromine")));
        var pair = new ManualCheck { Id = free.CheckId, PoolId = pool.Id, SampledAt = free.SampledAt, EnteredAt = free.SampledAt, Who = "", Results = [free.Result, total.Result] };
        var view = Of(pair, words) is { } known ? known with { Breakpoint = Breakpoint(pair, words) } : null;
        // A doubt of the test weighs more than what else there is to say, unless the pair is rejected anyway.
        return view is { Value: not null } && (free.Suspect || total.Suspect) ? view with { Remark = words.Say(Reason.Of("combined.from_doubted_test")), Breakpoint = [] } : view;
    }

    private static IReadOnlyList<Said> Breakpoint(ManualCheck pair, Wording words) =>
        CombinedOfCheck.TryOf(pair, out var combined) && combined.IsToldFromZero && pair.Result(Measurand.FreeChlorine) is { } free
            ? words.Say(Core.Chemistry.Breakpoint.Of(combined, FreeChlorine.From(free.Value))!.Says)
            : [];

    public static CombinedView? Of(ManualCheck check, Wording words)
    {
        if (!CombinedOfCheck.TryOf(check, out var combined)) return null;
        var remark = combined.Saying() is { } reason ? words.Say(reason) : null;
        return combined.IsKnown
            ? new CombinedView(combined.Value.MilligramsPerLitre, 2 * combined.StandardUncertainty, check.SampledAt, remark)
            : new CombinedView(null, 2 * combined.StandardUncertainty, check.SampledAt, remark);
    }
}
