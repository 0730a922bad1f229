using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;

namespace PlantWatch.Core.Tests.Chemistry.Planning;

/// <summary>Invented stores and pools for plans. Prices are invented.</summary>
internal static class Shelf
{
    public static readonly DateOnly Today = new(2026, 3, 1);

    public static ImmutableArray<Band> Bands { get; } = UsualBands.Of(new() { Id = "main", Name = "Main", Kind = PoolKind.Swimming, Disinfectant = Disinfectant.Chlorine });

    public static ImmutableArray<Band> StabilisedBands { get; } =
        UsualBands.Of(new() { Id = "out", Name = "Outdoor", Kind = PoolKind.Swimming, Setting = Setting.Outdoor, Disinfectant = Disinfectant.StabilisedChlorine });

    public static ProductAtHand Product(ProductKind kind, double? price) => ProductAtHand.Of(new(kind.ToString(), kind.ToString(), kind, null) { PricePerKilogram = price, StrengthOn = Today }, Today);

    public static ImmutableArray<ProductAtHand> Usual { get; } =
    [
        Product(ProductKind.SodiumBicarbonate, 0.9), Product(ProductKind.SodiumCarbonate, 0.8), Product(ProductKind.HydrochloricAcid, 0.6), Product(ProductKind.SodiumBisulfate, 1.6),
        Product(ProductKind.CarbonDioxide, 1.1), Product(ProductKind.CalciumChlorideDihydrate, 0.7), Product(ProductKind.SodiumHypochlorite, 0.7), Product(ProductKind.CalciumHypochlorite, 4.5),
    ];

    public static TestedWater Water(double ph, double celsius, double alkalinity, double calcium, double solids, double chlorine, double cyanurate = 0, double times = 0) => new()
    {
        Ph = new(ph, 0.12 * times), Celsius = celsius, Alkalinity = new(alkalinity, 14 * times), Calcium = new(calcium, 28 * times), Solids = new(solids, 100 * times),
        FreeChlorine = new(chlorine, 0.1 * times), Cyanurate = new(cyanurate, 20 * times),
    };

    public static PlanQuestion Ask(TestedWater water, ImmutableArray<ProductAtHand>? products = null, ImmutableArray<Band>? bands = null) =>
        new() { Water = water, CubicMetres = 400, Bands = bands ?? Bands, Products = products ?? Usual, TurnoverHours = 4 };
}
