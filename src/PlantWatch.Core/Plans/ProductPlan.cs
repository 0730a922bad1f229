namespace PlantWatch.Core.Plans;

/// <summary>A chemical product at hand.</summary>
/// <param name="Id">Key in the plant file.</param>
/// <param name="Name">As on the drum.</param>
/// <param name="Kind">What it is chemically.</param>
/// <param name="Strength">Strength in per cent as the label gives it; null when unknown.</param>
public sealed record ProductPlan(string Id, string Name, ProductKind Kind, double? Strength);

/// <summary>Chemical products a plant doses.</summary>
public enum ProductKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Liquid sodium hypochlorite.</summary>
    SodiumHypochlorite,
    /// <summary>Calcium hypochlorite.</summary>
    CalciumHypochlorite,
    /// <summary>Sodium dichloroisocyanurate.</summary>
    Dichlor,
    /// <summary>Trichloroisocyanuric acid.</summary>
    Trichlor,
    /// <summary>Hydrochloric acid.</summary>
    HydrochloricAcid,
    /// <summary>Sulfuric acid.</summary>
    SulfuricAcid,
    /// <summary>Sodium bisulfate.</summary>
    SodiumBisulfate,
    /// <summary>Carbon dioxide.</summary>
    CarbonDioxide,
    /// <summary>Sodium bicarbonate.</summary>
    SodiumBicarbonate,
    /// <summary>Sodium carbonate.</summary>
    SodiumCarbonate,
    /// <summary>Calcium chloride.</summary>
    CalciumChloride,
    /// <summary>A bromine product.</summary>
    Bromine,
    /// <summary>Coagulant.</summary>
    Coagulant,
}
