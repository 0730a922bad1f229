using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;

namespace PlantWatch.Core.Plant.Fold;

/// <summary>What the supervision of dosing pumps says, as alarms: one for each pump and rule, with what speaks for it. Said, never commanded.</summary>
internal static class PumpTroubleAlarms
{
    // Asking flat out is what a busy hour does too; so long, and the value no nearer, it is not (common practice: two to four hours).
    private static readonly TimeSpan Saturates = TimeSpan.FromHours(3);

    // By so much a value must have come to have come at all: pH, and mV.
    private const double PhComes = 0.02, OrpComes = 5;

    // Nothing is certain: what is more than so much is said as so much, in per cent.
    private const double MostCertain = 99.9;

    /// <summary>Looks at the pumps of a water.</summary>
    public static void Look(Draft draft, int water, Instant at)
    {
        foreach (var product in (ReadOnlySpan<DosedProduct>)[DosedProduct.Acid, DosedProduct.Chlorine])
        {
            var pump = draft.Index.Waters[water].Pump(product).Index;
            Tell(draft, RuleBook.NothingArrives, pump, First(draft, water, product, pump, PumpTrouble.EmptyTank, PumpTrouble.LostPrime), at);
            Tell(draft, RuleBook.ComesUnasked, pump, First(draft, water, product, pump, PumpTrouble.Siphon), at);
            TooMuch(draft, water, product, pump, at);
            // Both pumps are of one mistake: one of them says it.
            if (product == DosedProduct.Acid) Tell(draft, RuleBook.ProductsSwapped, pump, Swapped(draft, water, pump, at), at);
            Tell(draft, RuleBook.DoesTooLittle, pump, First(draft, water, product, pump, PumpTrouble.WeakProduct) ?? Saturated(draft, water, product, pump, at), at);
        }
    }

    /// <summary>Looks at what a pump was driven to deliver today.</summary>
    public static void OfDay(Draft draft, int pump, Instant at)
    {
        for (var water = 0; water < draft.Dosing.Length; water++)
            foreach (var product in (ReadOnlySpan<DosedProduct>)[DosedProduct.Acid, DosedProduct.Chlorine])
                if (draft.Index.Waters[water].Pump(product).Index == pump)
                {
                    TooMuch(draft, water, product, pump, at);
                    return;
                }

        Tell(draft, RuleBook.DosesTooMuch, pump, OverLimit(draft, pump, at), at);
    }

    private static void TooMuch(Draft draft, int water, DosedProduct product, int pump, Instant at) =>
        Tell(draft, RuleBook.DosesTooMuch, pump, First(draft, water, product, pump, PumpTrouble.StuckOn) ?? OverLimit(draft, pump, at), at);

    private static Reason? OverLimit(Draft draft, int pump, Instant at) =>
        draft.Plan.Pumps[pump] is { DailyLimitLitres: { } limit } plan && draft.Pumps[pump].Today.Litres > limit && draft.Pumps[pump].Today.Day == StoreFold.DayOf(draft, at) ? Reason.Of("pump.over_daily_limit", plan.Name, draft.Pumps[pump].Today.Litres, limit) : null;

    private static void Tell(Draft draft, Rule rule, int pump, Reason? cause, Instant at)
    {
        var (plan, key) = (draft.Plan.Pumps[pump], draft.Index.TroubleKey(rule, pump));
        if (cause is not null || draft.Alarms.Knows(key)) draft.Alarms.Look(rule, key, plan.Id, cause is not null, at, () => cause!);
    }

    private static Reason? First(Draft draft, int water, DosedProduct product, int pump, params ReadOnlySpan<PumpTrouble> troubles)
    {
        foreach (var trouble in troubles)
            if (draft.Dosing[water].Find(product, trouble) is { } said) return Said(draft, water, said, pump);
        return null;
    }

    // Chlorine that runs by itself looks for a while as if acid strokes brought it: the account that foresees the water better is believed.
    private static Reason? Swapped(Draft draft, int water, int pump, Instant at)
    {
        var watch = draft.Dosing[water];
        // Said before the water changed: what would weigh it is still being learned.
        if (watch.Supervisor is not { } supervisor || supervisor.Evidence(DosedProduct.Acid, PumpTrouble.Swapped, at) is not { } swapped) return First(draft, water, DosedProduct.Acid, pump, PumpTrouble.Swapped);
        var siphon = watch.Find(DosedProduct.Chlorine, PumpTrouble.Siphon) is null ? null : supervisor.Evidence(DosedProduct.Chlorine, PumpTrouble.Siphon, at);
        return siphon is { } other && other.Certainty > swapped.Certainty ? null : First(draft, water, DosedProduct.Acid, pump, PumpTrouble.Swapped);
    }

    private static Reason Said(Draft draft, int water, PumpVerdict said, int pump)
    {
        var name = draft.Plan.Pumps[pump].Name;
        var acid = said.Pump == DosedProduct.Acid;
        var other = draft.Plan.Pumps[draft.Index.Waters[water].Pump(acid ? DosedProduct.Chlorine : DosedProduct.Acid).Index].Name;
        if (said.Evidence is not { } e) return Reason.Of(said.Trouble == PumpTrouble.EmptyTank ? "pump.tank_emptied_itself" : "pump.runs_on", name);
        var (seconds, certain) = ((said.At - e.Since).TotalSeconds, Math.Min(100 * e.Certainty, MostCertain));
        return said.Trouble switch
        {
            PumpTrouble.LostPrime when acid => Reason.Of("pump.acid_does_not_arrive", name, seconds, e.LitresMissing, e.Expected, e.Observed, certain),
            PumpTrouble.LostPrime => Reason.Of("pump.chlorine_does_not_arrive", name, seconds, e.LitresMissing, certain),
            PumpTrouble.Siphon when acid => Reason.Of("pump.acid_comes_unasked", name, seconds, -e.LitresMissing, e.Expected, e.Observed, certain),
            PumpTrouble.Siphon => Reason.Of("pump.chlorine_comes_unasked", name, seconds, -e.LitresMissing, certain),
            PumpTrouble.Swapped => Reason.Of("pump.products_swapped", name, other, seconds, e.Expected, e.Observed, certain),
            _ => Reason.Of("pump.product_is_weak", name, seconds, e.LitresMissing, certain),
        };
    }

    private static Reason? Saturated(Draft draft, int water, DosedProduct product, int pump, Instant at)
    {
        var (watch, acid) = (draft.Dosing[water], product == DosedProduct.Acid);
        if (watch.Flat(product) is not { Since.IsSet: true, Then: { } then, Now: { } now } flat || at - flat.Since < Saturates) return null;
        // Once it was said the value must have come by more.
        var more = draft.Alarms.IsActive(draft.Index.TroubleKey(RuleBook.DoesTooLittle, pump)) ? 2 : 1;
        if (acid ? now < then - (more * PhComes) : now > then + (more * OrpComes)) return null;
        return Reason.Of(acid ? "pump.acid_saturated" : "pump.chlorine_saturated", draft.Plan.Pumps[pump].Name, (at - flat.Since).TotalSeconds, then, now);
    }
}
