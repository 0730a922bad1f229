using PlantWatch.Core.Alarms;
using PlantWatch.Core.Dosing.Supervision;
using PlantWatch.Core.Dosing.Supervision.Live;
using PlantWatch.Core.Plans;
using PlantWatch.Core.Plant;
using PlantWatch.Core.Quantities;
using PlantWatch.Core.Reasons;
using PlantWatch.Core.Rules;
using PlantWatch.Server.Api;
using PlantWatch.Server.Words;

namespace PlantWatch.Server.Live;

/// <summary>What is known of a dosing pump now, in the words of its page.</summary>
internal static class PumpPages
{
    private static readonly string[] Ours = [RuleBook.DosesWithoutFlow.Number, RuleBook.NothingArrives.Number, RuleBook.ComesUnasked.Number, RuleBook.DosesTooMuch.Number, RuleBook.ProductsSwapped.Number, RuleBook.DoesTooLittle.Number];

    /// <summary>The supervised water of a pump, its watch and which of its pumps it is; null when it is not supervised.</summary>
    public static (DosedWater Water, DosingWatch Watch, DosedProduct Product)? WatchOf(CircuitState state, int pump)
    {
        var waters = DosedWater.Of(state.Plan);
        for (var w = 0; w < Math.Min(waters.Length, state.Dosing.Length); w++)
            foreach (var product in (DosedProduct[])[DosedProduct.Acid, DosedProduct.Chlorine])
                if (waters[w].Pump(product).Index == pump) return (waters[w], state.Dosing[w], product);
        return null;
    }

    /// <summary>Why the water cannot judge a pump.</summary>
    public static IEnumerable<Reason> Lacks(CircuitPlan plan, PumpPlan pump)
    {
        var aim = DosingAims.Of(pump.Doses);
        if (aim is not (DosingAim.LowersPh or DosingAim.AddsChlorine)) return [Reason.Of("watch.other_product", pump.Name)];
        PumpPlan[] pair = [.. plan.Pumps.Where(p => p.PoolId == pump.PoolId && DosingAims.Of(p.Doses) is DosingAim.LowersPh or DosingAim.AddsChlorine)];
        if (pair.Count(p => DosingAims.Of(p.Doses) == aim) > 1) return [Reason.Of("watch.several")];
        if (pair.Length < 2) return [Reason.Of("watch.no_partner")];
        var found = new List<Reason>();
        found.AddRange(pair.Where(p => DosedWater.StrokeOf(p) is null).Select(p => Reason.Of("watch.no_rate", p.Name)));
        found.AddRange(pair.Where(p => DosedWater.StrokeOf(p) is not null && !DosedWater.IsDriveKnown(p)).Select(p => Reason.Of("watch.no_pulses", p.Name)));
        found.AddRange(pair.Where(p => p.Product is null || !DosedWater.IsStrengthKnown(p.Product)).Select(p => Reason.Of("watch.no_strength", p.Name)));
        return found.Count > 0 || DosedWater.Of(plan).Any(w => w.PoolId == pump.PoolId) ? found : [Reason.Of("watch.no_ph")];
    }

    public static PumpInsightView? Insight(DosingWatch watch, DosedProduct product)
    {
        if (watch.Supervisor is not { } supervisor) return null;
        var i = supervisor.Insight(product);
        return new(watch.Since, i.DaysLearned, i.DaysWanted, i.LagMinutes, i.FullStrokes * 60 * i.LitresPerStroke, i.Suspicion);
    }

    /// <summary>What stands against a pump, the gravest first: its alarms, with what speaks for them by now.</summary>
    public static IReadOnlyList<PumpVerdictView> Verdicts(CircuitState state, string pump, (DosedWater Water, DosingWatch Watch, DosedProduct Product)? watched, Instant now, Wording words) =>
    [
        .. state.Alarms.Values.Where(a => a.Active && a.Subject == pump && Ours.Contains(a.Rule)).OrderByDescending(a => a.Priority).ThenByDescending(a => a.RaisedAt)
            .Select(a => View(a, Evidence(a, watched, now), words)),
    ];

    private static PumpVerdictView View(AlarmRecord alarm, PumpEvidence? e, Wording words) => new(
        alarm.Cause.Code, words.Text(alarm.Cause), alarm.RaisedAt.OrNull(), e?.Since, e?.LitresMissing, e?.Expected, e?.Observed, e?.Certainty, alarm.Id == Guid.Empty ? null : alarm.Id,
        alarm.Priority, words.OfRule(alarm.Rule, "action"));

    private static PumpEvidence? Evidence(AlarmRecord alarm, (DosedWater Water, DosingWatch Watch, DosedProduct Product)? watched, Instant now)
    {
        if (watched is not { Watch.Supervisor: { } supervisor } found) return null;
        PumpTrouble[] kinds = alarm.Rule == RuleBook.NothingArrives.Number ? [PumpTrouble.LostPrime] : alarm.Rule == RuleBook.ComesUnasked.Number ? [PumpTrouble.Siphon]
            : alarm.Rule == RuleBook.ProductsSwapped.Number ? [PumpTrouble.Swapped] : alarm.Rule == RuleBook.DoesTooLittle.Number ? [PumpTrouble.WeakProduct] : [];
        return kinds.Select(k => supervisor.Evidence(found.Product, k, now)).FirstOrDefault(e => e is not null);
    }
}
