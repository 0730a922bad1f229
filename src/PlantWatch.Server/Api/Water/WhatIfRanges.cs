using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Quantities;

namespace PlantWatch.Server.Api;

/// <summary>How far a water may be imagined: as far as the equilibrium is good for, and no further than a pool can be.</summary>
internal static class WhatIfRanges
{
    /// <summary>m3 of water; from a tub to a lake.</summary>
    public static ValueRange Volume { get; } = new(0.1, 100_000);

    /// <summary>More of a product in a cubic metre is no pool any more.</summary>
    public const double MostKilogramsPerCubicMetre = 5;

    private static readonly ValueRange Hardness = new(0, 2000);

    /// <summary>Each figure with its name in the request and its range.</summary>
    public static IEnumerable<(string Field, double? Value, ValueRange Range)> Of(WhatIfWater water) =>
    [
        ("ph", water.Ph, Equilibrium.ValidPh),
        ("temperature", water.Temperature, Equilibrium.ValidCelsius),
        ("totalAlkalinity", water.TotalAlkalinity, Hardness),
        ("calciumHardness", water.CalciumHardness, Hardness),
        ("dissolvedSolids", water.DissolvedSolids, new ValueRange(0, Equilibrium.MostSolids)),
        ("cyanuricAcid", water.CyanuricAcid, Measurand.CyanuricAcid.Possible()),
        ("freeChlorine", water.FreeChlorine, Measurand.FreeChlorine.Possible()),
    ];
}
