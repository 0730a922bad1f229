using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The reagents of a plant as they stand now.</summary>
internal static class ReagentViews
{
    public static IReadOnlyList<ReagentView> Of(CircuitState state, Instant now) => [.. state.Reagents.Select((r, i) => One(state.Plan.Reagents[i], r, state.Plan.TimeZone, now))];

    private static ReagentView One(ReagentPlan plan, ReagentState state, string zone, Instant now)
    {
        var lot = state.InUse(now);
        var until = lot is null ? Instant.Never : ReagentWatch.GoodUntil(plan, lot, zone);
        return new(
            plan.Id, plan.Name, plan.Tests, plan.Use, plan.LifeAfterOpening?.TotalDays, lot is null ? ReagentWord.NotNoted : WordOf(until, now), lot?.Number, lot?.LastDay, lot?.OpenedAt ?? Instant.Never,
            lot?.NotedBy, until, ReagentWatch.OutOfDate(plan, state, zone, now) is { } why ? Reader.Words.Say(why) : null);
    }

    private static ReagentWord WordOf(Instant until, Instant now) =>
        now >= until ? ReagentWord.OutOfDate : until - now <= ReagentWatch.OrderBefore ? ReagentWord.Order : ReagentWord.InDate;
}
