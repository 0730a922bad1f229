namespace PlantWatch.Core.Plans;

/// <summary>Chemical products a plant doses.</summary>
public enum ProductKind
{
    /// <summary>Not stated.</summary>
    Unknown = 0,
    /// <summary>Liquid sodium hypochlorite.</summary>
    SodiumHypochlorite,
    /// <summary>Calcium hypochlorite.</summary>
    CalciumHypochlorite,
    /// <summary>Sodium dichloroisocyanurate without water of crystallisation.</summary>
    Dichlor,
    /// <summary>Sodium dichloroisocyanurate dihydrate.</summary>
    DichlorDihydrate,
    /// <summary>Trichloroisocyanuric acid.</summary>
    Trichlor,
    /// <summary>Chlorine gas.</summary>
    ChlorineGas,
    /// <summary>Cyanuric acid, the stabiliser.</summary>
    CyanuricAcid,
    /// <summary>Hydrochloric acid.</summary>
    HydrochloricAcid,
    /// <summary>Sulfuric acid.</summary>
    SulfuricAcid,
    /// <summary>Sodium bisulfate, dry acid.</summary>
    SodiumBisulfate,
    /// <summary>Carbon dioxide.</summary>
    CarbonDioxide,
    /// <summary>Sodium bicarbonate.</summary>
    SodiumBicarbonate,
    /// <summary>Sodium carbonate, soda ash.</summary>
    SodiumCarbonate,
    /// <summary>Sodium hydroxide, caustic soda.</summary>
    SodiumHydroxide,
    /// <summary>Calcium chloride without water of crystallisation.</summary>
    CalciumChloride,
    /// <summary>Calcium chloride dihydrate.</summary>
    CalciumChlorideDihydrate,
    /// <summary>Sodium chloride, salt.</summary>
    SodiumChloride,
    /// <summary>Sodium thiosulfate pentahydrate.</summary>
    SodiumThiosulfate,
    /// <summary>Sodium sulfite without water of crystallisation.</summary>
    SodiumSulfite,
    /// <summary>Sodium bisulfite.</summary>
    SodiumBisulfite,
    /// <summary>Ascorbic acid.</summary>
    AscorbicAcid,
    /// <summary>Potassium monopersulfate, an oxidiser without chlorine.</summary>
    Monopersulfate,
    /// <summary>A bromine product.</summary>
    Bromine,
    /// <summary>Coagulant.</summary>
    Coagulant,
}
