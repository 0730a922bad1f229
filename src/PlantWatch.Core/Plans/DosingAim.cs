namespace PlantWatch.Core.Plans;

/// <summary>What a dosed product is meant to move.</summary>
public enum DosingAim
{
    /// <summary>Neither pH nor disinfectant, or not known.</summary>
    Other = 0,
    /// <summary>It lowers pH.</summary>
    LowersPh,
    /// <summary>It raises pH.</summary>
    RaisesPh,
    /// <summary>It adds chlorine.</summary>
    AddsChlorine,
}

/// <summary>What each product is dosed for by a pump.</summary>
public static class DosingAims
{
    /// <summary>The aim of a product.</summary>
    public static DosingAim Of(ProductKind kind) => kind switch
    {
        ProductKind.HydrochloricAcid or ProductKind.SulfuricAcid or ProductKind.SodiumBisulfate or ProductKind.CarbonDioxide => DosingAim.LowersPh,
        ProductKind.SodiumCarbonate or ProductKind.SodiumHydroxide => DosingAim.RaisesPh,
        ProductKind.SodiumHypochlorite or ProductKind.CalciumHypochlorite or ProductKind.Dichlor or ProductKind.DichlorDihydrate
            or ProductKind.Trichlor or ProductKind.ChlorineGas => DosingAim.AddsChlorine,
        _ => DosingAim.Other,
    };
}
