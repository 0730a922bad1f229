using System.Collections.Immutable;
using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Reasons;

namespace PlantWatch.Core.Stock;

/// <summary>A tank in the stock of a product.</summary>
/// <param name="Pump">The pump.</param>
/// <param name="Tank">What is known of its tank.</param>
/// <param name="Litres">What it holds; null when not known.</param>
/// <param name="Usable">What of it the pump can draw.</param>
/// <param name="Strength">How strong its content is today, per cent; null when no label was written down.</param>
/// <param name="Outlook">How long it lasts without a refill; null when too little is known.</param>
/// <param name="Why">What is missing for that.</param>
public sealed record TankSheet(PumpPlan Pump, TankState Tank, double? Litres, double? Usable, double? Strength, Outlook? Outlook, Reason? Why);

/// <summary>The stock of a product: what is in the store, in tanks, and for how long that lasts.</summary>
/// <param name="Product">The product as the plant file has it.</param>
/// <param name="Unit">What the figures count.</param>
/// <param name="Store">In the store by the book; null while nobody has counted it or written down a delivery. Below nothing where more was taken than was written down.</param>
/// <param name="Tanks">Its tanks.</param>
/// <param name="Total">What can be used of all that; null when nothing is known.</param>
/// <param name="Days">What was used on days before.</param>
/// <param name="Outlook">How long it lasts; null when too little is known.</param>
/// <param name="Why">What is missing for that.</param>
/// <param name="UnitPrice">Price of a unit by the newest delivery, else by the plant file; null when neither has one.</param>
public sealed record StockSheet(
    ProductPlan Product, StockUnit Unit, double? Store, ImmutableArray<TankSheet> Tanks, double? Total, ImmutableArray<DayUse> Days, Outlook? Outlook, Reason? Why, double? UnitPrice)
{
    /// <summary>It may be used up before an order would come.</summary>
    public bool RunsOut => Product.DeliveryDays is { } lead && Outlook?.Earliest is { } days && days <= lead;

    /// <summary>Adds up a product over the plant.</summary>
    /// <param name="product">The product as the plant file has it.</param>
    /// <param name="tanks">The tanks of all pumps.</param>
    /// <param name="stores">What the circuits know of the store.</param>
    /// <param name="today">Today on the site's calendar.</param>
    public static StockSheet Of(ProductPlan product, IEnumerable<(PumpPlan Pump, TankState Tank)> tanks, IEnumerable<StoreState> stores, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(product);
        StoreState[] own = [.. stores.Where(s => s.ProductId == product.Id)];
        var unit = StockUnits.Of(product);
        ImmutableArray<TankSheet> sheets = unit == StockUnit.Litre ? [.. tanks.Where(t => t.Pump.ProductId == product.Id).Select(t => Tank(product, t.Pump, t.Tank, today))] : [];
        double? store = own.Any(s => s.IsOpened) ? own.Sum(s => s.Amount) : null;
        var known = sheets.Select(t => t.Usable).Append(store is { } s ? Math.Max(0, s) : null).OfType<double>().ToArray();
        double? total = known.Length == 0 ? null : known.Sum();
        var days = UseDays.Together([.. sheets.Select(t => t.Tank.Days)], [.. own.Select(s => s.Days)], today);
        var (outlook, why) = total is { } stock ? Outlook.Of(stock, days, today) : (null, Reason.Of("stock.not_known"));
        return new(product, unit, store, sheets, total, days, outlook, why, PriceOf(product, own, today));
    }

    private static TankSheet Tank(ProductPlan product, PumpPlan pump, TankState tank, DateOnly today)
    {
        // What is spoiled is used by nobody.
        var usable = tank.Wrong is null ? TankContent.Usable(pump, tank) : 0;
        var (outlook, why) = usable is { } litres ? Outlook.Of(litres, tank.Days, today) : (null, Reason.Of("stock.not_known"));
        return new(pump, tank, TankContent.Litres(pump, tank), usable, tank.Mix?.Now(product, today), outlook, why);
    }

    private static double? PriceOf(ProductPlan product, StoreState[] own, DateOnly today)
    {
        var paid = own.Select(s => s.Price).OfType<UnitPrice>().OrderBy(p => p.At).ToArray();
        return paid.Length > 0 ? paid[^1].Amount : StockUnits.UnitPrice(ProductAtHand.Of(product, today));
    }
}
