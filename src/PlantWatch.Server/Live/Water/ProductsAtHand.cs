using PlantWatch.Core.Plans;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Loop;

namespace PlantWatch.Server.Live;

/// <summary>The plant with its products as they were delivered: doses and plans are worked out with what is at hand.</summary>
internal static class ProductsAtHand
{
    /// <summary>The plan in force, strengths by the newest deliveries; null before the first.</summary>
    public static PlantPlan? PlanAtHand(this PlantHost host)
    {
        if (host.Plan is not { } plan) return null;
        var states = host.Circuits.Select(w => w.State).ToArray();
        return plan with { Products = AsDelivered.Of(plan.Products, StockViews.Tanks(states), [.. states.SelectMany(s => s.Stores)]) };
    }
}
