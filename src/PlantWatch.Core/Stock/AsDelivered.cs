using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Stock;

/// <summary>A product as it stands at the plant by its newest delivery, which knows more than the plant file.</summary>
public static class AsDelivered
{
    /// <summary>What a pump doses is as strong as its tank, what a person doses as the newest drum in the store; each stands in for the other. An assay on or after the day of the delivery goes before it.</summary>
    /// <param name="product">The product as the plant file has it.</param>
    /// <param name="pumps">Pumps of the plant with their tanks.</param>
    /// <param name="stores">What the circuits know of the store.</param>
    public static ProductPlan Of(ProductPlan product, IEnumerable<(PumpPlan Pump, TankState Tank)> pumps, IEnumerable<StoreState> stores)
    {
        ArgumentNullException.ThrowIfNull(product);
        var tank = pumps.Where(p => p.Pump.ProductId == product.Id && p.Tank is { Mix: not null, Wrong: null }).Select(p => p.Tank.Mix!).OrderBy(m => m.On).LastOrDefault();
        var drum = stores.Where(s => s.ProductId == product.Id).Select(s => s.Label).OfType<StoreLabel>().OrderBy(l => l.At).LastOrDefault();
        var ofTank = tank is null ? null : TankMix.By(product, tank.Strength, tank.On, tank.Batch ?? "");
        var ofDrum = drum is null ? null : TankMix.By(product, drum.Strength, drum.On, drum.Batch ?? "");
        var found = product.AddedBy == DosingWay.Hand ? ofDrum ?? ofTank : ofTank ?? ofDrum;
        if (found is null || (product.Assay is not null && product.AssayedOn >= found.StrengthOn)) return product;
        // A litre weighs what it did: an amount that was entered in litres stays that many.
        return found with { Density = product.Density ?? ProductAtHand.Of(product, found.StrengthOn!.Value).KilogramsPerLitre };
    }

    /// <summary>All products of a plant as they were delivered.</summary>
    public static ImmutableArray<ProductPlan> Of(ImmutableArray<ProductPlan> products, IReadOnlyCollection<(PumpPlan Pump, TankState Tank)> pumps, IReadOnlyCollection<StoreState> stores) =>
        [.. products.Select(p => Of(p, pumps, stores))];
}
