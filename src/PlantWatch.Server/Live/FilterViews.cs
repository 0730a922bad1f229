using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;

namespace PlantWatch.Server.Live;

/// <summary>The circulation and the filters of a circuit as they are now.</summary>
internal static class FilterViews
{
    public static FiltersView Of(CircuitState state, Instant now)
    {
        var flow = Newest(state, p => p.Measurand == Measurand.CirculationFlow);
        return new(state.Plan.Id, state.Plan.Name, flow?.Value, flow?.MeasuredAt ?? Instant.Never, state.Plan.CirculationLow, [.. state.Filters.Select(f => One(state, f, now))]);
    }

    public static FilterView One(CircuitState state, FilterState filter, Instant now)
    {
        var plan = state.Plan.Filters.First(f => f.Id == filter.Id);
        var read = Newest(state, p => p.FilterId == filter.Id);
        var due = IsUp(state, RuleBook.FilterPressureRisen, filter.Id) || IsUp(state, RuleBook.BackwashOverdue, filter.Id);
        return new(
            filter.Id, plan.Name, read?.Value, read?.MeasuredAt ?? Instant.Never, filter.CleanKilopascals ?? plan.CleanKilopascals, plan.BackwashRise, filter.WashedAt, filter.WashedBy,
            plan.BackwashEvery?.TotalDays, due, filter.Backwash.IsOpen && filter.Backwash.Holds(now) ? Backwash(filter.Backwash) : null);
    }

    private static BackwashView Backwash(BackwashWindow open) => new(open.Id, open.By ?? "", open.Since, open.Until);

    private static LastReading? Newest(CircuitState state, Func<ProbePlan, bool> which)
    {
        for (var i = 0; i < state.Probes.Length; i++)
            if (which(state.Plan.Probes[i]) && state.Probes[i].Last is { Quality: not Quality.NotReceived } last) return last;
        return null;
    }

    private static bool IsUp(CircuitState state, Rule rule, string filter) => state.Alarms.GetValueOrDefault(rule.KeyFor(filter)) is { Active: true };
}
