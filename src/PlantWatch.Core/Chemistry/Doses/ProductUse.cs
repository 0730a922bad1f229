using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Core.Chemistry;

/// <summary>What a product is used for: which figure of the water it moves, and which way.</summary>
public static class ProductUse
{
    /// <summary>+1 when the product raises the figure, -1 when it lowers it, 0 when it is not used for it.</summary>
    /// <param name="kind">The product.</param>
    /// <param name="target">The figure: pH, alkalinity, calcium hardness, free chlorine, cyanuric acid or dissolved solids.</param>
    public static int Direction(ProductKind kind, Measurand target) => (target, Role(kind)) switch
    {
        (Measurand.FreeChlorine, ProductRole.Chlorine) => 1,
        (Measurand.FreeChlorine, ProductRole.Dechlorinator) => -1,
        (Measurand.Ph, ProductRole.Acid or ProductRole.CarbonDioxide) => -1,
        (Measurand.Ph, ProductRole.Base) => 1,
        (Measurand.TotalAlkalinity, ProductRole.Acid) => -1,
        (Measurand.TotalAlkalinity, ProductRole.Base or ProductRole.Bicarbonate) when kind != ProductKind.SodiumHydroxide => 1,
        (Measurand.CalciumHardness, ProductRole.Calcium) => 1,
        (Measurand.CyanuricAcid, ProductRole.Stabiliser) => 1,
        (Measurand.DissolvedSolids, ProductRole.Salt) => 1,
        _ => 0,
    };

    /// <summary>The figures that a product is used for; none for what is not worked out here.</summary>
    public static IEnumerable<Measurand> Of(ProductKind kind) => Targets.Where(target => Direction(kind, target) != 0);

    /// <summary>What a product does in a plant.</summary>
    public static ProductRole Role(ProductKind kind) => kind switch
    {
        ProductKind.SodiumHypochlorite or ProductKind.CalciumHypochlorite or ProductKind.Dichlor or ProductKind.DichlorDihydrate
            or ProductKind.Trichlor or ProductKind.ChlorineGas => ProductRole.Chlorine,
        ProductKind.SodiumThiosulfate or ProductKind.SodiumSulfite or ProductKind.SodiumBisulfite or ProductKind.AscorbicAcid => ProductRole.Dechlorinator,
        ProductKind.HydrochloricAcid or ProductKind.SulfuricAcid or ProductKind.SodiumBisulfate => ProductRole.Acid,
        ProductKind.CarbonDioxide => ProductRole.CarbonDioxide,
        ProductKind.SodiumCarbonate or ProductKind.SodiumHydroxide => ProductRole.Base,
        ProductKind.SodiumBicarbonate => ProductRole.Bicarbonate,
        ProductKind.CalciumChloride or ProductKind.CalciumChlorideDihydrate => ProductRole.Calcium,
        ProductKind.CyanuricAcid => ProductRole.Stabiliser,
        ProductKind.SodiumChloride => ProductRole.Salt,
        ProductKind.Monopersulfate => ProductRole.Oxidiser,
        ProductKind.Bromine => ProductRole.Bromine,
        _ => ProductRole.Other,
    };

    private static readonly Measurand[] Targets =
        [Measurand.FreeChlorine, Measurand.Ph, Measurand.TotalAlkalinity, Measurand.CalciumHardness, Measurand.CyanuricAcid, Measurand.DissolvedSolids];
}

/// <summary>What a product does in a plant.</summary>
public enum ProductRole
{
    /// <summary>None of these.</summary>
    Other = 0,
    /// <summary>Brings free chlorine.</summary>
    Chlorine,
    /// <summary>Takes free chlorine away.</summary>
    Dechlorinator,
    /// <summary>Acid: lowers pH and alkalinity.</summary>
    Acid,
    /// <summary>Carbon dioxide: lowers pH and leaves alkalinity.</summary>
    CarbonDioxide,
    /// <summary>Soda ash or caustic: raises pH and alkalinity.</summary>
    Base,
    /// <summary>Bicarbonate: raises alkalinity and pH little.</summary>
    Bicarbonate,
    /// <summary>Raises calcium hardness.</summary>
    Calcium,
    /// <summary>Cyanuric acid.</summary>
    Stabiliser,
    /// <summary>Common salt.</summary>
    Salt,
    /// <summary>Monopersulfate.</summary>
    Oxidiser,
    /// <summary>A bromine product.</summary>
    Bromine,
}
