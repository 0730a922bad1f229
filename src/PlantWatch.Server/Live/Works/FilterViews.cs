using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The circulation and the filters of a circuit as they are now.</summary>
internal static class FilterViews
{
    // What is a tenth over the design is no longer noise of a meter.
    private const double OverDesign = 1.1;

    public static FiltersView Of(CircuitState state, Instant now, UnitSystem units)
    {
        var flow = Newest(state, p => p.Measurand == Measurand.CirculationFlow);
        var turnover = Turnover(state, now);
        return new(
            state.Plan.Id, state.Plan.Name, flow?.Value, flow?.MeasuredAt ?? Instant.Never, state.Plan.CirculationLow, [.. state.Filters.Select(f => One(state, f, now))],
            turnover, Reader.Words.In(units).Say(Says(state, turnover, now)));
    }

    private static TurnoverView Turnover(CircuitState state, Instant now)
    {
        var (mean, design) = (state.Flow.MeanOf(now), state.Plan.DesignFlow);
        var rate = mean is { } flow && state.Plan.FilterArea is { } area ? FilterRate.Of(flow, area).OrNull : null;
        return new(mean, mean is { } m ? Core.Chemistry.Turnover.Hours(state.Plan.PoolCubicMetres, m).OrNull : null, design, state.Plan.TurnoverHours, mean < design * TurnoverShortfall.Enough, rate, FilterRate.Kind(rate ?? 0));
    }

    private static IEnumerable<Reason> Says(CircuitState state, TurnoverView turnover, Instant now)
    {
        if (turnover is { RateKind: FilterRateKind.TooHigh, Rate: { } fast }) yield return Reason.Of("filter_rate.too_high", fast);
        else if (turnover is { Rate: { } rate, DesignCubicMetresPerHour: { } design } && state.Plan.FilterArea is { } area && rate > OverDesign * design / area) yield return Reason.Of("filter_rate.above_design", rate, design / area);
        if (turnover is not { FallsShort: true, MeanCubicMetresPerHour: { } mean }) yield break;
        foreach (var sign in TurnoverShortfall.Says(TurnoverShortfall.Signs(state.Plan, state.Filters, i => state.Probes[i].Last, mean, now))) yield return sign;
    }

    public static FilterView One(CircuitState state, FilterState filter, Instant now)
    {
        var plan = state.Plan.Filters.First(f => f.Id == filter.Id);
        var read = Newest(state, p => p.FilterId == filter.Id);
        var due = IsUp(state, RuleBook.FilterPressureRisen, filter.Id) || IsUp(state, RuleBook.BackwashOverdue, filter.Id);
        return new(
            filter.Id, plan.Name, read?.Value, read?.MeasuredAt ?? Instant.Never, filter.CleanKilopascals ?? plan.CleanKilopascals, plan.BackwashRise, filter.WashedAt, filter.WashedBy,
            plan.BackwashEvery?.TotalDays, due, filter.Backwash.IsOpen && filter.Backwash.Holds(now) ? Backwash(filter.Backwash) : null, plan.Kind,
            plan.WashCubicMetres, filter.WashCubicMetres)
        {
            AgainNeedsWhy = BackwashQuiet.NeedsWhy(filter, IsUp(state, RuleBook.FilterPressureRisen, filter.Id), now),
        };
    }

    private static BackwashView Backwash(BackwashWindow open) => new(open.Id, open.By ?? "", open.Since, open.Until, open.QuietUntil);

    private static LastReading? Newest(CircuitState state, Func<ProbePlan, bool> which)
    {
        for (var i = 0; i < state.Probes.Length; i++)
            if (which(state.Plan.Probes[i]) && state.Probes[i].Last is { Quality: not Quality.NotReceived } last) return last;
        return null;
    }

    private static bool IsUp(CircuitState state, Rule rule, string filter) => state.Alarms.GetValueOrDefault(rule.KeyFor(filter)) is { Active: true };
}
