using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The stock as the screens need it: added up over the circuits.</summary>
internal static class StockViews
{
    private const int MonthsShown = 12;

    /// <summary>The sheet of each product.</summary>
    public static IReadOnlyList<StockSheet> Sheets(ImmutableArray<ProductPlan> products, IReadOnlyCollection<CircuitState> states, DateOnly today)
    {
        var tanks = Tanks(states);
        StoreState[] stores = [.. states.SelectMany(s => s.Stores)];
        return [.. products.Select(p => StockSheet.Of(p, tanks, stores, today))];
    }

    /// <summary>All tanks with their pumps.</summary>
    public static IReadOnlyCollection<(PumpPlan Pump, TankState Tank)> Tanks(IEnumerable<CircuitState> states) => [.. states.Where(s => s.Tanks.Length == s.Plan.Pumps.Length).SelectMany(s => s.Plan.Pumps.Zip(s.Tanks))];

    /// <summary>The whole book.</summary>
    /// <param name="products">Products of the plant file.</param>
    /// <param name="circuits">Each circuit with its rows of use and its counts of bathers.</param>
    /// <param name="today">Today on the site's calendar.</param>
    /// <param name="days">Over how many days use and cost are added up.</param>
    public static StockBookView Of(ImmutableArray<ProductPlan> products, IReadOnlyList<CircuitUse> circuits, DateOnly today, int days)
    {
        var from = today.AddDays(-days);
        var sheets = Sheets(products, [.. circuits.Select(c => c.State)], today);
        // Today is not over: a day counts when it is.
        return new(today, from, [.. sheets.Select(s => One(s, circuits, from, today.AddDays(-1)))], Months(products, circuits), TooClose(products));
    }

    private static StockView One(StockSheet sheet, IReadOnlyList<CircuitUse> circuits, DateOnly from, DateOnly to)
    {
        var (id, name) = (sheet.Product.Id, sheet.Product.Name);
        var sums = circuits.Select(c => UseSums.Of(c.Rows.Where(r => r.ProductId == id), c.Bathers, c.State.Plan.Pools.Sum(p => p.VolumeCubicMetres), from, to)).Aggregate(default(UseSums), (a, b) => a + b);
        return new(
            id, name, sheet.Product.Kind, sheet.Unit, sheet.Product.Strength, sheet.Product.Store, sheet.Store, [.. sheet.Tanks.Select(t => Tank(t, circuits))], sheet.Total, Of(sheet.Outlook),
            sheet.Why is { } why ? Reader.Words.Say(why) : null, sheet.Product.DeliveryDays, sheet.RunsOut, sheet.UnitPrice, Of(sums), Days(id, circuits, from, to, sheet));
    }

    private static TankView Tank(TankSheet tank, IReadOnlyList<CircuitUse> circuits) => new(
        tank.Pump.Id, tank.Pump.Name, circuits.First(c => c.State.Plan.Pumps.Contains(tank.Pump)).State.Plan.Name, tank.Litres, tank.Usable, tank.Pump.TankLitres, tank.Strength, tank.Tank.Mix?.Batch,
        Of(tank.Outlook), tank.Tank.Wrong is { } wrong ? Reader.Words.Say(wrong.Cause) : null, tank.Tank.Unknown?.At);

    private static StockOutlookView? Of(Outlook? found) => found is null ? null : new(found.Earliest, found.Middle, found.Latest, found.PerDay, found.ByWeekday, found.Days);

    private static StockUseView Of(UseSums sums) => new(
        sums.Amount, sums.Unpriced == sums.Amount ? null : sums.Cost, sums.Unpriced, sums.Days, sums.Bathers, sums.PerBather, sums.CostPerBather, sums.PerCubicMetreDay, sums.CostPerCubicMetreDay);

    private static IReadOnlyList<StockDayView> Days(string product, IReadOnlyList<CircuitUse> circuits, DateOnly from, DateOnly to, StockSheet sheet)
    {
        var rows = circuits.SelectMany(c => c.Rows).Where(r => r.ProductId == product && r.Day >= from && r.Day <= to).ToLookup(r => r.Day);
        return [.. rows.OrderBy(r => r.Key).Select(day => new StockDayView(day.Key, day.Sum(r => r.Amount), CostOf(day), sheet.Days.Any(d => d.Day == day.Key && d.IsWhole)))];
    }

    private static IReadOnlyList<StockMonthView> Months(ImmutableArray<ProductPlan> products, IReadOnlyList<CircuitUse> circuits)
    {
        var months = circuits.SelectMany(c => c.Rows).GroupBy(r => new DateOnly(r.Day.Year, r.Day.Month, 1)).OrderByDescending(m => m.Key).Take(MonthsShown);
        return [.. months.Select(m => new StockMonthView(m.Key, CostOf(m), [.. m.GroupBy(r => (r.ProductId, r.Unit)).Select(p => new ProductMonthView(
            p.Key.ProductId, products.FirstOrDefault(x => x.Id == p.Key.ProductId)?.Name ?? p.Key.ProductId, p.Key.Unit, p.Sum(r => r.Amount), CostOf(p))).OrderBy(p => p.Name, StringComparer.Ordinal)]))];
    }

    private static double? CostOf(IEnumerable<UseRow> rows)
    {
        UseRow[] priced = [.. rows.Where(r => r.Cost is not null)];
        return priced.Length == 0 ? null : priced.Sum(r => r.Cost!.Value);
    }

    // A store is named by its people; the same name is the same room. What only clouds a pool may stand side by side.
    private static List<Said> TooClose(ImmutableArray<ProductPlan> products)
    {
        var found = new List<Said>();
        for (var i = 0; i < products.Length; i++)
            for (var k = i + 1; k < products.Length; k++)
                if (products[i].Store is { } store && store == products[k].Store && ProductHazards.Apart(products[i].Kind, products[k]) is { Code: not "apart.lime" } why)
                    found.Add(new Said("stock.too_close", $"{products[i].Name}, {store}: {Reader.Words.Text(why)}"));
        return found;
    }
}

/// <summary>A circuit with what its record says of use and bathers.</summary>
internal sealed record CircuitUse(CircuitState State, IReadOnlyList<UseRow> Rows, ImmutableDictionary<DateOnly, int> Bathers);
