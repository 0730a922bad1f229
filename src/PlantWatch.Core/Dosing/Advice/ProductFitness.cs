using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Dosing;

/// <summary>Whether a product may go into a pool at all.</summary>
public static class ProductFitness
{
    /// <summary>Why it may not; empty when nothing is known against it.</summary>
    public static ImmutableArray<Reason> Against(ProductPlan product, PoolPlan pool)
    {
        ArgumentNullException.ThrowIfNull(product);
        ArgumentNullException.ThrowIfNull(pool);
        var against = ImmutableArray.CreateBuilder<Reason>();
        var role = ProductUse.Role(product.Kind);
        if (ProductFacts.Of(product.Kind).IsStabilised) Stabiliser(product, pool, against);
        if (pool.Disinfectant == Disinfectant.Bromine && role == ProductRole.Chlorine) against.Add(Reason.Of("dose.no_chlorine_in_bromine", product.Name));
        if (pool.Disinfectant != Disinfectant.Bromine && role == ProductRole.Bromine) against.Add(Reason.Of("dose.no_bromine_in_chlorine", product.Name));
        if (pool.Disinfectant == Disinfectant.Unknown && role is ProductRole.Chlorine or ProductRole.Bromine) against.Add(Reason.Of("dose.disinfectant_unknown"));
        if (product.Kind == ProductKind.Monopersulfate) against.Add(Reason.Of("dose.monopersulfate"));
        else if (!ProductFacts.Of(product.Kind).IsModelled && role != ProductRole.Bromine) against.Add(Reason.Of("dose.not_worked_out", product.Name));
        else if (role == ProductRole.Bromine && pool.Disinfectant == Disinfectant.Bromine) against.Add(Reason.Of("dose.bromine_by_supplier"));
        if (product.Kind is ProductKind.ChlorineGas or ProductKind.CarbonDioxide && product.AddedBy != DosingWay.Pump) against.Add(Reason.Of("dose.gas_by_hand", product.Name));
        return against.ToImmutable();
    }

    private static void Stabiliser(ProductPlan product, PoolPlan pool, ImmutableArray<Reason>.Builder against)
    {
        if (pool.Setting != Setting.Outdoor) against.Add(Reason.Of(pool.Setting == Setting.Indoor ? "dose.stabiliser_indoors" : "dose.stabiliser_setting_unknown", product.Name));
        if (pool.Kind is PoolKind.Spa or PoolKind.Therapy or PoolKind.Plunge) against.Add(Reason.Of("dose.stabiliser_warm_pool", product.Name));
        if (pool.Disinfectant is not (Disinfectant.StabilisedChlorine or Disinfectant.SaltElectrolysis)) against.Add(Reason.Of("dose.stabiliser_not_declared", product.Name));
    }
}
