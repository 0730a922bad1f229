using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Plans.Packs;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Rules;
using PlantWatch.Core.Rules.Packs;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>The picked pack and what holds of it, for whoever has the document in hand.</summary>
internal static class LimitViews
{
    public static PackInfo Info(LimitPack pack) => new(
        pack.Id, pack.Authority, pack.Edition, pack.Superseded, pack.Rows.Length, pack.Rows.Count(r => r.Provenance == RowProvenance.FromMemory), pack.Rows.Count(r => r.Quantity == PackQuantity.Sentence));

    public static CircuitLimitsView Of(CircuitState state, Wording words) => new(
        state.Plan.Id, state.Plan.Pack is { } pack ? Info(pack) : null,
        state.Plan.Pack is { } picked ? [.. picked.Rows.Select(r => Row(state, picked, r, words))] : [],
        [.. state.Plan.Pools.Select((p, i) => Bounds(p, state.Pools[i].Limits, words))],
        [.. state.Plan.People.Where(p => p.MaySetLimits).Select(p => p.Name)], [.. Stops.Of.Select(m => Stop(state.Plan, m, words))]);

    private static StopView Stop(CircuitPlan plan, Measurand measurand, Wording words)
    {
        Stops.TryOf(plan, measurand, out var now, out _);
        Stops.TryUsual(measurand, out var usual, out _);
        var (quantity, edit) = (measurand.Limiting(), plan.Stops.LastOrDefault(s => s.Measurand == measurand));
        var hasLow = measurand != Measurand.Temperature;
        return new(quantity, Name(quantity, words), Unit(quantity), hasLow ? now.Low : null, now.High, hasLow ? usual.Low : null, usual.High, edit?.Why, edit?.By);
    }

    private static PackRowView Row(CircuitState state, LimitPack pack, PackRow row, Wording words)
    {
        var confirmed = LimitsMaker.Confirmation(pack, row, state.Confirmations);
        return new(
            row.Id, RowDigest.Of(row), row.Quantity, Name(row.Quantity, words), Unit(row.Quantity), row.Grade, row.Low, row.High, row.RaisesLowBy, row.Says, row.When.ToJudge,
            row.Source, row.Provenance, row.Certainty, [.. state.Plan.Pools.Select((p, i) => new RowPoolView(p.Id, HoldsIn(state.Pools[i].Water, p, row), LimitsMaker.IsMeasured(row, state.Plan, p)))],
            confirmed is null ? null : new(confirmed.By, confirmed.At, confirmed.Document, confirmed.Applies),
            confirmed is null && state.Confirmations.Any(c => c.PackId == pack.Id && c.RowId == row.Id));
    }

    private static Holds HoldsIn(WaterFacts water, PoolPlan pool, PackRow row) =>
        row.Quantity != PackQuantity.Sentence && row.Grade != RowGrade.Guide && !LimitsMaker.IsLimit(row, pool) ? Holds.No : ConditionCheck.Of(row.When, pool, water);

    private static PoolBoundsView Bounds(PoolPlan pool, LimitsInForce limits, Wording words) => new(
        pool.Id, limits.Word, [.. limits.Bounds.Select(b => new BoundView(b.Quantity, Name(b.Quantity, words), Unit(b.Quantity), b.Grade, b.Low, b.LowFrom, b.High, b.HighFrom, b.Quantity == PackQuantity.SaturationIndex))],
        limits.Unconfirmed, [.. limits.Undecided.Select(u => new UndecidedView(u.RowId, words.Find($"limits.needs_{u.Needs}")))], limits.NotMeasured, limits.Turned);

    private static string Name(PackQuantity quantity, Wording words) => words.Find($"quantity.{quantity.Key()}");

    internal static string Unit(PackQuantity quantity) => quantity switch
    {
        PackQuantity.Ph => "pH",
        PackQuantity.Orp => "mV",
        PackQuantity.Temperature => "degC",
        PackQuantity.Conductivity => "uS/cm",
        PackQuantity.Turbidity => "NTU",
        PackQuantity.ColonyCount => "per mL",
        PackQuantity.EscherichiaColi or PackQuantity.PseudomonasAeruginosa or PackQuantity.Legionella => "per 100 mL",
        PackQuantity.Sentence or PackQuantity.Clarity or PackQuantity.SaturationIndex or PackQuantity.CombinedPerFree or PackQuantity.CombinedPerTotal or PackQuantity.CyanuratePerFree => "",
        _ => "mg/L",
    };
}
