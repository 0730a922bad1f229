using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>A product may be used up before an order would come. The circuit remembers it as an alarm and as nothing else: stock is common to all circuits, and the shell has added it up.</summary>
internal static class OutlookFold
{
    public static Outcome Say(Draft draft, StockOutlookSaid said)
    {
        if (StockFold.ProductOf(draft.Plan, said.ProductId) is not { DeliveryDays: { } lead } product)
            return Outcome.TurnedDown.Because(TurnedDownKind.NotFound, "productId", Reason.Of("stock.product_unknown", said.ProductId));
        var key = RuleBook.StockRunsOut.KeyFor(said.ProductId);
        if (said.RunsOut || draft.Alarms.Knows(key))
            draft.Alarms.Look(RuleBook.StockRunsOut, key, said.ProductId, said.RunsOut, said.At, () => Reason.Of("stock.runs_out", product.Name, said.Days, lead), renew: true);
        return Outcome.Done.Instance;
    }
}
