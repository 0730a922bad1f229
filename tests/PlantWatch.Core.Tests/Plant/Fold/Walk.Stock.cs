using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Tests.Plant.Fold;

internal static partial class Walk
{
    // Deliveries right and wrong, refills, counts, corrections, bathers, and what the shell says of the stock.
    private static void Stock(Bench bench, Act act) => bench.Run(at => (act.A % 5) switch
    {
        0 => new BathersCounted(at, new BatherCount(TimeOrderedId.Derive(Hall.Nine, $"bathers {act.B % 9}"), act.B % 7 == 0 ? "nowhere" : "main", new DateOnly(2026, 5, 1 + (act.B % 9)), act.B - 40, "R. Example")),
        1 => new StockOutlookSaid(at, act.B % 2 == 0 ? "acid" : "hypo", act.B % 4 < 2, act.B % 9),
        _ => new StockMoved(at, new StockMove
        {
            Id = TimeOrderedId.Derive(Hall.Nine, $"move {act.B % 12}"), Act = (StockAct)(act.A % 4), ProductId = (act.B % 4) switch { 0 => "acid", 1 => "bicarb", 2 => "nothing", _ => "hypo" },
            PumpId = (act.A % 3) switch { 0 => null, 1 => "acid-pump", _ => "hypo-pump" }, Amount = (act.B % 60) - 5, HappenedAt = at - TimeSpan.FromMinutes((act.A % 400) - 10), By = act.B % 11 == 0 ? " " : "R. Example",
            CheckedBy = act.B % 5 == 0 ? "R. Example" : "J. Sample", Strength = act.A % 7 == 0 ? null : act.A % 16, WentIn = act.B % 3 == 0, Book = act.A % 20, Price = act.B % 2 == 0 ? act.A % 100 : null,
            Corrects = act.B % 6 == 0 ? TimeOrderedId.Derive(Hall.Nine, $"move {act.A % 12}") : null, CorrectionReason = "another drum",
        }),
    });
}
