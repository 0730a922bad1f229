using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

// ---- POST /api/v1/pools/{id}/what-if : WhatIfRequest -> WhatIfView (200) or Problem (400/404). Nothing is recorded.

/// <summary>A water to imagine, and what is put into it.</summary>
/// <param name="Water">The water; null for the pool's present one.</param>
/// <param name="Doses">What is added; null for nothing.</param>
/// <param name="VolumeM3">Water that takes the doses, m3; null for that of the pool's circuit.</param>
/// <param name="Curve">The product whose dose the second curve runs along; null for none.</param>
/// <param name="ChlorineSpent">True to see the water after the chlorine that was added has been used up.</param>
public sealed record WhatIfRequest(WhatIfWater? Water, IReadOnlyList<WhatIfDose>? Doses, double? VolumeM3, string? Curve, bool ChlorineSpent = false);

/// <summary>The figures of a water as people test them; null where not known.</summary>
/// <param name="Ph">pH.</param>
/// <param name="Temperature">degC.</param>
/// <param name="TotalAlkalinity">mg/L as CaCO3.</param>
/// <param name="CalciumHardness">mg/L as CaCO3.</param>
/// <param name="DissolvedSolids">mg/L.</param>
/// <param name="CyanuricAcid">mg/L.</param>
/// <param name="FreeChlorine">mg/L as Cl2.</param>
public sealed record WhatIfWater(
    double? Ph, double? Temperature, double? TotalAlkalinity, double? CalciumHardness, double? DissolvedSolids, double? CyanuricAcid, double? FreeChlorine);

/// <summary>An amount of a product.</summary>
/// <param name="Product">Id of the product, of those that the answer lists.</param>
/// <param name="Kilograms">How much, as delivered.</param>
public sealed record WhatIfDose(string? Product, double Kilograms);

/// <summary>What would be, beside what is.</summary>
/// <param name="At">Time of the present figures.</param>
/// <param name="Inputs">The pool's present figures with age and origin.</param>
/// <param name="Now">The present water worked out; null when too little is known of it.</param>
/// <param name="Water">The water that was set, before doses; null when too little of it is known.</param>
/// <param name="After">The same with the doses in it.</param>
/// <param name="AgainstPh">The water after the doses at other pH.</param>
/// <param name="NowAgainstPh">The present water at other pH.</param>
/// <param name="AgainstDose">The water with more and more of the product that was asked for.</param>
/// <param name="Doses">What was put in, in the units of the plant.</param>
/// <param name="VolumeM3">The water that takes the doses, m3.</param>
/// <param name="Volume">The same in the units of the plant.</param>
/// <param name="Products">What can be added here.</param>
/// <param name="Remarks">What has to be said: what is missing, what is assumed.</param>
public sealed record WhatIfView(
    Instant At, IReadOnlyList<BalanceInput> Inputs, FiguresView? Now, FiguresView? Water, FiguresView? After, CurveView AgainstPh, CurveView NowAgainstPh,
    CurveView AgainstDose, IReadOnlyList<WhatIfAmount> Doses, double VolumeM3, Amount Volume, IReadOnlyList<WhatIfProduct> Products, IReadOnlyList<Said> Remarks);

/// <summary>An amount that was put in.</summary>
/// <param name="Product">Id of the product.</param>
/// <param name="Mass">Its mass.</param>
/// <param name="Volume">Its volume, of a liquid; null otherwise.</param>
public sealed record WhatIfAmount(string Product, Amount Mass, Amount? Volume);

/// <summary>A curve by columns of one length; empty when there is none.</summary>
/// <param name="At">pH, or kilograms of the product.</param>
/// <param name="Ph">pH.</param>
/// <param name="Saturation">Saturation index; null where not known.</param>
/// <param name="Hocl">Hypochlorous acid, mg/L as Cl2; null where not known.</param>
/// <param name="Share">The same as a part of free chlorine, 0 to 1; null where not known.</param>
public sealed record CurveView(
    IReadOnlyList<double> At, IReadOnlyList<double> Ph, IReadOnlyList<double?> Saturation, IReadOnlyList<double?> Hocl, IReadOnlyList<double?> Share);

/// <summary>A water's figures with the index in a word.</summary>
/// <param name="Figures">The figures.</param>
/// <param name="Word">corrosive, balanced, scale_forming; null without index.</param>
public sealed record FiguresView(WaterFigures Figures, string? Word);

/// <summary>A product that can be added here.</summary>
/// <param name="Id">To be named in a dose.</param>
/// <param name="Name">As on the drum, or of the trade.</param>
/// <param name="Kind">What it is.</param>
/// <param name="AtHand">True when the plant file lists it.</param>
/// <param name="Strength">Strength that is reckoned with, in words.</param>
/// <param name="KilogramsPerLitre">Density of a liquid; null otherwise.</param>
/// <param name="ScaleKilograms">An amount that moves this water clearly: the end of a slider.</param>
public sealed record WhatIfProduct(string Id, string Name, ProductKind Kind, bool AtHand, string Strength, double? KilogramsPerLitre, double ScaleKilograms);
