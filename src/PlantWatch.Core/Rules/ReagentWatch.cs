using System.Collections.Immutable;
using System.Globalization;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Rules;

/// <summary>Whether the reagents in use are in date. One that was never noted is not known to be out of date: nothing is said against its tests.</summary>
public static class ReagentWatch
{
    /// <summary>So long before its end it is said that another is needed: an order takes a week or two (common practice).</summary>
    public static TimeSpan OrderBefore { get; } = TimeSpan.FromDays(14);

    /// <summary>The first moment at which a lot is no longer in date: the end of its last day on the site's clock, or of its life since it was opened, whichever comes first.</summary>
    public static Instant GoodUntil(ReagentPlan plan, ReagentLot lot, string timeZone)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(lot);
        var printed = SiteClock.TryOf(timeZone, out var clock) ? clock.At(lot.LastDay.AddDays(1), TimeOnly.MinValue) : Instant.FromUtc(lot.LastDay.Year, lot.LastDay.Month, lot.LastDay.Day) + TimeSpan.FromDays(1);
        return plan.LifeAfterOpening is { } life ? Instant.Earlier(printed, lot.OpenedAt + life) : printed;
    }

    /// <summary>Why the lot in use at an instant is out of date; null when it is in date, or none is known.</summary>
    public static Reason? OutOfDate(ReagentPlan plan, ReagentState state, string timeZone, Instant at)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(state);
        if (state.InUse(at) is not { } lot || at < GoodUntil(plan, lot, timeZone)) return null;
        var printed = at >= GoodUntil(plan with { LifeAfterOpening = null }, lot, timeZone);
        return printed
            ? Reason.Of("reagent.out_of_date", plan.Name, lot.Number, lot.LastDay.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))
            : Reason.Of("reagent.open_too_long", plan.Name, lot.Number, (at - lot.OpenedAt).TotalDays, plan.LifeAfterOpening!.Value.TotalDays);
    }

    /// <summary>What the reagents say against a result: any one of them that is out of date when the sample was taken. Null when nothing.</summary>
    public static Reason? Against(CircuitPlan plan, ImmutableArray<ReagentState> states, TestResult result, Instant sampledAt)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(result);
        foreach (var reagent in plan.Reagents)
            if (Concerns(reagent, result) && states.FirstOrDefault(s => s.Id == reagent.Id) is { } state && OutOfDate(reagent, state, plan.TimeZone, sampledAt) is { } why) return why;
        return null;
    }

    /// <summary>True when a result is made with a reagent. A method that is not stated may be any.</summary>
    public static bool Concerns(ReagentPlan reagent, TestResult result)
    {
        ArgumentNullException.ThrowIfNull(reagent);
        ArgumentNullException.ThrowIfNull(result);
        if (reagent.Use == ReagentUse.Calibration || result.Method == TestMethod.Meter || !reagent.Tests.Contains(result.Measurand)) return false;
        return result.Method == TestMethod.Unknown || reagent.Use switch
        {
            ReagentUse.Photometer => result.Method == TestMethod.Photometer,
            ReagentUse.Comparator => result.Method == TestMethod.Comparator,
            ReagentUse.TabletCount => result.Method == TestMethod.TabletCount,
            _ => true,
        };
    }
}
