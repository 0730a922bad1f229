using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant;

/// <summary>Whether the plant file still gives a rule something to look at.</summary>
public static class Watched
{
    private static readonly string[] Supervised = [RuleBook.NothingArrives.Number, RuleBook.ComesUnasked.Number, RuleBook.DosesTooMuch.Number, RuleBook.DoesTooLittle.Number];

    /// <summary>An alarm that nothing will ever look at again would stand for ever: a duty, a tank level is gone from the plant file.</summary>
    public static bool Is(CircuitPlan plan, string rule, string subject)
    {
        ArgumentNullException.ThrowIfNull(plan);
        if (rule == RuleBook.TankLow.Number) return plan.Pumps.Any(p => p.Id == subject && p.TankTopic is not null);
        if (rule == RuleBook.PumpsFollowWrongValue.Number) return plan.Pumps.Any(p => p.Id == subject && PumpFollows.Of(plan, p) >= 0);
        if (rule == RuleBook.DosesWithoutFlow.Number) return plan.Probes.Any(p => p.Measurand is Measurand.SampleFlow or Measurand.CirculationFlow);
        if (rule == RuleBook.RestartedUnsafe.Number) return plan.Probes.Any(p => p.Measurand == Measurand.CirculationFlow);
        if (rule == RuleBook.DosesTooMuch.Number && plan.Pumps.Any(p => p.Id == subject && p.DailyLimitLitres is not null)) return true;
        if (rule == RuleBook.ProductsSwapped.Number) return DosedWater.Of(plan).Any(w => plan.Pumps[w.Acid.Index].Id == subject);
        if (Supervised.Contains(rule)) return DosedWater.Of(plan).Any(w => plan.Pumps[w.Acid.Index].Id == subject || plan.Pumps[w.Chlorine.Index].Id == subject);
        if (rule == RuleBook.FilterPressureRisen.Number) return plan.Filters.Any(f => f.Id == subject) && plan.Probes.Any(p => p.FilterId == subject);
        if (rule == RuleBook.BackwashOverdue.Number) return plan.Filters.Any(f => f.Id == subject && f.BackwashEvery is not null);
        if (rule == RuleBook.ReagentOutOfDate.Number) return plan.Reagents.Any(r => r.Id == subject && r.IsWatchedHere);
        if (rule == RuleBook.WrongProductInTank.Number) return plan.Pumps.Any(p => p.Id == subject);
        if (rule == RuleBook.TankFilledByNobody.Number) return plan.Pumps.Any(p => p.Id == subject && p.TankTopic is not null);
        if (rule == RuleBook.StockRunsOut.Number) return plan.Products.Any(p => p.Id == subject && p.DeliveryDays is not null);
        if (rule == RuleBook.CirculationLow.Number) return plan.CirculationLow is not null;
        if (rule == RuleBook.TurnoverShort.Number) return plan.DesignFlow is not null;
        if (rule == RuleBook.ChannelFails.Number) return plan.Telling.Channels.Any(c => c.Id == subject);
        return rule != RuleBook.CheckOverdue.Number || plan.Pools.Any(p => p.Id == subject && !p.Duties.IsEmpty);
    }
}
