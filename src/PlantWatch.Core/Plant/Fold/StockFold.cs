using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The stock book: deliveries, refills, counts. What is wrong with the tank is told and not only refused, for it may have happened.</summary>
internal static class StockFold
{
    // Older ones are found by their id in the record; the shell looks there before it sends (our choice: a month of four a day, because what is sent again or corrected is of these days).
    private const int MovesRemembered = 128;

    public static Outcome Write(Draft draft, StockMoved said)
    {
        var move = said.Move with { By = said.Move.By?.Trim() ?? "", CheckedBy = said.Move.CheckedBy?.Trim() ?? "" };
        foreach (var known in draft.Moves)
            if (known.Id == move.Id) return IsSame(known, move) ? Outcome.AlreadyDone.Instance : No(TurnedDownKind.Conflict, "id", Reason.Of("id.taken"));
        if (ProductOf(draft.Plan, move.ProductId) is not { } product) return No(TurnedDownKind.NotFound, "productId", Reason.Of("stock.product_unknown", move.ProductId));
        var pump = draft.Index.Pump(move.PumpId);
        if (move.PumpId is not null && pump < 0) return No(TurnedDownKind.NotFound, "pumpId", Reason.Of("stock.tank_unknown", move.PumpId));
        move = move with { Product = product.Name, Kind = product.Kind, Unit = pump < 0 ? StockUnits.Of(product) : StockUnit.Litre };
        if (Objection(draft, move, pump, said.At) is { } no) return no;
        Take(draft, move, pump, product, said.At);
        return Outcome.Done.Instance;
    }

    /// <summary>The product of the plan; null when it knows none of that id.</summary>
    public static ProductPlan? ProductOf(CircuitPlan plan, string id) => plan.Products.FirstOrDefault(p => p.Id == id);

    private static Outcome.TurnedDown? Objection(Draft draft, StockMove move, int pump, Instant now)
    {
        var tank = pump < 0 ? null : draft.Plan.Pumps[pump];
        if (MoveChecks.Of(move, tank, now) is var (field, why)) return No(TurnedDownKind.Invalid, field, why);
        if (move.Corrects is { } wrong && !draft.Moves.Any(m => m.Id == wrong)) return No(TurnedDownKind.Invalid, "corrects", Reason.Of("stock.corrects_unknown"));
        if (tank is null) return null;
        if (move.Act == StockAct.Counted && move.ProductId != tank.ProductId) return No(TurnedDownKind.Invalid, "productId", Reason.Of("stock.not_of_the_tank", move.Product, tank.Name));
        // Nothing is connected yet, one hopes: it is asked before it is written down as done.
        return WrongTank.Is(move, tank) && !move.WentIn ? No(TurnedDownKind.Conflict, "wentIn", TankFold.WrongCause(draft.Plan, move, tank)) : null;
    }

    private static void Take(Draft draft, StockMove move, int pump, ProductPlan product, Instant at)
    {
        var old = move.Corrects is null ? null : Standing(draft, move);
        var isCorrected = draft.Moves.Any(m => m.Corrects == move.Id);
        draft.Moves = draft.Moves.Length < MovesRemembered ? draft.Moves.Add(move) : draft.Moves.RemoveAt(0).Add(move);
        draft.Entries.Add(new RecordEntry(move.Id, at, move.HappenedAt, move.PumpId ?? move.ProductId, new StockEntry(move, at)));
        if (old is not null) StoreFold.Undo(draft, old);
        if (old?.PumpId is { } before && draft.Index.Pump(before) is >= 0 and var was) TankFold.Undo(draft, was, old);
        if (isCorrected) return;
        StoreFold.Take(draft, move);
        if (pump >= 0) TankFold.Fill(draft, pump, move, product, at);
    }

    // Corrected by two at once, or twice in a journal of before the door asked, a row is taken back once: the newest correction takes the place of the one before.
    private static StockMove Standing(Draft draft, StockMove move)
    {
        var origin = OriginOf(draft, move);
        return draft.Moves.Last(m => OriginOf(draft, m) == origin);
    }

    private static Guid OriginOf(Draft draft, StockMove move)
    {
        if (move.Corrects is not { } wrong) return move.Id;
        return draft.Moves.FirstOrDefault(m => m.Id == wrong) is { } corrected ? OriginOf(draft, corrected) : wrong;
    }

    // What the shell adds to it may differ from one sending to the next.
    private static bool IsSame(StockMove a, StockMove b) => Said(a) == Said(b);

    private static StockMove Said(StockMove move) => move with { Product = "", Kind = default, Unit = default, Book = null };

    private static Outcome.TurnedDown No(TurnedDownKind kind, string field, Reason reason) => Outcome.TurnedDown.Because(kind, field, reason);
}
