using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What can be put into a pool's water: the products that the plant file lists, then those of the trade at their usual strength.</summary>
internal static class WhatIfBottles
{
    private static readonly ProductKind[] OfTheTrade =
    [
        ProductKind.HydrochloricAcid, ProductKind.SulfuricAcid, ProductKind.SodiumBisulfate, ProductKind.CarbonDioxide, ProductKind.SodiumBicarbonate,
        ProductKind.SodiumCarbonate, ProductKind.SodiumHydroxide, ProductKind.SodiumHypochlorite, ProductKind.CalciumHypochlorite, ProductKind.Dichlor,
        ProductKind.Trichlor, ProductKind.CyanuricAcid, ProductKind.CalciumChlorideDihydrate, ProductKind.SodiumChloride, ProductKind.SodiumThiosulfate,
    ];

    public static IReadOnlyList<WhatIfBottle> Of(PoolPlan pool, ImmutableArray<ProductPlan> products, DateOnly today, Wording words)
    {
        var atHand = products.Select(p => Bottle(p, today, true, words));
        var others = OfTheTrade.Where(kind => !products.Any(p => p.Kind == kind))
            .Select(kind => Bottle(new ProductPlan(Wording.Key(kind), words.Find($"name.product_{Wording.Key(kind)}"), kind, null), today, false, words));
        return [.. atHand.Concat(others).OfType<WhatIfBottle>().DistinctBy(b => b.Id).Where(b => BelongsIn(pool, b))];
    }

    private static WhatIfBottle? Bottle(ProductPlan plan, DateOnly today, bool atHand, Wording words)
    {
        var product = ProductAtHand.Of(plan, today);
        if (!product.IsModelled) return null;
        var strength = Reason.Of(product.Facts.Basis == GradeBasis.AvailableChlorine ? "what_if.strength_as_chlorine" : "what_if.strength", 100 * product.Strength.Fraction);
        return new(plan.Id, plan.Name, plan.Kind, atHand, words.Text(strength), product.PerKilogram, product.IsLiquid ? product.KilogramsPerLitre : null, atHand ? product.Strength.Says : []);
    }

    // What must not go into a pool is not tried there either: stabiliser indoors, in spas and in therapy, chlorine in bromine water.
    private static bool BelongsIn(PoolPlan pool, WhatIfBottle bottle) =>
        (bottle.PerKilogram.Cyanurate <= 0 || (pool.Setting == Setting.Outdoor && pool.Kind is not (PoolKind.Spa or PoolKind.Therapy)))
        && (bottle.PerKilogram.Chlorine == 0 || pool.Disinfectant != Disinfectant.Bromine);
}
