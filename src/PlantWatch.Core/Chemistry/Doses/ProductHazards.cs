using System.Collections.Immutable;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a product asks of the people who handle it, and what must not meet what. Standard hazards (common practice); the safety data sheet of the product comes first.</summary>
public static class ProductHazards
{
    /// <summary>What to wear and have at hand.</summary>
    public static ImmutableArray<Reason> Equipment(ProductKind kind) => ProductUse.Role(kind) switch
    {
        _ when kind == ProductKind.ChlorineGas => [Reason.Of("wear.chlorine_gas")],
        ProductRole.Acid when kind != ProductKind.SodiumBisulfate => [Reason.Of("wear.splashes"), Reason.Of("wear.eyewash")],
        ProductRole.Base when kind == ProductKind.SodiumHydroxide => [Reason.Of("wear.splashes"), Reason.Of("wear.eyewash")],
        ProductRole.Chlorine when kind == ProductKind.SodiumHypochlorite => [Reason.Of("wear.splashes"), Reason.Of("wear.eyewash")],
        ProductRole.Chlorine or ProductRole.Acid or ProductRole.Oxidiser or ProductRole.Bromine => [Reason.Of("wear.dust_strong"), Reason.Of("wear.eyewash")],
        ProductRole.CarbonDioxide => [Reason.Of("wear.carbon_dioxide")],
        _ => [Reason.Of("wear.dust")],
    };

    /// <summary>How to handle it, the worst first.</summary>
    public static ImmutableArray<Reason> Handling(ProductKind kind)
    {
        var says = ImmutableArray.CreateBuilder<Reason>();
        switch (ProductUse.Role(kind))
        {
            case ProductRole.Acid:
                says.Add(Reason.Of("handle.acid_into_water"));
                says.Add(Reason.Of("handle.acid_apart_from_chlorine"));
                break;
            case ProductRole.Chlorine:
                says.Add(Reason.Of("handle.chlorine_apart_from_acid"));
                if (kind == ProductKind.CalciumHypochlorite) says.Add(Reason.Of("handle.calcium_hypochlorite"));
                if (ProductFacts.Of(kind).IsStabilised) says.Add(Reason.Of("handle.stabilised"));
                if (kind == ProductKind.ChlorineGas) says.Add(Reason.Of("handle.chlorine_gas"));
                says.Add(Reason.Of("handle.leave_on_smell"));
                break;
            case ProductRole.CarbonDioxide:
                says.Add(Reason.Of("handle.carbon_dioxide"));
                break;
            case ProductRole.Base:
                says.Add(Reason.Of(kind == ProductKind.SodiumHydroxide ? "handle.caustic" : "handle.soda_ash"));
                break;
            case ProductRole.Dechlorinator:
                says.Add(Reason.Of("handle.reducer"));
                break;
            case ProductRole.Calcium:
                says.Add(Reason.Of("handle.calcium_chloride"));
                break;
            case ProductRole.Stabiliser:
                says.Add(Reason.Of("handle.cyanuric_acid"));
                break;
        }

        says.Add(Reason.Of("handle.circulation"));
        says.Add(Reason.Of("handle.data_sheet"));
        return says.ToImmutable();
    }

    /// <summary>Why a product must not meet another: in store, in a bucket, in a feeder or at one place of the pool at one time. Null when nothing is known against it.</summary>
    /// <param name="kind">The product.</param>
    /// <param name="other">The other, which the reason names.</param>
    public static Reason? Apart(ProductKind kind, ProductPlan other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return One(kind, other.Kind, other.Name) ?? One(other.Kind, kind, other.Name);
    }

    private static Reason? One(ProductKind a, ProductKind b, string name) => (ProductUse.Role(a), ProductUse.Role(b)) switch
    {
        (ProductRole.Chlorine, ProductRole.Acid) => Reason.Of("apart.chlorine_gas", name),
        (ProductRole.Chlorine, ProductRole.Dechlorinator) => Reason.Of("apart.oxidiser_and_reducer", name),
        (ProductRole.Chlorine, ProductRole.Chlorine) when a == ProductKind.CalciumHypochlorite && ProductFacts.Of(b).IsStabilised => Reason.Of("apart.fire_and_explosion", name),
        (ProductRole.Chlorine, ProductRole.Stabiliser) => Reason.Of("apart.heat_and_gas", name),
        // Coagulants are acid salts of aluminium or iron.
        (ProductRole.Chlorine, ProductRole.Other) when b == ProductKind.Coagulant => Reason.Of("apart.chlorine_gas", name),
        (ProductRole.Chlorine, ProductRole.Chlorine) when a != b => Reason.Of("apart.chlorine_products", name),
        (ProductRole.Chlorine, ProductRole.Oxidiser or ProductRole.Bromine) => Reason.Of("apart.oxidisers", name),
        (ProductRole.Acid, ProductRole.Base or ProductRole.Bicarbonate) => Reason.Of("apart.acid_and_base", name),
        (ProductRole.Acid, ProductRole.Dechlorinator) when b != ProductKind.AscorbicAcid => Reason.Of("apart.sulfur_dioxide", name),
        (ProductRole.Calcium, ProductRole.Base or ProductRole.Bicarbonate) => Reason.Of("apart.lime", name),
        (ProductRole.Oxidiser or ProductRole.Bromine, ProductRole.Acid or ProductRole.Dechlorinator) => Reason.Of("apart.oxidisers", name),
        _ => null,
    };
}
