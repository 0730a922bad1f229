using PlantWatch.Core.Chemistry;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Stock;
using PlantWatch.Server.Live;
using PlantWatch.Server.Loop;
using PlantWatch.Server.Words;
using PlantWatch.Storage;

namespace PlantWatch.Server.Api;

/// <summary>Chemicals in stock: what there is, what came, what was used and cost, and how many bathed. No tank is opened by any of it.</summary>
internal static class StockApi
{
    private const int LongestDays = 400;

    public static void MapStock(this RouteGroupBuilder api)
    {
        api.MapGet("/stock", BookAsync).Produces<StockBookView>().Produces<Problem>(StatusCodes.Status400BadRequest);
        api.MapGet("/stock/moves", MovesAsync).Produces<IReadOnlyList<StockMoveView>>();
        foreach (var (path, act) in new[] { ("deliveries", StockAct.Delivered), ("refills", StockAct.Refilled), ("stock-counts", StockAct.Counted) })
            api.MapPut($"/{path}/{{id:guid}}", (Guid id, StockMoveRequest request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation) =>
                PutAsync(id, act, request, host, store, clock, cancellation)).Produces<StockMoveView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapPut("/bathers/{id:guid}", CountBathersAsync).Produces<BathersView>().Produces<Problem>(StatusCodes.Status400BadRequest).Produces<Problem>(StatusCodes.Status409Conflict);
        api.MapGet("/bathers", BathersAsync).Produces<IReadOnlyList<BathersView>>();
    }

    private static async Task<IResult> BookAsync(int? days, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (days is not (null or (>= 1 and <= LongestDays))) return Answers.Invalid("days", "reliability.days");
        if (host.Plan is not { } plan) return Answers.NotFound("plant");
        var circuits = new List<CircuitUse>();
        foreach (var worker in host.Circuits.ToArray()) circuits.Add(await UseOf(worker, store, Instant.From(clock.GetUtcNow()), cancellation));
        return Answers.Ok(StockViews.Of(plan.Products, circuits, Today(plan, Instant.From(clock.GetUtcNow())), days ?? 30));
    }

    private static async Task<CircuitUse> UseOf(CircuitWorker worker, IRecordStore store, Instant now, CancellationToken cancellation)
    {
        var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["chemical_use", "bathers"], null, now - TimeSpan.FromDays(LongestDays + 1), now + TimeSpan.FromDays(1), int.MaxValue), cancellation);
        var state = worker.State;
        return new(state, [.. rows.Select(r => r.Body).OfType<UseEntry>().Select(u => u.Use)],
            UseSums.BathersOf(rows.Select(r => r.Body).OfType<BathersEntry>().Select(b => b.Count), [.. state.Plan.Pools.Select(p => p.Id)]));
    }

    private static async Task<IResult> PutAsync(
        Guid id, StockAct act, StockMoveRequest request, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (TooLong(request) is { } tooLong) return tooLong;
        if (host.Plan?.Products.FirstOrDefault(p => p.Id == request.ProductId) is not { } product) return Answers.Invalid("productId", "dose.product_not_known");
        if (!Times.IsReckonable(request.HappenedAt)) return Answers.Invalid("happenedAt", "stock.time_impossible");
        if (Keeper(host, request.PumpId, product) is not { } worker) return Answers.Invalid("pumpId", "stock.tank_not_known");
        if (Amount(request, product, Today(host.Plan, request.HappenedAt)) is not { } amount) return Answers.Invalid("amount", request is { Litres: null, Kilograms: null } ? "field.required" : "dose.density_unknown");
        foreach (var circuit in host.Circuits.ToArray())
            if (await store.EntryAsync(circuit.Partition, id, cancellation) is { } known) return Again(known, Move(id, act, request, amount), host);
        var move = Labelled(Move(id, act, request, amount), product, host, Today(host.Plan, Instant.From(clock.GetUtcNow())));
        var outcome = await host.AskAsync(worker.Partition.Value, state => MoveObjection.Of(state, move), at => new StockMoved(at, move), cancellation);
        if (outcome is Outcome.TurnedDown no) return Answers.From(no);
        return await store.EntryAsync(worker.Partition, id, cancellation) is { Body: StockEntry kept } ? Answers.Ok(View(kept, worker.State.Plan, false)) : Answers.NotFound($"row {id}");
    }

    // The same once more is answered as the first time; another one under its id is a conflict.
    private static IResult Again(RecordEntry known, StockMove said, PlantHost host)
    {
        if (known.Body is not StockEntry { Move: var move } entry || !IsSame(move, said)) return Answers.Conflict("id", "id.taken");
        var plan = host.Circuits.Select(w => w.State.Plan).FirstOrDefault(p => p.Pumps.Any(x => x.Id == move.PumpId)) ?? host.Circuits.First().State.Plan;
        return Answers.Ok(View(entry, plan, false));
    }

    // What the server added is nothing that was said; kilograms may have become litres by a density of another day.
    private static bool IsSame(StockMove kept, StockMove said)
    {
        var label = said is { Act: StockAct.Refilled, Strength: null };
        var entered = kept with { Product = "", Kind = default, Unit = default, Book = null, Amount = said.Amount };
        return Math.Abs(kept.Amount - said.Amount) <= 1e-9 * Math.Max(1, said.Amount)
            && entered == (label ? said with { Strength = kept.Strength, MadeOn = kept.MadeOn, Batch = said.Batch ?? kept.Batch } : said);
    }

    private static StockMove Move(Guid id, StockAct act, StockMoveRequest request, double amount) => new()
    {
        Id = id,
        Act = act,
        ProductId = request.ProductId!,
        PumpId = request.PumpId,
        Amount = amount,
        Containers = request.Containers,
        Batch = string.IsNullOrWhiteSpace(request.Batch) ? null : request.Batch.Trim(),
        Strength = request.Strength,
        MadeOn = request.MadeOn,
        Price = request.Price,
        HappenedAt = request.HappenedAt,
        By = request.By?.Trim() ?? "",
        CheckedBy = request.CheckedBy?.Trim() ?? "",
        WentIn = request.WentIn,
        Note = request.Note,
        Corrects = request.Corrects,
        CorrectionReason = request.CorrectionReason,
    };

    // What is taken from the store bears the label that came with it; a count is told what the book says.
    private static StockMove Labelled(StockMove move, ProductPlan product, PlantHost host, DateOnly today)
    {
        CircuitState[] states = [.. host.Circuits.Select(w => w.State)];
        StoreState[] stores = [.. states.SelectMany(s => s.Stores).Where(s => s.ProductId == product.Id)];
        if (move.Act == StockAct.Counted) return move with { Book = move.PumpId is null ? stores.Sum(s => s.Amount) : StockViews.Sheets([product], states, today)[0].Tanks.FirstOrDefault(t => t.Pump.Id == move.PumpId)?.Litres };
        if (move.Act != StockAct.Refilled || move.Strength is not null) return move;
        var label = stores.Select(s => s.Label).OfType<StoreLabel>().Where(l => move.Batch is null || l.Batch == move.Batch).OrderBy(l => l.At).LastOrDefault();
        return label is null ? move : move with { Strength = label.Strength, MadeOn = label.On, Batch = label.Batch };
    }

    // Each row is kept by one circuit: that of the tank; of the store that of the first pump of the product, or the first of all.
    private static CircuitWorker? Keeper(PlantHost host, string? pump, ProductPlan product) =>
        pump is not null ? host.Circuits.FirstOrDefault(w => w.State.Plan.Pumps.Any(p => p.Id == pump)) : StockWatch.Home(host, product.Id);

    private static double? Amount(StockMoveRequest request, ProductPlan product, DateOnly day)
    {
        var unit = request.PumpId is null ? StockUnits.Of(product) : StockUnit.Litre;
        if (unit == StockUnit.Litre && request.Litres is { } litres) return litres;
        if (unit == StockUnit.Kilogram && request.Kilograms is { } kilograms) return kilograms;
        var density = ProductAtHand.Of(product, day).KilogramsPerLitre;
        return unit == StockUnit.Litre ? request.Kilograms / density : request.Litres * density;
    }

    private static async Task<IResult> MovesAsync(int? limit, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        var take = Math.Clamp(limit ?? 50, 1, 500);
        var views = new List<StockMoveView>();
        foreach (var worker in host.Circuits.ToArray())
        {
            StockEntry[] rows = [.. (await store.EntriesAsync(worker.Partition, new EntryQuery(["stock"], null, Limit: take), cancellation)).Select(r => r.Body).OfType<StockEntry>()];
            var corrected = rows.Select(r => r.Move.Corrects).OfType<Guid>().ToHashSet();
            views.AddRange(rows.Select(r => View(r, worker.State.Plan, corrected.Contains(r.Move.Id))));
        }

        return Answers.Ok(views.OrderByDescending(v => v.Move.HappenedAt).Take(take).ToArray());
    }

    private static StockMoveView View(StockEntry entry, CircuitPlan plan, bool corrected)
    {
        var (move, tank) = (entry.Move, plan.Pumps.FirstOrDefault(p => p.Id == entry.Move.PumpId));
        var product = plan.Products.FirstOrDefault(p => p.Id == move.ProductId);
        var advice = product is null ? [] : LabelAdvice.Of(product, move, SiteMonth.DayOf(plan.TimeZone, move.HappenedAt));
        var holds = tank is null ? null : plan.Products.FirstOrDefault(p => p.Id == tank.ProductId);
        var wrong = tank is not null && holds is not null && WrongTank.Is(move, tank) ? Reader.Words.Say(WrongTank.Cause(move.Product, move.Kind, tank.Name, holds)) : null;
        return new(move, tank is null ? move.PumpId : $"{tank.Name}, {plan.Name}", entry.ArrivedAt, corrected, [.. advice.Select(Reader.Words.Say)], wrong);
    }

    private static async Task<IResult> CountBathersAsync(Guid id, BathersRequest request, PlantHost host, IRecordStore store, CancellationToken cancellation)
    {
        if (!TimeOrderedId.IsVersion7(id)) return Answers.Invalid("id", "id.not_version_7");
        if (Bounds.OfName("by", request.By) is { } tooLong) return tooLong;
        if (host.WithPool(request.PoolId) is not { } worker) return Answers.Invalid("poolId", "pool.not_known");
        if (request.Number is not { } number) return Answers.Invalid("number", "field.required");
        var count = new BatherCount(id, request.PoolId!, request.Day, number, request.By?.Trim() ?? "");
        foreach (var circuit in host.Circuits.ToArray())
            if (await store.EntryAsync(circuit.Partition, id, cancellation) is { } known)
                return known.Body is BathersEntry { Count: var kept } && kept with { SaidAt = Instant.Never } == count ? Answers.Ok(View(kept, worker.State.Plan)) : Answers.Conflict("id", "id.taken");
        var saidAt = Instant.Never;
        var outcome = await host.SendAsync(worker.Partition.Value, at => new BathersCounted(saidAt = at, count), cancellation);
        return outcome is Outcome.TurnedDown no ? Answers.From(no) : Answers.Ok(View(count with { SaidAt = saidAt }, worker.State.Plan));
    }

    private static async Task<IResult> BathersAsync(int? days, PlantHost host, IRecordStore store, TimeProvider clock, CancellationToken cancellation)
    {
        var now = Instant.From(clock.GetUtcNow());
        if (host.Plan is not { } plan) return Answers.NotFound("plant");
        var from = Today(plan, now).AddDays(-Math.Clamp(days ?? 14, 1, LongestDays));
        var views = new List<BathersView>();
        foreach (var worker in host.Circuits.ToArray())
        {
            var rows = await store.EntriesAsync(worker.Partition, new EntryQuery(["bathers"], null, now - TimeSpan.FromDays(LongestDays + 1), now + TimeSpan.FromDays(1), int.MaxValue), cancellation);
            var newest = rows.Select(r => r.Body).OfType<BathersEntry>().Select(b => b.Count).Where(c => c.Day >= from).GroupBy(c => (c.PoolId, c.Day)).Select(g => g.MaxBy(c => (c.SaidAt, c.Id))!);
            views.AddRange(newest.Select(c => View(c, worker.State.Plan)));
        }

        return Answers.Ok(views.OrderByDescending(v => v.Day).ThenBy(v => v.Pool, StringComparer.Ordinal).ToArray());
    }

    private static BathersView View(BatherCount count, CircuitPlan plan) =>
        new(count.Id, count.PoolId, plan.Pools.FirstOrDefault(p => p.Id == count.PoolId)?.Name ?? count.PoolId, count.Day, count.Number, count.By, count.SaidAt);

    private static DateOnly Today(PlantPlan plan, Instant now) => SiteMonth.DayOf(plan, now);

    private static IResult? TooLong(StockMoveRequest request) =>
        Bounds.OfName("productId", request.ProductId) ?? Bounds.OfName("pumpId", request.PumpId) ?? Bounds.OfName("by", request.By) ?? Bounds.OfName("checkedBy", request.CheckedBy)
        ?? Bounds.OfName("batch", request.Batch) ?? Bounds.OfRemark("note", request.Note) ?? Bounds.OfRemark("correctionReason", request.CorrectionReason);
}
