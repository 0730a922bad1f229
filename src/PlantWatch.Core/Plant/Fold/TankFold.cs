using PlantWatch.Core.Plans;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Readings;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Stock;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>The tanks of dosing pumps: what goes into them, what they use, and who filled them.</summary>
internal static class TankFold
{
    // The drum is put away before it is written down (common practice: half an hour).
    private static readonly TimeSpan Grace = TimeSpan.FromMinutes(30);

    // Over a longer silence it is known what was used, and not on which day (our choice: an eighth of a day, so that what falls on the wrong one is small beside a day).
    private static readonly TimeSpan LongestStep = TimeSpan.FromHours(3);

    /// <summary>Product and tank differ: what it comes to.</summary>
    public static Reason WrongCause(CircuitPlan plan, StockMove move, PumpPlan tank) =>
        WrongTank.Cause(move.Product, move.Kind, tank.Name, StockFold.ProductOf(plan, tank.ProductId) ?? new ProductPlan(tank.ProductId, tank.ProductId, tank.Doses, null));

    /// <summary>Something went into a tank, or it was dipped.</summary>
    public static void Fill(Draft draft, int index, StockMove move, ProductPlan product, Instant at)
    {
        var (plan, tank) = (draft.Plan.Pumps[index], draft.Tanks[index]);
        var before = LitresBefore(plan, tank, move);
        if (move.FillsTank && !WrongTank.Is(move, plan))
            tank = tank with { Before = new MixBefore(move.Id, tank.Mix, before), Mix = Mixed(draft, plan, tank, move, product, before) };
        var book = move.Act == StockAct.Counted ? move.Amount : (tank.Book ?? 0) + move.Amount;
        Keep(draft, index, tank with { Book = TankContent.HasLevel(plan) ? null : book, Unknown = tank.Unknown?.IsSaidBy(move) == true ? null : tank.Unknown });
        if (WrongTank.Is(move, plan)) Spoil(draft, index, move, at);
        LookForNobody(draft, index, at);
    }

    /// <summary>A row was wrong. What was told of a wrong tank stands all the same: only people at the tank can say that it is safe.</summary>
    public static void Undo(Draft draft, int index, StockMove move)
    {
        var tank = draft.Tanks[index];
        if (tank.Before is { } before && before.MoveId == move.Id) tank = tank with { Mix = before.Mix, Before = null };
        Keep(draft, index, tank with { Book = tank.Book - (move.FillsTank ? move.Amount : 0) });
    }

    /// <summary>It was recorded that a tank was made safe: what was in it is out of it, and what is in it now nobody has said.</summary>
    public static void MadeSafe(Draft draft, Instant at)
    {
        for (var i = 0; i < draft.Tanks.Length; i++)
        {
            var key = RuleBook.WrongProductInTank.KeyFor(draft.Tanks[i].PumpId);
            if (draft.Tanks[i].Wrong is null || draft.Alarms.Find(key) is not { MadeSafe: not null }) continue;
            Keep(draft, i, draft.Tanks[i] with { Wrong = null, Mix = null, Before = null });
            draft.Alarms.Look(RuleBook.WrongProductInTank, key, draft.Tanks[i].PumpId, false, at, () => Reason.Of("wrong_tank.not_known"));
        }
    }

    /// <summary>A level came in.</summary>
    public static void Level(Draft draft, int index, Instant at, double percent)
    {
        var (next, step) = draft.Tanks[index].Trail.Hear(at, percent);
        Keep(draft, index, draft.Tanks[index] with { Trail = next });
        if (step is not { } told) return;
        if (draft.Plan.Pumps[index].TankLitres is { } litres) Use(draft, index, told.To, told.Used / 100 * litres, told.To - told.From);
        if (told.Filled <= 0) return;
        var fill = new UnknownFill(told.From, told.To, told.Filled);
        if (!draft.Moves.Any(m => m.PumpId == draft.Plan.Pumps[index].Id && fill.IsSaidBy(m))) Keep(draft, index, draft.Tanks[index] with { Unknown = fill });
    }

    /// <summary>A pump delivered so much by its strokes or its running time: where no level is measured, that is its use.</summary>
    public static void Delivered(Draft draft, int index, double litres, Instant at)
    {
        if (TankContent.HasLevel(draft.Plan.Pumps[index])) return;
        Use(draft, index, at, litres, TimeSpan.Zero);
        if (draft.Tanks[index].Book is { } book) Keep(draft, index, draft.Tanks[index] with { Book = Math.Max(0, book - litres) });
    }

    /// <summary>A pump spoke: since it spoke before it is known what it delivered, unless it was silent for long.</summary>
    public static void Heard(Draft draft, int index, Instant before, Instant at)
    {
        var plan = draft.Plan.Pumps[index];
        if (!before.IsSet || at <= before || at - before > PumpRun.LongestSilence || TankContent.HasLevel(plan)) return;
        if ((plan.StrokesTopic is null ? plan.LitresPerHour : plan.MillilitresPerStroke) is not null) Use(draft, index, at, 0, at - before);
    }

    public static void Tick(Draft draft, Instant now)
    {
        if (draft.Tanks.IsEmpty) return;
        var today = StoreFold.DayOf(draft, now);
        for (var i = 0; i < draft.Tanks.Length; i++)
        {
            if (draft.Tanks[i].Today is { Amount: not 0 } or { Hours: > 0 } && draft.Tanks[i].Today.Day < today) Close(draft, i, now);
            LookForNobody(draft, i, now);
        }
    }

    /// <summary>So much was used up to a time.</summary>
    internal static void Use(Draft draft, int index, Instant at, double litres, TimeSpan over)
    {
        var (tank, day) = (draft.Tanks[index], StoreFold.DayOf(draft, at));
        if (tank.Today != default && tank.Today.Day < day)
        {
            Close(draft, index, at);
            tank = draft.Tanks[index];
        }

        var hours = over <= LongestStep ? over.TotalHours : 0;
        Keep(draft, index, tank with { Today = new DayUse(Later(day, tank.Today.Day), tank.Today.Amount + litres, tank.Today.Hours + hours) });
    }

    private static DateOnly Later(DateOnly a, DateOnly b) => a > b ? a : b;

    private static void Close(Draft draft, int index, Instant at)
    {
        var (plan, tank, use) = (draft.Plan.Pumps[index], draft.Tanks[index], draft.Tanks[index].Today);
        Keep(draft, index, tank with { Today = default, Days = use.Hours > 0 ? tank.Days.With(use) : tank.Days });
        var price = StockFold.ProductOf(draft.Plan, plan.ProductId) is { } product ? StoreFold.PriceOf(draft, product, use.Day) : null;
        draft.Write(at, at, plan.Id, new UseEntry(new UseRow(plan.ProductId, plan.Id, use.Day, use.Amount, StockUnit.Litre, use.Hours, TankContent.HasLevel(plan) ? UseSource.Level : UseSource.Running, price)));
    }

    private static double? LitresBefore(PumpPlan plan, TankState tank, StockMove move)
    {
        if (TankContent.Litres(plan, tank) is not { } now) return null;
        // The level may have risen before it was written down.
        return tank.Unknown is { } rise && rise.IsSaidBy(move) ? Math.Max(0, now - (rise.Percent / 100 * (plan.TankLitres ?? 0))) : now;
    }

    private static TankMix? Mixed(Draft draft, PumpPlan plan, TankState tank, StockMove move, ProductPlan product, double? before)
    {
        var day = StoreFold.DayOf(draft, move.HappenedAt);
        // Without a label it is taken for what was there before, or what the plant file says.
        if (move.Strength is not { } label) return tank.Mix;
        var came = TankMix.Aged(product, label, move.MadeOn ?? day, day);
        var old = tank.Mix?.Now(product, day) ?? OfPlan(product, day);
        return new TankMix(before is { } left && old is { } was ? TankMix.Of(product, left, was, move.Amount, came) : came, day, move.Batch);
    }

    private static double? OfPlan(ProductPlan product, DateOnly day) =>
        product.Strength is { } strength ? TankMix.Aged(product, strength, product.StrengthOn ?? day, day) : null;

    private static void Spoil(Draft draft, int index, StockMove move, Instant at)
    {
        var (plan, cause) = (draft.Plan.Pumps[index], WrongCause(draft.Plan, move, draft.Plan.Pumps[index]));
        Keep(draft, index, draft.Tanks[index] with { Wrong = new WrongFill(move.Id, move.Product, cause), Mix = null, Before = null });
        draft.Alarms.Look(RuleBook.WrongProductInTank, RuleBook.WrongProductInTank.KeyFor(plan.Id), plan.Id, true, at, () => cause);
    }

    private static void LookForNobody(Draft draft, int index, Instant now)
    {
        var (plan, unknown) = (draft.Plan.Pumps[index], draft.Tanks[index].Unknown);
        var key = draft.Index.NobodyKeys[index];
        var holds = unknown is not null && now - unknown.At >= Grace;
        if (holds || draft.Alarms.Knows(key)) draft.Alarms.Look(RuleBook.TankFilledByNobody, key, plan.Id, holds, now, () => Reason.Of("stock.filled_by_nobody", plan.Name, unknown!.Percent));
    }

    private static void Keep(Draft draft, int index, TankState tank) => draft.Tanks = draft.Tanks.SetItem(index, tank);
}
