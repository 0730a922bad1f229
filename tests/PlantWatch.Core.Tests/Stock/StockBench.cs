using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;
using PlantWatch.Core.Tests.Plant.Fold;

namespace PlantWatch.Core.Tests.Stock;

/// <summary>The hall with its products: acid in a tank with a level, hypochlorite in one without, bicarbonate given by hand.</summary>
internal static class StockBench
{
    public static readonly ProductPlan Hypo = new("hypo", "Hypochlorite", ProductKind.SodiumHypochlorite, 12) { Means = StrengthMeaning.Trade, PricePerLitre = 1, AddedBy = DosingWay.Pump };
    public static readonly ProductPlan Acid = new("acid", "Hydrochloric acid", ProductKind.HydrochloricAcid, 30) { Means = StrengthMeaning.Weight, PricePerLitre = 0.8, DeliveryDays = 7, AddedBy = DosingWay.Pump };
    public static readonly ProductPlan Bicarb = new("bicarb", "Bicarbonate", ProductKind.SodiumBicarbonate, null) { PricePerKilogram = 1.1, AddedBy = DosingWay.Hand };

    public static CircuitPlan Plan { get; } = Hall.Plan with
    {
        Products = [Hypo, Acid, Bicarb],
        Pumps =
        [
            Hall.Plan.Pumps[0] with { Doses = ProductKind.HydrochloricAcid, TankLitres = 100 },
            Hall.Plan.Pumps[1] with { Doses = ProductKind.SodiumHypochlorite, TankLitres = 200 },
        ],
    };

    public static StockMove Delivery(this Bench bench, string product, string? pump, double amount) => new()
    {
        Id = TimeOrderedId.Derive(bench.Now, $"move {bench.Events.Count}"), Act = StockAct.Delivered, ProductId = product, PumpId = pump, Amount = amount,
        HappenedAt = bench.Now, By = "R. Example", CheckedBy = "J. Sample",
    };

    public static StockMove Count(this Bench bench, string product, string? pump, double found, double? book) =>
        bench.Delivery(product, pump, found) with { Act = StockAct.Counted, CheckedBy = "", Book = book };

    public static Outcome Write(this Bench bench, StockMove move) => bench.Run(at => new StockMoved(at, move));

    public static string? WhyNot(Outcome outcome) => outcome is Outcome.TurnedDown no ? $"{no.Remarks[0].Field} {no.Remarks[0].Reason.Code}" : null;

    public static double Store(this Bench bench, string product) => bench.State.Stores.Single(s => s.ProductId == product).Amount;

    public static TankState Tank(this Bench bench, string pump) => bench.State.Tanks.Single(t => t.PumpId == pump);

    /// <summary>The acid tank says its level every ten minutes, in a straight line and with the ripple of its sensor.</summary>
    public static void Falls(this Bench bench, TimeSpan span, double from, double to)
    {
        var steps = (int)(span / TimeSpan.FromMinutes(5));
        for (var i = 1; i <= steps; i++)
        {
            bench.Skip(TimeSpan.FromMinutes(5));
            var ripple = (i % 4) switch { 0 => 0.8, 1 => -0.6, 2 => 0.5, _ => -0.7 };
            bench.Says(Hall.AcidTank, FormattableString.Invariant($"{from + ((to - from) * i / steps) + ripple:R}"));
            bench.Tick();
        }
    }
}
