using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Dosing;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The store: what comes into it, what is taken from it into tanks and by hand.</summary>
internal static class StoreFold
{
    private const int DosesRemembered = 64;

    public static void Take(Draft draft, StockMove move)
    {
        var store = Of(draft, move.ProductId);
        var opens = move.PumpId is null && move.Act is (StockAct.Delivered or StockAct.Counted);
        store = store with { Amount = store.Amount + move.ToStore, IsOpened = store.IsOpened || opens };
        if (move.Act == StockAct.Delivered) store = Labelled(store, move, DayOf(draft, move.HappenedAt));
        Keep(draft, store);
    }

    /// <summary>A row was wrong: what it did to the amount is taken back. Its label stays until another comes.</summary>
    public static void Undo(Draft draft, StockMove move)
    {
        var store = Of(draft, move.ProductId);
        Keep(draft, store with { Amount = store.Amount - move.ToStore });
    }

    /// <summary>A person gave a dose: it was taken from the store.</summary>
    public static void Give(Draft draft, GivenDose dose, Instant at, bool isCorrected)
    {
        if (StockFold.ProductOf(draft.Plan, dose.ProductId) is not { } product) return;
        if (dose.Corrects is { } wrong) PutBack(draft, wrong, product, at, dose.PoolId);
        if (isCorrected) return;
        var day = DayOf(draft, dose.GivenAt);
        if (StockUnits.FromKilograms(AtHand(draft, product, day), dose.Kilograms) is not { } amount) return;
        var store = Of(draft, dose.ProductId);
        var taken = store.Taken.Add(new HandTaken(dose.Id, amount, day));
        Used(draft, store with { Taken = taken.Length > DosesRemembered ? taken.RemoveAt(0) : taken }, product, amount, day, at, dose.PoolId);
    }

    /// <summary>Price of a unit that counts now: of the newest delivery, else of the plant file.</summary>
    public static double? PriceOf(Draft draft, ProductPlan product, DateOnly day) =>
        draft.Stores.FirstOrDefault(s => s.ProductId == product.Id)?.Price?.Amount ?? StockUnits.UnitPrice(AtHand(draft, product, day));

    /// <summary>The site's day.</summary>
    public static DateOnly DayOf(Draft draft, Instant at) => draft.Index.Clock is { } clock ? clock.DayOf(at) : DateOnly.FromDateTime(at.ToDateTimeOffset().UtcDateTime);

    /// <summary>The product as it stands in this circuit.</summary>
    public static ProductAtHand AtHand(Draft draft, ProductPlan product, DateOnly day) =>
        ProductAtHand.Of(AsDelivered.Of(product, draft.Plan.Pumps.Zip(draft.Tanks), draft.Stores), day);

    private static void PutBack(Draft draft, Guid dose, ProductPlan product, Instant at, string pool)
    {
        foreach (var store in draft.Stores)
            foreach (var taken in store.Taken)
                if (taken.DoseId == dose)
                {
                    var own = StockFold.ProductOf(draft.Plan, store.ProductId) ?? product;
                    Used(draft, store with { Taken = store.Taken.Remove(taken) }, own, -taken.Amount, taken.Day, at, pool);
                    return;
                }
    }

    private static void Used(Draft draft, StoreState store, ProductPlan product, double amount, DateOnly day, Instant at, string pool)
    {
        Keep(draft, store with { Amount = store.Amount - amount, Days = store.Days.With(new DayUse(day, amount, 24)) });
        draft.Write(at, at, pool, new UseEntry(new UseRow(store.ProductId, null, day, amount, StockUnits.Of(product), 0, UseSource.Hand, PriceOf(draft, product, day))));
    }

    private static StoreState Labelled(StoreState store, StockMove move, DateOnly day)
    {
        if (move.UnitPrice is { } price && !(store.Price?.At > move.HappenedAt)) store = store with { Price = new UnitPrice(price, move.HappenedAt) };
        if (move.PumpId is not null || move.Strength is not { } strength || store.Label?.At > move.HappenedAt) return store;
        return store with { Label = new StoreLabel(strength, move.MadeOn ?? day, move.Batch, move.HappenedAt) };
    }

    private static StoreState Of(Draft draft, string product) => draft.Stores.FirstOrDefault(s => s.ProductId == product) ?? new StoreState { ProductId = product };

    private static void Keep(Draft draft, StoreState store)
    {
        for (var i = 0; i < draft.Stores.Length; i++)
            if (draft.Stores[i].ProductId == store.ProductId)
            {
                draft.Stores = draft.Stores.SetItem(i, store);
                return;
            }

        draft.Stores = draft.Stores.Add(store);
    }
}
